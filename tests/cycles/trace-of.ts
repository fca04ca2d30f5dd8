import type { CycleTrace, Phase, Span } from "../../shared/cycle.ts";

/** A small trace for tests: rows of time (s), speed (m/s) and, if given, grade. */
export function traceOf(
  rows: readonly (readonly [time: number, speed: number, grade?: number])[],
  parts: { readonly phases?: readonly Phase[]; readonly soaks?: readonly Span[] } = {},
): CycleTrace {
  return {
    id: "test",
    title: "Test",
    source: "own manoeuvre",
    time: Float64Array.from(rows, ([time]) => time),
    speed: Float64Array.from(rows, ([, speed]) => speed),
    grade: Float64Array.from(rows, ([, , grade]) => grade ?? 0),
    phases: parts.phases ?? [],
    soaks: parts.soaks ?? [],
    treatment: [],
  };
}
