/** A stretch of time, s: start ≤ t < end. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A named part of a cycle (a bag, a phase). */
export interface Phase extends Span {
  readonly id: string;
  readonly title: string;
}

/**
 * What a drive asks for: speed and grade over time, linear between the samples.
 * All three arrays have the same length (at least 2).
 */
export interface CycleTrace {
  /** Lower case, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  /** The regulation, or "own manoeuvre", or the imported file's name. */
  readonly source: string;
  /** s, strictly increasing, first sample at 0. */
  readonly time: Float64Array;
  /** m/s; negative only when backing up. */
  readonly speed: Float64Array;
  /** Rise over run (tan of the angle); 0.05 climbs 5 m in 100 m. */
  readonly grade: Float64Array;
  /** In order, not overlapping; empty when the cycle has none. */
  readonly phases: readonly Phase[];
  /** Stretches with the vehicle switched off (a soak): no auxiliaries, engine off, standing. */
  readonly soaks: readonly Span[];
  /** What was done to the data before it came here, one sentence each; empty for untouched tables. */
  readonly treatment: readonly string[];
}
