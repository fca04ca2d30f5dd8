import { involute, profileAngle, tangentLength } from "./involute.ts";

/** A point of a flank: distance from the axis, and angle from the tooth's middle, rad. */
export interface FlankPoint {
  readonly radius: number;
  readonly halfAngle: number;
}

/** What fixes an involute flank of a tooth. */
export interface Involute {
  /** Base radius. */
  readonly base: number;
  /** Half the angle of the tooth on the pitch circle, rad. */
  readonly pitchHalfAngle: number;
  /** Pressure angle at the pitch circle, rad. */
  readonly pressureAngle: number;
  /** +1 external (tooth narrows outward), −1 internal (tooth narrows inward). */
  readonly sense: 1 | -1;
}

/** Half the angle of a tooth at a radius, rad: ψ(r) = ψ(pitch) ± (inv α − inv α_r), + for external gears. */
export function halfAngleAt(curve: Involute, radius: number): number {
  const turn = involute(curve.pressureAngle) - involute(profileAngle(radius, curve.base));
  return curve.pitchHalfAngle + curve.sense * turn;
}

/**
 * Points of the involute, evenly spaced in roll angle, so that each straight piece turns the tangent by the same
 * amount. Both radii must be at or outside the base circle.
 * @param count both ends included, ≥ 2
 */
export function flankPoints(curve: Involute, from: number, to: number, count: number): FlankPoint[] {
  const first = tangentLength(from, curve.base);
  const last = tangentLength(to, curve.base);
  return Array.from({ length: count }, (_, index) => {
    // The ends are taken as given, so that arcs join without a rounding step.
    const inner = Math.hypot(curve.base, first + ((last - first) * index) / (count - 1));
    const radius = index === 0 ? from : index === count - 1 ? to : inner;
    return { radius, halfAngle: halfAngleAt(curve, radius) };
  });
}
