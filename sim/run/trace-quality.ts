import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { mphToMps } from "../../shared/units.ts";
import { type LimitId, limitsIn } from "../limits.ts";
import type { LogReader } from "./log.ts";

/** A stretch outside the tolerance, and the limits that bound in it or shortly before. */
export interface TraceMiss extends Span {
  /** greatest distance from the tolerance band, m/s */
  readonly worst: number;
  readonly limits: readonly LimitId[];
}

/** How well the vehicle followed what was asked. */
export interface TraceQuality {
  /** m/s */
  readonly rmsError: number;
  readonly greatestError: number;
  /** s outside ±2 mph within ±1 s */
  readonly secondsOutside: number;
  readonly misses: readonly TraceMiss[];
}

/** Speed tolerance: 2 mph above the highest and below the lowest target within ±1 s (40 CFR 600.109-08(b)(2)). */
export const SPEED_TOLERANCE = mphToMps(2);
export const TIME_TOLERANCE = 1;

/** How long before a miss a limit may have bound and still be its cause, s. */
const CAUSE_BEFORE = 10;

/** Distance of a speed from the band that the targets of rows from … until span, m/s; 0 inside. */
function outside(target: Float64Array, from: number, until: number, speed: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let j = from; j <= until; j += 1) {
    const value = at(target, j);
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return Math.max(0, speed - high - SPEED_TOLERANCE, low - SPEED_TOLERANCE - speed);
}

function limitsBetween(log: LogReader, from: number, until: number): LimitId[] {
  let mask = 0;
  const bits = log.limits;
  for (let i = Math.max(0, from); i <= until; i += 1) mask |= at(bits, i);
  return limitsIn(mask >>> 0);
}

/** Trace quality of a log whose rows are equally spaced. */
export function traceQuality(log: LogReader): TraceQuality {
  const speed = log.view("speed");
  const target = log.view("target");
  const time = log.view("time");
  const n = log.rows;
  const width = n > 1 ? at(time, 1) - at(time, 0) : 1;
  const reach = Math.round(TIME_TOLERANCE / width);
  let squares = 0;
  let greatest = 0;
  let count = 0;
  let open: { from: number; worst: number } | null = null;
  const misses: TraceMiss[] = [];
  const close = (until: number): void => {
    if (!open) return;
    const before = Math.round(CAUSE_BEFORE / width);
    misses.push({
      start: at(time, open.from),
      end: at(time, until),
      worst: open.worst,
      limits: limitsBetween(log, open.from - before, until),
    });
    open = null;
  };
  for (let i = 0; i < n; i += 1) {
    const error = at(speed, i) - at(target, i);
    squares += error * error;
    greatest = Math.max(greatest, Math.abs(error));
    const far =
      Math.abs(error) <= SPEED_TOLERANCE
        ? 0
        : outside(target, Math.max(0, i - reach), Math.min(n - 1, i + reach), at(speed, i));
    if (far > 0) {
      count += 1;
      open = open ? { from: open.from, worst: Math.max(open.worst, far) } : { from: i, worst: far };
    } else close(i);
  }
  close(n - 1);
  return { rmsError: Math.sqrt(squares / n), greatestError: greatest, secondsOutside: count * width, misses };
}
