import { basename } from "node:path";
import { cycleById, listCycles } from "../../cycles/catalogue.ts";
import { COMPOSITE_TESTS, type CompositeTest } from "../../cycles/composite/registry.ts";
import { importCsv } from "../../cycles/import/csv.ts";
import { isManoeuvre } from "../../cycles/manoeuvres/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { looksLikeFile, readText } from "./files.ts";
import { withNearest } from "./suggest.ts";

/** One drive, or a test made of several. */
export type CycleChoice =
  | { readonly kind: "cycle"; readonly trace: CycleTrace; readonly notes: readonly string[] }
  | { readonly kind: "test"; readonly test: CompositeTest };

/** The path when the name can only be a file, else undefined. */
export const cycleFile = (name: string): string | undefined =>
  isKnown(name) || !looksLikeFile(name) ? undefined : name;

const isKnown = (name: string): boolean => isManoeuvre(name) || allIds().includes(name);

const allIds = (): string[] => [
  ...listCycles().map((info) => info.id),
  ...COMPOSITE_TESTS.map((test) => test.id),
];

/**
 * The cycle named by an id, a manoeuvre with its parameters, or a CSV file.
 * @param where the option or word that named it
 * @throws InputError for an unknown id, bad parameters, or a file that cannot be read
 */
export function chooseCycle(where: string, name: string): CycleChoice {
  const test = COMPOSITE_TESTS.find((candidate) => candidate.id === name);
  if (test) return { kind: "test", test };
  if (isKnown(name)) return { kind: "cycle", trace: cycleById(name), notes: [] };
  if (looksLikeFile(name)) {
    const { trace, report } = importCsv(readText(where, name), { fileName: basename(name) });
    return { kind: "cycle", trace, notes: report.notes };
  }
  throw withNearest(where, name, allIds(), "a CSV file of time and speed", () => cycleById(name));
}
