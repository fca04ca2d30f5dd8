import { at, realAt } from "../../shared/at.ts";

/** A function sampled at equal distances from `start`; linear between, held at its ends. */
export interface UniformTable {
  readonly start: number;
  readonly perStep: number;
  readonly last: number;
  readonly values: Float64Array;
}

/** Linear interpolation in points with increasing x; the end values hold outside. */
export function interpolate(x: ArrayLike<number>, y: ArrayLike<number>, value: number): number {
  const n = x.length;
  if (value <= at(x, 0)) return at(y, 0);
  if (value >= at(x, n - 1)) return at(y, n - 1);
  let i = 1;
  while (at(x, i) < value) i += 1;
  const x0 = at(x, i - 1);
  const y0 = at(y, i - 1);
  return y0 + ((at(y, i) - y0) * (value - x0)) / (at(x, i) - x0);
}

/** Samples a function at count + 1 equally spaced places over [from, to]. */
export function tabulate(from: number, to: number, count: number, f: (x: number) => number): UniformTable {
  const values = new Float64Array(count + 1);
  for (let i = 0; i <= count; i += 1) values[i] = f(from + ((to - from) * i) / count);
  return { start: from, perStep: count / (to - from), last: count, values };
}

/** Reads a uniform table, linear between its samples, its end values outside. */
export function lookUp(table: UniformTable, x: number): number {
  const place = (x - table.start) * table.perStep;
  if (place <= 0) return realAt(table.values, 0);
  if (place >= table.last) return realAt(table.values, table.last);
  const i = Math.floor(place);
  const low = realAt(table.values, i);
  return low + (realAt(table.values, i + 1) - low) * (place - i);
}

/**
 * Monotone cubic interpolation (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980; slopes limited to three times
 * the smaller neighbouring secant, after Fritsch and Butland 1984). Rising points give a rising curve.
 * @param x increasing
 * @returns the interpolating function; the end values hold outside
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): (value: number) => number {
  const n = x.length;
  const secant = (i: number): number => (at(y, i + 1) - at(y, i)) / (at(x, i + 1) - at(x, i));
  const slopes = x.map((_, i) => {
    if (i === 0) return secant(0);
    if (i === n - 1) return secant(n - 2);
    const a = secant(i - 1);
    const b = secant(i);
    if (a * b <= 0) return 0;
    const w =
      (2 * (at(x, i + 1) - at(x, i)) + (at(x, i) - at(x, i - 1))) / (3 * (at(x, i + 1) - at(x, i - 1)));
    return (a * b) / (w * b + (1 - w) * a);
  });
  return (value) => {
    if (value <= at(x, 0)) return at(y, 0);
    if (value >= at(x, n - 1)) return at(y, n - 1);
    let i = 0;
    while (at(x, i + 1) < value) i += 1;
    const width = at(x, i + 1) - at(x, i);
    const t = (value - at(x, i)) / width;
    const u = 1 - t;
    return (
      u * u * (1 + 2 * t) * at(y, i) +
      t * t * (3 - 2 * t) * at(y, i + 1) +
      width * t * u * (u * at(slopes, i) - t * at(slopes, i + 1))
    );
  };
}
