import { at } from "../shared/at.ts";
import type { CycleTrace, Span } from "../shared/cycle.ts";
import { interpolate, stretchAt } from "./sample.ts";

/** The bare samples of a trace, all arrays of one length. */
export interface Samples {
  /** s, strictly increasing. */
  readonly time: Float64Array;
  /** m/s. */
  readonly speed: Float64Array;
  /** Rise over run. */
  readonly grade: Float64Array;
}

/** First and last time of a trace, s. */
export function wholeSpan(trace: CycleTrace): Span {
  return { start: at(trace.time, 0), end: at(trace.time, trace.time.length - 1) };
}

/**
 * Makes samples at the given times by straight lines.
 * @param times s, strictly increasing
 */
export function samplesAt(trace: CycleTrace, times: Float64Array): Samples {
  const pick = (values: Float64Array): Float64Array =>
    times.map((t) => interpolate(trace.time, values, stretchAt(trace.time, t), t));
  return { time: times, speed: pick(trace.speed), grade: pick(trace.grade) };
}

/**
 * The samples inside a span with its two ends added where they fall between samples. The clock is left as it is.
 * @param span within the trace, start < end
 */
export function cut(trace: CycleTrace, span: Span): Samples {
  const inside = trace.time.filter((t) => t > span.start && t < span.end);
  const times = new Float64Array(inside.length + 2);
  times[0] = span.start;
  times.set(inside, 1);
  times[times.length - 1] = span.end;
  return samplesAt(trace, times);
}

/** The overlap of two spans, or null when there is none. */
export function overlap(a: Span, b: Span): Span | null {
  const start = Math.max(a.start, b.start);
  const end = Math.min(a.end, b.end);
  return start < end ? { start, end } : null;
}
