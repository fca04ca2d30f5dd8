import { at } from "../../../shared/at.ts";
import type { FaultList } from "../faults.ts";
import { MOST_DISORDER } from "./limits.ts";
import type { GpxPoint } from "./points.ts";

/** A place with a time. */
export type TimedPoint = GpxPoint & { readonly seconds: number };

/** Places in the order of time. */
export interface Ordered {
  /** Times strictly rising. */
  readonly points: readonly TimedPoint[];
  /** Places at the time of another one. */
  readonly repeated: number;
  /** Places whose time goes back. */
  readonly backward: number;
  /** True when segments stood in another order than that of time. */
  readonly moved: boolean;
}

/**
 * Puts segments in the order of time and sets aside places that do not go on. A few are a receiver's hiccup; many mean
 * that the file is something else.
 * @param segments places with times
 * @throws InputError naming the first place out of order when more than a fifth are
 */
export function orderPoints(segments: readonly (readonly TimedPoint[])[], faults: FaultList): Ordered {
  const filled = segments.filter((segment) => segment.length > 0);
  const sorted = [...filled].sort((a, b) => at(a, 0).seconds - at(b, 0).seconds);
  const points: TimedPoint[] = [];
  let repeated = 0;
  let backward = 0;
  let first: TimedPoint | null = null;
  let before: TimedPoint | null = null;
  for (const point of sorted.flat()) {
    const last = points[points.length - 1];
    if (!last || point.seconds > last.seconds) {
      points.push(point);
      continue;
    }
    if (point.seconds === last.seconds) repeated += 1;
    else backward += 1;
    if (first === null) {
      first = point;
      before = last;
    }
  }
  const total = points.length + repeated + backward;
  if (first && before && repeated + backward > MOST_DISORDER * total) {
    const share = Math.round((100 * (repeated + backward)) / total);
    faults.stop(
      `The times do not go on: ${share} % of the places have a time that is repeated or goes back, here first.`,
      { part: first.place },
      timeText(first.seconds),
      `later than ${timeText(before.seconds)} (${before.place})`,
    );
  }
  return { points, repeated, backward, moved: sorted.some((segment, i) => segment !== filled[i]) };
}

/** Time of day in UTC, `07:30:00`. */
export function timeText(seconds: number): string {
  const day = seconds - 86_400 * Math.floor(seconds / 86_400);
  const two = (value: number): string => String(Math.floor(value)).padStart(2, "0");
  return `${two(day / 3600)}:${two((day / 60) % 60)}:${two(day % 60)} UTC`;
}
