import { at } from "../../../shared/at.ts";
import type { Outline } from "../gears/outline.ts";

/** A turn sharper than this is an edge that is drawn. */
export const EDGE_TURN = (25 * Math.PI) / 180;

/** Directions square to each piece of a closed line, and which of its corners are sharp. */
export interface Creases {
  /** Outward x, y at the start and at the end of piece i, that is at points i and i + 1: four numbers each. */
  readonly normals: Float64Array;
  readonly sharp: readonly boolean[];
}

/** Outward directions of a counter-clockwise line: shared by neighbouring pieces, except at sharp corners. */
export function creases(points: Outline): Creases {
  const count = points.length / 2;
  const pieces = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const dx = at(points, 2 * j) - at(points, 2 * i);
    const dy = at(points, 2 * j + 1) - at(points, 2 * i + 1);
    const length = Math.hypot(dx, dy) || 1;
    pieces[2 * i] = dy / length;
    pieces[2 * i + 1] = -dx / length;
  }
  const normals = new Float64Array(4 * count);
  const sharp: boolean[] = [];
  for (let i = 0; i < count; i += 1) {
    const h = (i + count - 1) % count;
    const [ax, ay] = [at(pieces, 2 * h), at(pieces, 2 * h + 1)];
    const [bx, by] = [at(pieces, 2 * i), at(pieces, 2 * i + 1)];
    const isSharp = ax * bx + ay * by < Math.cos(EDGE_TURN);
    sharp.push(isSharp);
    const length = Math.hypot(ax + bx, ay + by) || 1;
    const shared = [(ax + bx) / length, (ay + by) / length];
    normals.set(isSharp ? [ax, ay] : shared, 4 * h + 2);
    normals.set(isSharp ? [bx, by] : shared, 4 * i);
  }
  return { normals, sharp };
}
