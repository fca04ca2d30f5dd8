import { at } from "../../shared/at.ts";
import type { CycleTrace, Span } from "../../shared/cycle.ts";
import { cut, overlap, wholeSpan } from "../cut.ts";
import { stretchAt } from "../sample.ts";

/** A piece of driving without a soak in it; straight lines between the samples. */
export interface Stretch {
  /** s, strictly increasing, at least 2 samples. */
  readonly time: Float64Array;
  /** m/s, 0 or more: how fast, whichever way. A change of direction has a sample at 0. */
  readonly speed: Float64Array;
}

/**
 * The driving in a span, in order, soaks left out.
 * @param span within the trace; the whole trace when left out
 */
export function stretches(trace: CycleTrace, span: Span = wholeSpan(trace)): Stretch[] {
  const pieces: Span[] = [];
  let start = span.start;
  for (const soak of trace.soaks) {
    const before = overlap({ start, end: soak.start }, span);
    if (before) pieces.push(before);
    start = Math.max(start, soak.end);
  }
  const rest = overlap({ start, end: span.end }, span);
  if (rest) pieces.push(rest);
  return pieces.map((piece) => withoutSign(cut(trace, piece)));
}

function withoutSign({ time, speed }: Stretch): Stretch {
  const times: number[] = [];
  const speeds: number[] = [];
  time.forEach((t, i) => {
    const v = at(speed, i);
    const before = i === 0 ? v : at(speed, i - 1);
    if (v * before < 0) {
      const t0 = at(time, i - 1);
      const crossing = t0 + ((t - t0) * before) / (before - v);
      // Rounding may put the crossing onto a sample; two samples at one time would divide by zero later.
      if (crossing > t0 && crossing < t) {
        times.push(crossing);
        speeds.push(0);
      }
    }
    times.push(t);
    speeds.push(Math.abs(v));
  });
  return { time: Float64Array.from(times), speed: Float64Array.from(speeds) };
}

/** Speed of a stretch at a time within it, m/s. */
export function speedAt({ time, speed }: Stretch, t: number): number {
  const i = stretchAt(time, t);
  const t0 = at(time, i);
  const v0 = at(speed, i);
  const share = (t - t0) / (at(time, i + 1) - t0);
  return v0 + (at(speed, i + 1) - v0) * Math.min(1, Math.max(0, share));
}
