import { type Point, polar } from "./outline.ts";

/**
 * Share of the tip clearance left free between the circle the mate's tips reach and the start of the fillet. The
 * mate therefore never enters the zone of the fillet, whatever its tooth number: its tips go no deeper than the
 * pitch radius less (internal gear: plus) one addendum, the fillet begins deeper than that.
 */
export const FILLET_RESERVE = 0.2;

/** Where a fillet leaves the flank of a tooth centred on the x axis; the flank is the one at negative angles. */
export interface FilletStart {
  /** Distance from the gear's axis. */
  readonly radius: number;
  /** Angle from the tooth's middle, rad, ≥ 0. */
  readonly halfAngle: number;
  /**
   * Outward part of the flank's normal (pointing into the space) times the radius: √(r² − rb²) on an external
   * involute, 0 on a radial line, −√(r² − rb²) on an internal involute.
   */
  readonly outward: number;
}

/** A fillet arc from the root circle to the flank. */
export interface Fillet {
  /** Radius of the arc. */
  readonly radius: number;
  /** Angle from the tooth's middle at which it touches the root circle, rad. */
  readonly rootHalfAngle: number;
  /** pieces + 1 points from the root circle to the flank. */
  readonly points: readonly Point[];
}

/**
 * The one circle that touches the flank at `start` and the root circle. With C = P + ρ n its distance from the
 * axis is |rf + ρ| (external, root inside) or |rf − ρ| (internal, root outside); both give
 * ρ = (r² − rf²)/(2 (±rf − P·n)) with + for the root inside.
 * @param rootRadius rf; below start.radius for an external gear, above it for an internal one
 * @param pieces straight pieces, ≥ 1
 */
export function fillet(start: FilletStart, rootRadius: number, pieces: number): Fillet {
  const { radius: r, outward } = start;
  const square = (r - rootRadius) * (r + rootRadius);
  const inside = r > rootRadius;
  const radius = inside ? square / (2 * (rootRadius - outward)) : -square / (2 * (rootRadius + outward));
  const along = outward / r;
  const across = -Math.sqrt(1 - along * along);
  // Radial frame at the start point: first axis outward, second axis counter-clockwise.
  const centre = { x: r + radius * along, y: radius * across };
  const toFlank = Math.atan2(-across, -along);
  const centreAngle = Math.atan2(centre.y, centre.x);
  const toRoot = inside ? centreAngle + Math.PI : centreAngle;
  const sweep = Math.atan2(Math.sin(toFlank - toRoot), Math.cos(toFlank - toRoot));
  const points = Array.from({ length: pieces + 1 }, (_, index) => {
    const spoke = polar(radius, toRoot + (sweep * index) / pieces);
    const x = centre.x + spoke.x;
    const y = centre.y + spoke.y;
    return polar(Math.hypot(x, y), Math.atan2(y, x) - start.halfAngle);
  });
  return { radius, rootHalfAngle: start.halfAngle - centreAngle, points };
}
