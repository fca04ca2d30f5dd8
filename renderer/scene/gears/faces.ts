import { circleOutline, type Outline, radiusBounds, reversed } from "./outline.ts";

/** A flat face ready for triangulating or extruding: outline counter-clockwise, holes clockwise. */
export interface Face {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

/** Points of a plain circle: straight pieces of 3.75°. */
const CIRCLE_POINTS = 96;

/**
 * A wheel with a round hub bore.
 * @param gear outline of an external gear
 * @param boreRadius unit of the module; 0 for a full disc
 * @throws RangeError when the bore does not lie inside the root circle
 */
export function wheelFace(gear: Outline, boreRadius: number, circlePoints = CIRCLE_POINTS): Face {
  const { least } = radiusBounds(gear);
  if (!(boreRadius >= 0 && boreRadius < least)) {
    throw new RangeError(`bore radius ${boreRadius} must be ≥ 0 and inside the root circle ${least}`);
  }
  return {
    outline: gear,
    holes: boreRadius === 0 ? [] : [reversed(circleOutline(boreRadius, circlePoints))],
  };
}

/**
 * A ring with inner teeth and a round outside.
 * @param gear inner edge of an internal gear, counter-clockwise as `internalGearOutline` gives it
 * @param outerRadius unit of the module
 * @throws RangeError when the outside, with its straight pieces, does not lie outside the root circle
 */
export function ringFace(gear: Outline, outerRadius: number, circlePoints = CIRCLE_POINTS): Face {
  const { greatest } = radiusBounds(gear);
  if (!(outerRadius * Math.cos(Math.PI / circlePoints) > greatest)) {
    throw new RangeError(`outer radius ${outerRadius} must be outside the root circle ${greatest}`);
  }
  return { outline: circleOutline(outerRadius, circlePoints), holes: [reversed(gear)] };
}
