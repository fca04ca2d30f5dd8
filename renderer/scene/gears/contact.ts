import { basePitch, externalDiameters, internalDiameters } from "./dimensions.ts";
import { tangentLength } from "./involute.ts";
import { type Proportions, proportions } from "./proportions.ts";

/** How two gears at their standard centre distance touch; lengths in the unit of the module, angles in rad. */
export interface Contact {
  readonly centreDistance: number;
  /** Path from first contact to the pitch point when the first gear drives. */
  readonly approach: number;
  /** Path from the pitch point to last contact. */
  readonly recess: number;
  /** approach + recess */
  readonly path: number;
  /** What both pitch circles roll during one contact: path/cos α. */
  readonly arc: number;
  /** Mean number of tooth pairs in contact: path/base pitch. */
  readonly ratio: number;
  /** Angle the first gear turns during one contact. */
  readonly firstAngle: number;
  /** Angle the second gear turns during one contact. */
  readonly secondAngle: number;
}

/** Tip diameters that differ from the standard, in the unit of the module. */
export interface TipDiameters {
  readonly first?: number;
  readonly second?: number;
}

/**
 * Contact of two external gears (ISO 21771 transverse contact ratio). True only where the tips stay clear of the
 * mate's base points: see `limits.ts`.
 */
export function externalContact(
  firstTeeth: number,
  secondTeeth: number,
  given: Partial<Proportions> = {},
  tips: TipDiameters = {},
): Contact {
  const first = externalDiameters(firstTeeth, given);
  const second = externalDiameters(secondTeeth, given);
  const sine = Math.sin(proportions(given).pressureAngle);
  return finish(
    given,
    [first.pitch / 2, second.pitch / 2],
    (first.pitch + second.pitch) / 2,
    tangentLength((tips.second ?? second.tip) / 2, second.base / 2) - (second.pitch / 2) * sine,
    tangentLength((tips.first ?? first.tip) / 2, first.base / 2) - (first.pitch / 2) * sine,
  );
}

/**
 * Contact of an external gear (first) inside an internal one (second), same source.
 * @throws RangeError when the ring has not more teeth than the gear inside it
 */
export function internalContact(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions> = {},
  tips: TipDiameters = {},
): Contact {
  if (!(ringTeeth > planetTeeth)) throw new RangeError(`ring ${ringTeeth} must exceed planet ${planetTeeth}`);
  const planet = externalDiameters(planetTeeth, given);
  const ring = internalDiameters(ringTeeth, given);
  const sine = Math.sin(proportions(given).pressureAngle);
  return finish(
    given,
    [planet.pitch / 2, ring.pitch / 2],
    (ring.pitch - planet.pitch) / 2,
    (ring.pitch / 2) * sine - tangentLength((tips.second ?? ring.tip) / 2, ring.base / 2),
    tangentLength((tips.first ?? planet.tip) / 2, planet.base / 2) - (planet.pitch / 2) * sine,
  );
}

function finish(
  given: Partial<Proportions>,
  radii: readonly [number, number],
  centreDistance: number,
  approach: number,
  recess: number,
): Contact {
  const path = approach + recess;
  const arc = path / Math.cos(proportions(given).pressureAngle);
  return {
    centreDistance,
    approach,
    recess,
    path,
    arc,
    ratio: path / basePitch(given),
    firstAngle: arc / radii[0],
    secondAngle: arc / radii[1],
  };
}

/**
 * Speed at which two flanks slide on each other, length/s: the relative speed of the gears times the distance of
 * the contact from the pitch point along the line of action.
 * @param firstSpeed rad/s, positive counter-clockwise; likewise `secondSpeed` (external mates have opposite signs)
 * @param distance from the pitch point, ≥ 0
 */
export const slidingSpeed = (firstSpeed: number, secondSpeed: number, distance: number): number =>
  Math.abs(firstSpeed - secondSpeed) * distance;
