import type { Phase } from "../../shared/cycle.ts";

/** A regulator's schedule as it lies in `cycles/data/`, with what is known about it. */
export interface StandardTable {
  readonly id: string;
  readonly title: string;
  /** The regulation that prints it. */
  readonly publishedIn: string;
  /** Unit of the table, as in the regulation. */
  readonly unit: "mph" | "km/h";
  /** s; the table has one sample a second, both ends included. */
  readonly duration: number;
  /** How sure the table is: how many copies agree, and which published figure it misses. */
  readonly standing: string;
  /** What was done to get the table, one sentence each; empty when the regulation's own numbers are stored. */
  readonly treatment: readonly string[];
  readonly phases: readonly Phase[];
  /** True when the vehicle stands at every boundary and each phase is offered as a cycle, `id-phase`. */
  readonly phasesAlone: boolean;
  /** The file, header `time_s,speed_mph` or `time_s,speed_kmh`. */
  readonly csv: string;
}

/**
 * Phases that follow one another without a gap.
 * @param parts id, title and end (s) of each, in order; the first starts at 0
 */
export function phasesUpTo(
  ...parts: readonly (readonly [id: string, title: string, end: number])[]
): Phase[] {
  let start = 0;
  return parts.map(([id, title, end]) => {
    const phase = { id, title, start, end };
    start = end;
    return phase;
  });
}
