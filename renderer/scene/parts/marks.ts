import { circleOutline, type Outline } from "../gears/outline.ts";
import { type Body, emptyBody, joined } from "../shape/body.ts";
import { patch } from "../shape/plate.ts";

/** Height of paint over the metal under it: more than lines are lifted off it, so that none shows through. */
const PAINT = 0.35;

/** Width of a mark's line. */
const WIDTH = 2.2;

/** A radial bar of white paint with a dark rim, in the direction given, rad. */
export function radialMark(from: number, to: number, z: number, direction = Math.PI / 2): Body {
  const c = Math.cos(direction);
  const s = Math.sin(direction);
  const corners: readonly (readonly [number, number])[] = [
    [from, -WIDTH / 2],
    [to, -WIDTH / 2],
    [to, WIDTH / 2],
    [from, WIDTH / 2],
  ];
  const outline: Outline = Float64Array.from(corners.flatMap(([r, t]) => [r * c - t * s, r * s + t * c]));
  return patch({ outline, holes: [] }, { front: z + PAINT, tone: "paint", weight: 1.1 });
}

/** A flat round spot on a face. */
export function spot(x: number, y: number, radius: number, z: number, tone: "magnet" | "bearing"): Body {
  const circle = circleOutline(radius, 20);
  for (let i = 0; i < circle.length; i += 2) {
    circle[i] = (circle[i] ?? 0) + x;
    circle[i + 1] = (circle[i + 1] ?? 0) + y;
  }
  return patch({ outline: circle, holes: [] }, { front: z + PAINT, tone, weight: 0.7, light: 0.8 });
}

/** Copies of a body round the axis. */
export function around(count: number, copy: (direction: number) => Body): Body {
  return count === 0
    ? emptyBody()
    : joined(...Array.from({ length: count }, (_, i) => copy((2 * Math.PI * i) / count)));
}
