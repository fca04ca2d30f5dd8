import { z } from "zod";
import type { FileKind } from "./bridge.ts";
import { InputError } from "./errors.ts";
import { entryOf, type OwnCycle, ownCycleOf, ownCycleSchema } from "./own-cycles.ts";
import { faultsOf } from "./project-faults.ts";
import { parseJson } from "./project-json.ts";

const schema = z.strictObject({ cycleVersion: z.literal(1), cycle: ownCycleSchema });

/** A cycle travelling by itself. */
export const CYCLE_KIND: FileKind = {
  title: "Trishaft cycle",
  mime: "application/json",
  extensions: ["cycle.json"],
};

/** True for a text that is, or by its name should be, a cycle file and no table of recorded values. */
export const isCycleFile = (text: string, fileName: string): boolean =>
  /\.json$/i.test(fileName) || /^\uFEFF?\s*\{/.test(text.slice(0, 1000));

/**
 * Reads a cycle file's text.
 * @param where the file's name, for messages
 * @throws InputError for broken JSON (line and column) and each wrong field with its path
 */
export function readCycleFile(text: string, where: string): OwnCycle {
  const data = parseJson(text.startsWith("\uFEFF") ? text.slice(1) : text, where);
  const parsed = schema.safeParse(data);
  if (parsed.success) return ownCycleOf(parsed.data.cycle);
  throw new InputError(faultsOf(parsed.error.issues, schema, data, where));
}

/** A cycle as the text of its own file; reading it gives the same cycle to the last bit. */
export const writeCycleFile = (own: OwnCycle): string =>
  `${JSON.stringify({ cycleVersion: 1, cycle: entryOf(own) })}\n`;
