import { at } from "../../shared/at.ts";

/** Where a curve is drawn, px. */
export interface CurveFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * A long curve as a path: of each px column the least and the greatest value, so that no peak is lost.
 * @param time s, rising
 * @param low value at the frame's bottom
 * @param high value at its top
 */
export function curvePath(
  time: Float64Array,
  values: Float64Array,
  { left, right, top, bottom }: CurveFrame,
  low: number,
  high: number,
): string {
  const rows = Math.min(time.length, values.length);
  if (rows === 0 || right <= left) return "";
  const end = Math.max(1e-9, at(time, rows - 1));
  const y = (value: number): string =>
    (bottom - ((bottom - top) * (value - low)) / Math.max(1e-12, high - low)).toFixed(1);
  const points: string[] = [];
  let row = 0;
  while (row < rows) {
    const column = Math.floor(((right - left) * at(time, row)) / end);
    const first = row;
    let [least, most] = [first, first];
    while (row < rows && Math.floor(((right - left) * at(time, row)) / end) === column) {
      if (at(values, row) < at(values, least)) least = row;
      if (at(values, row) > at(values, most)) most = row;
      row += 1;
    }
    for (const one of least <= most ? [least, most] : [most, least]) {
      points.push(`${(left + column).toFixed(1)} ${y(at(values, one))}`);
    }
  }
  return `M${points.join("L")}`;
}
