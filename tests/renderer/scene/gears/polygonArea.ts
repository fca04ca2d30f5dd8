import { at } from "../../../../shared/at.ts";

/** An edge of a polygon as the top of a signed strip that reaches down to the common floor y = 0. */
interface Strip {
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
  readonly sign: number;
}

/**
 * Exact area two simple polygons share (up to rounding), for any shapes, convex or not.
 *
 * The inside of a polygon is the signed sum of the strips under its edges. The product of two such sums is the
 * inside of both, and two strips share the area under the lower of their two tops, which has a closed form.
 * @param first x, y pairs, counter-clockwise (both clockwise also works; mixed gives the negative)
 */
export function overlapArea(first: Float64Array, second: Float64Array): number {
  const floor = Math.min(lowest(first), lowest(second));
  const others = strips(second, floor).sort((a, b) => a.from - b.from);
  // Most strips are narrow: only those that begin within one width before the strip can reach it.
  const narrow = (4 * others.reduce((sum, { from, to }) => sum + to - from, 0)) / others.length;
  const fine = others.filter(({ from, to }) => to - from <= narrow);
  const wide = others.filter(({ from, to }) => to - from > narrow);
  let area = 0;
  for (const one of strips(first, floor)) {
    for (const other of wide) area += signedShare(one, other);
    for (let index = firstFrom(fine, one.from - narrow); index < fine.length; index += 1) {
      const other = at(fine, index);
      if (other.from >= one.to) break;
      area += signedShare(one, other);
    }
  }
  return area;
}

/** Index of the first strip that begins at or after x, by halving. */
function firstFrom(sorted: readonly Strip[], x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(sorted, middle).from < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

const signedShare = (one: Strip, other: Strip): number =>
  one.to > other.from && other.to > one.from ? one.sign * other.sign * sharedArea(one, other) : 0;

function lowest(polygon: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < polygon.length; index += 2) least = Math.min(least, at(polygon, index));
  return least;
}

function strips(polygon: Float64Array, floor: number): Strip[] {
  const result: Strip[] = [];
  let x = at(polygon, polygon.length - 2);
  let y = at(polygon, polygon.length - 1) - floor;
  for (let index = 0; index < polygon.length; index += 2) {
    const nextX = at(polygon, index);
    const nextY = at(polygon, index + 1) - floor;
    if (nextX < x) result.push({ from: nextX, to: x, start: nextY, end: y, sign: 1 });
    if (nextX > x) result.push({ from: x, to: nextX, start: y, end: nextY, sign: -1 });
    x = nextX;
    y = nextY;
  }
  return result;
}

function sharedArea(one: Strip, other: Strip): number {
  const from = Math.max(one.from, other.from);
  const to = Math.min(one.to, other.to);
  const width = to - from;
  const [oneStart, oneEnd] = [height(one, from), height(one, to)];
  const [otherStart, otherEnd] = [height(other, from), height(other, to)];
  const before = oneStart - otherStart;
  const after = oneEnd - otherEnd;
  if (before <= 0 && after <= 0) return (width * (oneStart + oneEnd)) / 2;
  if (before >= 0 && after >= 0) return (width * (otherStart + otherEnd)) / 2;
  const crossing = (width * before) / (before - after);
  const level = oneStart + ((oneEnd - oneStart) * crossing) / width;
  const [low, high] = before < 0 ? [oneStart, otherEnd] : [otherStart, oneEnd];
  return ((low + level) * crossing + (level + high) * (width - crossing)) / 2;
}

const height = (strip: Strip, x: number): number =>
  strip.start + ((strip.end - strip.start) * (x - strip.from)) / (strip.to - strip.from);
