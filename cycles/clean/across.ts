import { at } from "../../shared/at.ts";
import type { Layer } from "./smooth-elevation.ts";

/** rad; a heading farther off the straight line says that the road went elsewhere, and not how. */
const WIDEST = 1;
/** m; over less than this a heading is jitter. */
const LEAST_RUN = 10;

/**
 * Way across a gap. Between two known places and two known headings a road is taken to run like the cubic curve through
 * them; its length against the straight line is 1 + (2a² + 2b² − ab)/30 for angles a and b of the headings against the
 * line, up to their fourth powers (an arc: a = −b, 1 + a²/6).
 * @returns m, at least the straight distance
 */
export function wayAcross(before: Layer, after: Layer): number {
  const last = before.time.length - 1;
  const dx = at(after.plane.east, 0) - at(before.plane.east, last);
  const dy = at(after.plane.north, 0) - at(before.plane.north, last);
  const straight = Math.sqrt(dx * dx + dy * dy);
  const away = heading(before, last, -1);
  const back = heading(after, 0, 1);
  if (straight < LEAST_RUN || !away || !back) return straight;
  const a = turn(away, [dx, dy]);
  const b = turn(back, [dx, dy]);
  if (Math.abs(a) > WIDEST || Math.abs(b) > WIDEST) return straight;
  return straight * (1 + (2 * a * a + 2 * b * b - a * b) / 30);
}

type Arrow = readonly [east: number, north: number];

/** From the nearest place at least 10 m off towards the end, or from the start towards it; null when there is none. */
function heading({ plane }: Layer, from: number, way: 1 | -1): Arrow | null {
  for (let i = from + way; i >= 0 && i < plane.east.length; i += way) {
    const dx = (at(plane.east, i) - at(plane.east, from)) * way;
    const dy = (at(plane.north, i) - at(plane.north, from)) * way;
    if (dx * dx + dy * dy >= LEAST_RUN * LEAST_RUN) return [dx, dy];
  }
  return null;
}

/** rad from one arrow to another, −π … π. */
const turn = ([ax, ay]: Arrow, [bx, by]: Arrow): number => Math.atan2(bx * ay - by * ax, ax * bx + ay * by);
