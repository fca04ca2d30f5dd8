import { contours } from "d3-contour";
import { type MapGrid, type Samples, sampleAt } from "../../../sim/vehicle/maps.ts";

/** A place on a map, SI. */
export type MapPoint = readonly [x: number, y: number];

/** Lines of one level; open where they meet the edge of the grid. */
export interface ContourLevel {
  readonly level: number;
  readonly lines: readonly (readonly MapPoint[])[];
}

/** Place of a contour coordinate: a sample stands in the middle of its cell, the edge half a cell outside it. */
function placeOf(samples: Samples, coordinate: number): number {
  const index = Math.min(samples.count - 1, Math.max(0, coordinate - 0.5));
  const low = Math.floor(index);
  const from = sampleAt(samples, low);
  return low === index ? from : from + (sampleAt(samples, low + 1) - from) * (index - low);
}

const onEdge = (value: number, count: number): boolean => value <= 0 || value >= count;

/** A ring cut where it runs along the edge of the grid: there it is no contour but the end of what is known. */
function cutAtEdge(ring: readonly (readonly number[])[], columns: number, rows: number): number[][][] {
  const outer = ([x = 0, y = 0]: readonly number[]): boolean => onEdge(x, columns) || onEdge(y, rows);
  const pieces: number[][][] = [];
  let piece: number[][] = [];
  ring.forEach((point, i) => {
    const before = ring[i - 1];
    if (before && outer(before) && outer(point)) {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
    }
    piece.push([...point]);
  });
  if (piece.length > 1) pieces.push(piece);
  const [first, last] = [pieces[0], pieces.at(-1)];
  // The ring's own start may lie in the middle of a line.
  if (pieces.length > 1 && first && last && ring[0] && !outer(ring[0])) {
    pieces.pop();
    pieces[0] = [...last, ...first.slice(1)];
  }
  return pieces;
}

/** Lines of equal value on a grid. */
export function contourLines(grid: MapGrid, levels: readonly number[]): readonly ContourLevel[] {
  const { x, y, values } = grid;
  const found = contours()
    .size([x.count, y.count])
    .thresholds([...levels])([...values]);
  return found.map(({ value, coordinates }) => ({
    level: value,
    lines: coordinates.flatMap((polygon) =>
      polygon.flatMap((ring) =>
        cutAtEdge(ring, x.count, y.count).map((line) =>
          line.map(([px = 0, py = 0]): MapPoint => [placeOf(x, px), placeOf(y, py)]),
        ),
      ),
    ),
  }));
}

/** Distances below the best whole percentage at which an efficiency map has its lines, percentage points. */
const STEPS = {
  engine: [0, 1, 2, 4, 8, 14, 22],
  machine: [0, 1, 3, 8, 20],
} as const;

/** Efficiencies (0–1) to draw, falling: the first two are the best. */
export function levelsOf(grid: MapGrid, kind: keyof typeof STEPS): readonly number[] {
  const best = grid.values.reduce((most, value) => Math.max(most, value), 0);
  // A ring about the best point that is too small to be seen says nothing.
  const top = Math.floor(best * 100 - 0.2);
  return STEPS[kind].map((step) => (top - step) / 100).filter((level) => level > 0.02);
}
