import { z } from "zod";
import type { CycleTrace } from "./cycle.ts";
import { tableOf, tableSchema, traceOfTable } from "./cycle-table.ts";
import {
  logFromJson,
  logToJson,
  type RawDrive,
  type RecordedLog,
  rawDriveSchema,
  rawFromJson,
  rawToJson,
  recordedLogSchema,
} from "./recorded.ts";
import { type Treatment, treatmentsSchema } from "./treatments.ts";

/** How a recorded cycle came about. */
export interface Recording {
  /** As the file had it. */
  readonly raw: RawDrive;
  /** What was done to it, in this order. */
  readonly treatments: readonly Treatment[];
  /** What was recorded beside it, on the clock of the cycle; null when nothing was. */
  readonly overlay: RecordedLog | null;
}

/** A cycle that is in no catalogue: imported, driven by hand, or a manoeuvre that was kept. */
export interface OwnCycle {
  /** What is driven. */
  readonly trace: CycleTrace;
  /** null for one that was not recorded. */
  readonly recording: Recording | null;
}

/**
 * An own cycle in a file. A recorded one holds both the recording with its treatments and what they gave, so that a
 * day's drive can be used at once; the treatments can be changed and done again at any time.
 */
export const ownCycleSchema = z.discriminatedUnion("kind", [
  tableSchema,
  z.strictObject({
    kind: z.literal("recorded"),
    raw: rawDriveSchema,
    treatments: treatmentsSchema.default([]),
    table: tableSchema,
    overlay: recordedLogSchema.nullable().default(null),
  }),
]);

/** An own cycle as JSON holds it. */
export type OwnCycleEntry = z.infer<typeof ownCycleSchema>;

/** The cycle of an entry that `ownCycleSchema` has parsed. */
export function ownCycleOf(entry: OwnCycleEntry): OwnCycle {
  if (entry.kind === "table") return { trace: traceOfTable(entry), recording: null };
  const { raw, treatments, table, overlay } = entry;
  return {
    trace: traceOfTable(table),
    recording: { raw: rawFromJson(raw), treatments, overlay: overlay && logFromJson(overlay) },
  };
}

/** Plain data for a file; `ownCycleOf` of the parsed text gives the same cycle to the last bit. */
export function entryOf({ trace, recording }: OwnCycle): OwnCycleEntry {
  if (!recording) return tableOf(trace);
  const { raw, treatments, overlay } = recording;
  return {
    kind: "recorded",
    raw: rawToJson(raw),
    treatments: [...treatments],
    table: tableOf(trace),
    overlay: overlay && logToJson(overlay),
  };
}
