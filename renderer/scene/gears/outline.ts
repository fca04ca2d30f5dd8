import { at } from "../../../shared/at.ts";

/**
 * A closed polyline as x, y pairs in the unit of the module; the last point joins the first and is not repeated.
 * Outlines of gears run counter-clockwise seen from the front.
 */
export type Outline = Float64Array;

/** A point, or a direction. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How finely curves become straight pieces. */
export interface Fineness {
  /** Points on each involute flank, both ends counted, ≥ 2. */
  readonly flankPoints?: number;
  /** Pieces of each root fillet and twice the pieces of half a tip arc and half a root arc, even, ≥ 2. */
  readonly arcPieces?: number;
}

/** Ten points keep a flank within 0.004 modules of the true involute, less than half the standard play of a flank. */
const FLANK_POINTS = 10;
const ARC_PIECES = 4;

/** @throws RangeError naming the value out of range */
export function fineness(given: Fineness): Required<Fineness> {
  const { flankPoints = FLANK_POINTS, arcPieces = ARC_PIECES } = given;
  if (!Number.isInteger(flankPoints) || flankPoints < 2) {
    throw new RangeError(`flankPoints is ${flankPoints}, must be whole and ≥ 2`);
  }
  if (!Number.isInteger(arcPieces) || arcPieces < 2 || arcPieces % 2 !== 0) {
    throw new RangeError(`arcPieces is ${arcPieces}, must be even and ≥ 2`);
  }
  return { flankPoints, arcPieces };
}

/** The point at `radius` in the direction `angle`, rad from the x axis. */
export const polar = (radius: number, angle: number): Point => ({
  x: radius * Math.cos(angle),
  y: radius * Math.sin(angle),
});

/**
 * Repeats half a tooth all round. Every tooth gets the same number of points: 2 (half.length − 1), starting in
 * the middle of the space before it; tooth 0 is centred on the x axis.
 * @param half from the middle of the space at −π/teeth to the middle of the tip on the x axis, both included
 */
export function repeatTooth(half: readonly Point[], teeth: number): Outline {
  const mirrored = half.slice(1, -1).reverse();
  const tooth = [...half, ...mirrored.map(({ x, y }) => ({ x, y: -y }))];
  const outline = new Float64Array(2 * tooth.length * teeth);
  let next = 0;
  for (let index = 0; index < teeth; index += 1) {
    const angle = (2 * Math.PI * index) / teeth;
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    for (const { x, y } of tooth) {
      outline[next] = x * cosine - y * sine;
      outline[next + 1] = x * sine + y * cosine;
      next += 2;
    }
  }
  return outline;
}

/**
 * A circle round the origin, counter-clockwise, starting on the x axis.
 * @param points ≥ 3
 * @throws RangeError when the radius is not positive or the points are too few
 */
export function circleOutline(radius: number, points: number): Outline {
  if (!(radius > 0)) throw new RangeError(`radius is ${radius}, must be > 0`);
  if (!Number.isInteger(points) || points < 3)
    throw new RangeError(`points is ${points}, must be whole and ≥ 3`);
  const outline = new Float64Array(2 * points);
  for (let index = 0; index < points; index += 1) {
    const { x, y } = polar(radius, (2 * Math.PI * index) / points);
    outline[2 * index] = x;
    outline[2 * index + 1] = y;
  }
  return outline;
}

/** The same polyline run the other way. */
export function reversed(outline: Outline): Outline {
  const result = new Float64Array(outline.length);
  for (let from = 0; from < outline.length; from += 2) {
    const to = outline.length - 2 - from;
    result[to] = at(outline, from);
    result[to + 1] = at(outline, from + 1);
  }
  return result;
}

/** Enclosed area, positive when counter-clockwise (shoelace formula). */
export function signedArea(outline: Outline): number {
  let twice = 0;
  let x = at(outline, outline.length - 2);
  let y = at(outline, outline.length - 1);
  for (let index = 0; index < outline.length; index += 2) {
    const nextX = at(outline, index);
    const nextY = at(outline, index + 1);
    twice += x * nextY - nextX * y;
    x = nextX;
    y = nextY;
  }
  return twice / 2;
}

/** Least and greatest distance of the points from the origin. */
export function radiusBounds(outline: Outline): { readonly least: number; readonly greatest: number } {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let index = 0; index < outline.length; index += 2) {
    const radius = Math.hypot(at(outline, index), at(outline, index + 1));
    least = Math.min(least, radius);
    greatest = Math.max(greatest, radius);
  }
  return { least, greatest };
}
