import { at } from "../../shared/at.ts";
import { px } from "./svg.ts";

/** Maps a value to a place, px. */
export type Scale = (value: number) => number;

/**
 * A curve as an SVG path, thinned to what a column of pixels can show: its first, least, greatest and last value, in
 * the order of time.
 * @param width px that the whole time takes
 */
export function curvePath(
  time: ArrayLike<number>,
  values: ArrayLike<number>,
  x: Scale,
  y: Scale,
  width: number,
): string {
  const n = time.length;
  if (n === 0) return "";
  const perColumn = Math.max(1, Math.ceil(n / Math.max(1, width)));
  const points: number[] = [];
  for (let from = 0; from < n; from += perColumn) {
    const until = Math.min(n, from + perColumn);
    let low = from;
    let high = from;
    for (let i = from; i < until; i += 1) {
      if (at(values, i) < at(values, low)) low = i;
      if (at(values, i) > at(values, high)) high = i;
    }
    const kept = [...new Set([from, Math.min(low, high), Math.max(low, high), until - 1])];
    for (const i of kept) {
      // A value that goes on unchanged needs no point of its own.
      const [a, b] = [points.at(-2), points.at(-1)];
      const same =
        a !== undefined &&
        b !== undefined &&
        at(values, a) === at(values, b) &&
        at(values, b) === at(values, i);
      if (same) points[points.length - 1] = i;
      else if (points.at(-1) !== i) points.push(i);
    }
  }
  return points.map((i, k) => `${k === 0 ? "M" : "L"}${px(x(at(time, i)))} ${px(y(at(values, i)))}`).join("");
}

/** Least and greatest of several rows of values; 0 to 1 for none. */
export function rangeOf(rows: readonly ArrayLike<number>[]): readonly [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    for (let i = 0; i < row.length; i += 1) {
      const value = at(row, i);
      if (value < least) least = value;
      if (value > most) most = value;
    }
  }
  return Number.isFinite(least) && Number.isFinite(most) ? [least, most] : [0, 1];
}
