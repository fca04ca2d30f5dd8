import { GAP_ACCELERATION } from "./settings.ts";

/** A speed in a gap. */
export interface CrossingPoint {
  /** s from the gap's start. */
  readonly time: number;
  /** m/s. */
  readonly speed: number;
}

/**
 * The calmest simple way through a gap: a ramp from the speed before to one steady speed, and a ramp to the speed behind.
 * The steady speed is the one that covers the distance in the time; the ramps start at 1 m/s² and get steeper only when
 * it cannot be done so, up to 8 m/s², the most that tyres hold; a distance that needs more is not met.
 * @param length s, above 0
 * @param distance m, 0 or more
 * @param before m/s at the start, 0 or more
 * @param after m/s at the end, 0 or more
 * @returns points inside the gap, in order, both ends left out
 */
export function cross(length: number, distance: number, before: number, after: number): CrossingPoint[] {
  let best: CrossingPoint[] = [];
  for (let ramp = GAP_ACCELERATION; ramp <= STEEPEST_RAMP; ramp *= Math.SQRT2) {
    const found = steady(length, distance, before, after, ramp);
    best = found.points;
    if (Math.abs(found.distance - distance) <= 1e-6 * (1 + distance)) break;
  }
  return best.filter((point, i, all) => i === 0 || point.time > (all[i - 1]?.time ?? 0) + CLOSE);
}

/** m/s², the square root of two times over GAP_ACCELERATION six times. */
const STEEPEST_RAMP = 8.1;

/** s; two samples closer than this would not stay apart on a long clock. */
const CLOSE = 1e-6;

/** With ramps of one steepness: the steady speed whose distance comes nearest. */
function steady(length: number, distance: number, before: number, after: number, ramp: number) {
  let low = 0;
  let high = Math.max(before, after, distance / length) + ramp * length;
  for (let k = 0; k < 80; k += 1) {
    const middle = (low + high) / 2;
    if (through(length, middle, before, after, ramp).distance < distance) low = middle;
    else high = middle;
  }
  return through(length, (low + high) / 2, before, after, ramp);
}

/** Points and distance of ramp, steady speed and ramp; where both ramps need more than the time they are steepened. */
function through(length: number, speed: number, before: number, after: number, ramp: number) {
  const wanted0 = Math.abs(speed - before) / ramp;
  const wanted1 = Math.abs(speed - after) / ramp;
  const squeeze = Math.min(1, length / Math.max(1e-12, wanted0 + wanted1));
  // Squeezed ramps would be steeper than asked: the speed reached is less instead.
  const t0 = wanted0 * squeeze;
  const t1 = wanted1 * squeeze;
  const v0 = Math.max(0, before + Math.sign(speed - before) * ramp * t0);
  const v1 = Math.max(0, after + Math.sign(speed - after) * ramp * t1);
  const hold = length - t0 - t1;
  const way = ((before + v0) * t0 + (v0 + v1) * hold + (v1 + after) * t1) / 2;
  const points = [
    { time: t0, speed: v0 },
    { time: length - t1, speed: v1 },
  ].filter((point) => point.time > CLOSE && point.time < length - CLOSE);
  return { points, distance: way };
}
