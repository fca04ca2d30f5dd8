import { at } from "../shared/at.ts";
import type { CycleTrace } from "../shared/cycle.ts";

/**
 * The stretch between two samples that holds a time.
 * @param time s, strictly increasing, at least 2 samples
 * @param t s
 * @returns index i with time[i] ≤ t < time[i + 1]; 0 before the start, length − 2 from the last sample on
 */
export function stretchAt(time: Float64Array, t: number): number {
  let low = 0;
  let high = time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(time, middle) <= t) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Straight line between the samples i and i + 1, level before the first and after the last sample.
 * @param time s, strictly increasing
 * @param values one for each time, any unit
 * @param i stretch, 0 … length − 2
 * @param t s
 */
export function interpolate(time: Float64Array, values: Float64Array, i: number, t: number): number {
  const t0 = at(time, i);
  const t1 = at(time, i + 1);
  if (t <= t0) return at(values, i);
  if (t >= t1) return at(values, i + 1);
  const v0 = at(values, i);
  return v0 + ((at(values, i + 1) - v0) * (t - t0)) / (t1 - t0);
}

/** Speed and grade at one time. For many times in a row use a TraceCursor. */
export function sample(trace: CycleTrace, t: number): { speed: number; grade: number } {
  const i = stretchAt(trace.time, t);
  return {
    speed: interpolate(trace.time, trace.speed, i, t),
    grade: interpolate(trace.time, trace.grade, i, t),
  };
}

/**
 * Reads a trace at rising times without searching and without making objects. Going back in time is allowed and
 * costs one search. Before the start and after the end it gives the first and last sample.
 */
export class TraceCursor {
  private readonly time: Float64Array;
  private readonly speeds: Float64Array;
  private readonly grades: Float64Array;
  private stretch = 0;

  /** @param trace at least 2 samples; not copied */
  constructor(trace: CycleTrace) {
    this.time = trace.time;
    this.speeds = trace.speed;
    this.grades = trace.grade;
  }

  /** Speed asked for at t (s), m/s. */
  speedAt(t: number): number {
    this.moveTo(t);
    return interpolate(this.time, this.speeds, this.stretch, t);
  }

  /** Grade at t (s), rise over run. */
  gradeAt(t: number): number {
    this.moveTo(t);
    return interpolate(this.time, this.grades, this.stretch, t);
  }

  private moveTo(t: number): void {
    if (t < at(this.time, this.stretch)) this.stretch = stretchAt(this.time, t);
    const last = this.time.length - 2;
    while (this.stretch < last && t >= at(this.time, this.stretch + 1)) this.stretch += 1;
  }
}
