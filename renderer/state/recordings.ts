import type { CycleTrace } from "../../shared/cycle.ts";
import type { OwnCycle, Recording } from "../../shared/own-cycles.ts";

const known = new WeakMap<CycleTrace, Recording>();

/** How a recorded cycle came about; null for one that was not recorded. It goes when nobody holds the cycle any more. */
export const recordingOf = (trace: CycleTrace): Recording | null => known.get(trace) ?? null;

/** The cycle of an own one, its recording noted for `recordingOf`. */
export function noted({ trace, recording }: OwnCycle): CycleTrace {
  if (recording) known.set(trace, recording);
  return trace;
}

/** A cycle with its recording, for files and the device's store. */
export const withRecording = (trace: CycleTrace): OwnCycle => ({ trace, recording: recordingOf(trace) });
