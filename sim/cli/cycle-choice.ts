import { basename } from "node:path";
import { cycleById, listCycles } from "../../cycles/catalogue.ts";
import { treat, usualTreatments } from "../../cycles/clean/treat.ts";
import { COMPOSITE_TESTS, type CompositeTest } from "../../cycles/composite/registry.ts";
import { importCsv } from "../../cycles/import/csv.ts";
import { isGpx } from "../../cycles/import/drive.ts";
import { importGpx } from "../../cycles/import/gpx/gpx.ts";
import { isManoeuvre } from "../../cycles/manoeuvres/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { looksLikeFile, readDriveFile } from "./files.ts";
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
 * The cycle named by an id, a manoeuvre with its parameters, or a CSV or GPX file. A GPX track is cleaned in the usual way
 * (`usualTreatments`); what was read and done stands in the trace's treatment.
 * @param where the option or word that named it
 * @throws InputError for an unknown id, bad parameters, or a file that cannot be read
 */
export function chooseCycle(where: string, name: string): CycleChoice {
  const test = COMPOSITE_TESTS.find((candidate) => candidate.id === name);
  if (test) return { kind: "test", test };
  if (isKnown(name)) return { kind: "cycle", trace: cycleById(name), notes: [] };
  if (looksLikeFile(name)) {
    return { kind: "cycle", ...readCycle(readDriveFile(where, name), basename(name)) };
  }
  throw withNearest(where, name, allIds(), "a CSV file of time and speed, a GPX track", () =>
    cycleById(name),
  );
}

function readCycle(text: string, fileName: string): { trace: CycleTrace; notes: readonly string[] } {
  if (!isGpx(text, fileName)) {
    const { trace, report } = importCsv(text, { fileName });
    return { trace, notes: report.notes };
  }
  const { raw } = importGpx(text, { fileName });
  return { trace: treat(raw, usualTreatments(raw)).after, notes: [] };
}
