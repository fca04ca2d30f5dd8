import { at } from "../../../shared/at.ts";
import { emptyPeak, type Peaks } from "./peaks.ts";

/** A curve with what is known of its least and most. */
export interface KnownCurve {
  readonly values: Column;
  readonly peaks: Peaks;
}

/** Curves over one time axis, ready to be drawn. */
export interface Drawable {
  /** s */
  readonly time: Float64Array;
  readonly curves: readonly Column[];
  /** two points a column of pixels: what was in it at least and at most */
  readonly paired: boolean;
}

/** Numbers of a curve. */
export type Column = Float64Array | Float32Array;

/** Rows a column of pixels from which on a curve is drawn by least and most of each column. */
const DENSE = 4;

/**
 * The rows of a window, as they are while they are few; else two points a column of pixels, its least and most in the
 * order in which they come, so that no spike is lost however dense the rows are.
 * @param time s, of every row, growing
 * @param first, last rows of the window, last included
 * @param columns columns of pixels, ≥ 1
 */
export function drawable(
  time: Float64Array,
  curves: readonly KnownCurve[],
  first: number,
  last: number,
  columns: number,
): Drawable {
  const rows = last - first + 1;
  if (rows <= DENSE * columns) {
    return {
      time: time.subarray(first, last + 1),
      curves: curves.map(({ values }) => values.subarray(first, last + 1)),
      paired: false,
    };
  }
  const edge = (column: number): number => first + Math.floor((column * rows) / columns);
  const times = new Float64Array(2 * columns);
  for (let column = 0; column < columns; column += 1) {
    const from = edge(column);
    times[2 * column] = at(time, from);
    times[2 * column + 1] = at(time, Math.floor((from + edge(column + 1)) / 2));
  }
  return { time: times, curves: curves.map((one) => columnPeaks(one, columns, edge)), paired: true };
}

function columnPeaks(
  { values, peaks }: KnownCurve,
  columns: number,
  edge: (column: number) => number,
): Float64Array {
  const found = emptyPeak();
  const points = new Float64Array(2 * columns);
  for (let column = 0; column < columns; column += 1) {
    peaks.between(values, edge(column), edge(column + 1), found);
    const falling = found.mostAt < found.leastAt;
    points[2 * column] = falling ? found.most : found.least;
    points[2 * column + 1] = falling ? found.least : found.most;
  }
  return points;
}
