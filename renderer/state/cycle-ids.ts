import { listCycles } from "../../cycles/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { noted, recordingOf } from "./recordings.ts";

/** What a recording that is not kept yet goes by; no cycle has it. */
export const DRAFT = "draft";

/** An id that no cycle has: the base itself, else base-2, base-3, … */
export function freshCycleId(base: string, own: readonly CycleTrace[]): string {
  const taken = new Set([...listCycles(), ...own].map(({ id }) => id));
  taken.add(DRAFT);
  if (!taken.has(base)) return base;
  const stem = base.replace(/-\d+$/, "").slice(0, 70);
  for (let n = 2; ; n += 1) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`;
}

/** A cycle under another id and title, its recording with it. */
export function renamed(trace: CycleTrace, id: string, title: string): CycleTrace {
  const recording = recordingOf(trace);
  return noted({
    trace: { ...trace, id, title },
    recording: recording && { ...recording, raw: { ...recording.raw, id, title } },
  });
}
