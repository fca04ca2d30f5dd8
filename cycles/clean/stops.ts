import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { CREEP, LEAST_STILL, LEAST_STILL_SPEED, STILL_BREAK, STILL_SPEED, STILL_WANDER } from "./settings.ts";
import { between, type Plane } from "./track.ts";

/**
 * Finds where the vehicle stood, from a smoothed track: stretches in which the smooth speed is no more than what jitter
 * leaves of it, that last, and that get nowhere. Stretches at one place with a short twitch between are one.
 * @param time s
 * @param plane smoothed, as long
 * @param speed m/s, smoothed, as long
 * @param jitter m
 * @returns s, in order, apart
 */
export function findStops(time: Float64Array, plane: Plane, speed: Float64Array, jitter: number): Span[] {
  const slow = Math.max(LEAST_STILL_SPEED, STILL_SPEED * Math.sqrt(Math.sqrt(jitter)));
  const runs: { first: number; last: number }[] = [];
  for (let i = 0; i < time.length; i += 1) {
    if (at(speed, i) >= slow) continue;
    const last = runs[runs.length - 1];
    if (last && last.last === i - 1) last.last = i;
    else if (last && joins(last.first, last.last, i)) last.last = i;
    else runs.push({ first: i, last: i });
  }
  return runs
    .map(trimmed)
    .filter(({ first, last }) => {
      const length = at(time, last) - at(time, first);
      return (
        length >= LEAST_STILL &&
        between(plane, first, last) <= Math.max(STILL_WANDER, 2 * jitter, CREEP * length)
      );
    })
    .map(({ first, last }) => ({ start: at(time, first), end: at(time, last) }));

  // Braking and pulling away pass through the slow speeds as well: the ends are where half of it is reached.
  function trimmed(run: { first: number; last: number }): { first: number; last: number } {
    let { first, last } = run;
    while (first < last && at(speed, first) > slow / 2) first += 1;
    while (last > first && at(speed, last) > slow / 2) last -= 1;
    return { first, last };
  }

  function joins(first: number, last: number, i: number): boolean {
    return at(time, i) - at(time, last) <= STILL_BREAK && between(plane, first, i) < Math.max(3, 3 * jitter);
  }
}

/** 1 for each time inside a span. @param time rising; @param spans in order */
export function inside(time: Float64Array, spans: readonly Span[]): Uint8Array {
  const marks = new Uint8Array(time.length);
  let k = 0;
  for (let i = 0; i < time.length; i += 1) {
    while (k < spans.length && at(spans, k).end < at(time, i)) k += 1;
    if (k < spans.length && at(spans, k).start <= at(time, i)) marks[i] = 1;
  }
  return marks;
}
