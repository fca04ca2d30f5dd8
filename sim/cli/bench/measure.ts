import { percentile } from "../../../cycles/statistics/percentile.ts";
import { type Around, stopIfCancelled } from "../around.ts";

/** Runs before the measured ones, so that the code is compiled. */
export const WARM_UP = 5;

/** Times of one scene, ms. */
export interface Times {
  readonly median: number;
  readonly min: number;
  readonly p90: number;
  readonly runs: number;
}

/** Median, least and 90th percentile of measured times. @param times ms, any order, at least one */
export const timesOf = (times: readonly number[]): Times => ({
  median: percentile(times, 0.5),
  min: Math.min(...times),
  p90: percentile(times, 0.9),
  runs: times.length,
});

/**
 * Measures work done over and over.
 * @param what for the progress
 * @param warmUp runs before the measured ones
 */
export function measure(
  what: string,
  runs: number,
  work: () => unknown,
  around: Around,
  warmUp = WARM_UP,
): Times {
  const times: number[] = [];
  for (let i = -warmUp; i < runs; i += 1) {
    stopIfCancelled(around);
    const began = performance.now();
    work();
    if (i >= 0) times.push(performance.now() - began);
    around.progress(`measuring ${what}`, (i + 1 + warmUp) / (runs + warmUp));
  }
  return timesOf(times);
}
