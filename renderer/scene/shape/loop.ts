import { at } from "../../../shared/at.ts";
import { circleOutline, type Outline, radiusBounds } from "../gears/outline.ts";

/** A closed line round the axis that every ray from the axis meets once. Counter-clockwise from the front. */
export interface Loop {
  readonly points: Outline;
  /** Light at each point, 0–1; shorter lists repeat. */
  readonly light: readonly number[];
  /** Radius of a circle; null for anything else. */
  readonly radius: number | null;
  /** Mean radius, for the slope of a surface between two loops. */
  readonly mean: number;
}

/** Straight pieces that make a circle look round at the size it is drawn. */
export const circlePieces = (radius: number): number =>
  4 * Math.round(Math.min(28, Math.max(5, 3 + radius * 0.42)));

/** A circle as a loop. */
export const circle = (radius: number, light = 1): Loop => ({
  points: circleOutline(radius, circlePieces(radius)),
  light: [light],
  radius,
  mean: radius,
});

/**
 * A toothed or otherwise shaped line as a loop. Grooves get less light than tips.
 * @param inner true where the metal is outside the line, so that the grooves are its outermost points
 * @param groove light at the bottom of the grooves
 */
export function shaped(points: Outline, inner = false, groove = 1): Loop {
  const { least, greatest } = radiusBounds(points);
  const span = greatest - least || 1;
  const light: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const radius = Math.hypot(at(points, i), at(points, i + 1));
    const height = inner ? (greatest - radius) / span : (radius - least) / span;
    light.push(groove + (1 - groove) * height);
  }
  return { points, light, radius: null, mean: (least + greatest) / 2 };
}

/** The same loop with its points moved along their own directions by a distance, positive away from the axis. */
export function offset(loop: Loop, distance: number): Loop {
  if (loop.radius !== null) return circle(loop.radius + distance, at(loop.light, 0));
  const points = Float64Array.from(loop.points);
  for (let i = 0; i < points.length; i += 2) {
    const radius = Math.hypot(at(points, i), at(points, i + 1));
    points[i] = (at(points, i) * (radius + distance)) / radius;
    points[i + 1] = (at(points, i + 1) * (radius + distance)) / radius;
  }
  return { ...loop, points, mean: loop.mean + distance };
}

/** The same loop in one light all along. */
export const evenly = (loop: Loop, light: number): Loop => ({ ...loop, light: [light] });

/** A line given by its radius at each angle. */
export function polarOutline(points: number, radiusAt: (angle: number) => number): Outline {
  const outline = new Float64Array(2 * points);
  for (let i = 0; i < points; i += 1) {
    const angle = (2 * Math.PI * i) / points;
    outline[2 * i] = radiusAt(angle) * Math.cos(angle);
    outline[2 * i + 1] = radiusAt(angle) * Math.sin(angle);
  }
  return outline;
}

/** Angles of a loop's points, rad, rising from the first one on; one more than points, the last a whole turn on. */
export function risingAngles(points: Outline): number[] {
  const angles: number[] = [];
  let last = Math.atan2(at(points, 1), at(points, 0));
  for (let i = 0; i < points.length; i += 2) {
    const angle = Math.atan2(at(points, i + 1), at(points, i));
    last += Math.atan2(Math.sin(angle - last), Math.cos(angle - last));
    angles.push(last);
  }
  angles.push(at(angles, 0) + 2 * Math.PI);
  return angles;
}

/**
 * Outline radius by angle, for cutting it along a ray: the point where the ray at `angle` meets the line.
 * @param angles of {@link risingAngles} for the same points
 */
export function radiusAtAngle(points: Outline, angles: readonly number[], angle: number): number {
  const first = at(angles, 0);
  const turn = 2 * Math.PI;
  const wanted = first + ((((angle - first) % turn) + turn) % turn);
  let low = 0;
  let high = angles.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(angles, middle) <= wanted) low = middle;
    else high = middle;
  }
  const count = points.length / 2;
  const [ax, ay] = [at(points, 2 * low), at(points, 2 * low + 1)];
  const [bx, by] = [at(points, 2 * (high % count)), at(points, 2 * (high % count) + 1)];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const across = (bx - ax) * s - (by - ay) * c;
  if (Math.abs(across) < 1e-12) return Math.hypot(ax, ay);
  const share = Math.min(1, Math.max(0, (ay * c - ax * s) / across));
  return (ax + share * (bx - ax)) * c + (ay + share * (by - ay)) * s;
}
