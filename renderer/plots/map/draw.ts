import type { Segment } from "../../ui/labels.ts";
import type { MapPoint } from "./contour-lines.ts";
import type { MapFrame } from "./frame.ts";

/** A place on the sheet, px. */
export type Spot = readonly [x: number, y: number];

/** Places of a line through SI points; what is not a number is left out. */
export const spots = (frame: MapFrame, points: readonly MapPoint[]): Spot[] =>
  points
    .filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
    .map(([x, y]) => [frame.x(x), frame.y(y)]);

/** SVG path of a line. */
export const pathOf = (line: readonly Spot[]): string =>
  line.length === 0 ? "" : `M${line.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}`;

/** The pieces of a line, for labels to keep clear of. */
export const segmentsOf = (line: readonly Spot[]): Segment[] =>
  line.flatMap(([x1, y1], i) => {
    const next = line[i + 1];
    return next ? [{ x1, y1, x2: next[0], y2: next[1] }] : [];
  });

/** A line moved sideways by a distance, px: to its left as it runs, on a sheet whose y goes down. */
export function beside(line: readonly Spot[], distance: number): Spot[] {
  return line.map(([x, y], i) => {
    const [ax, ay] = line[Math.max(0, i - 1)] ?? [x, y];
    const [bx, by] = line[Math.min(line.length - 1, i + 1)] ?? [x, y];
    const length = Math.hypot(bx - ax, by - ay) || 1;
    return [x + ((by - ay) / length) * distance, y - ((bx - ax) / length) * distance];
  });
}

/** A band along the outside of a limit, for its hatch. */
export const bandOf = (line: readonly Spot[], width: number): string =>
  `${pathOf([...line, ...beside(line, width).reverse()])}Z`;
