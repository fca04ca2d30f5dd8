import type { Teeth } from "../../../sim/drivetrain/gear-set.ts";
import { postRadius } from "./clearance.ts";

/**
 * Lengths of the drawn set. The unit is a hundredth of the ring's pitch diameter, so that sets of any teeth are
 * equally large on the sheet; the module follows from the ring.
 */
export interface SetMeasures {
  readonly module: number;
  readonly centreDistance: number;
  readonly sunTip: number;
  readonly sunRoot: number;
  readonly planetTip: number;
  readonly planetRoot: number;
  readonly ringRoot: number;
  readonly ringOuter: number;
  /** Hollow shaft of the sun. */
  readonly sunShaft: number;
  readonly sunBore: number;
  /** The carrier's shaft inside it. */
  readonly carrierShaft: number;
  readonly pin: number;
  readonly bearing: number;
  /** Front plate of the carrier. */
  readonly plateInner: number;
  readonly plateOuter: number;
  /** Posts between the plates; 0 where the planets leave no room. */
  readonly post: number;
  /** Hollow shaft of the ring. */
  readonly ringShaft: number;
}

/** Wall of the ring outside its tooth roots. */
const RING_WALL = 6.2;

/** Lengths across the axis for given teeth. */
export function setMeasures(teeth: Teeth): SetMeasures {
  const module = 100 / teeth.ringTeeth;
  const radius = (count: number): number => (module * count) / 2;
  const centreDistance = radius(teeth.sunTeeth + teeth.planetTeeth);
  const sunRoot = radius(teeth.sunTeeth - 2.5);
  const planetTip = radius(teeth.planetTeeth + 2);
  const planetRoot = radius(teeth.planetTeeth - 2.5);
  const sunTip = radius(teeth.sunTeeth + 2);
  const ringRoot = radius(teeth.ringTeeth + 2.5);
  const sunShaft = Math.min(12.5, 0.64 * sunRoot);
  const pin = Math.min(3.9, 0.3 * planetRoot);
  const bearing = Math.min(7, 0.56 * planetRoot);
  const half = Math.min(
    7.8,
    Math.max(pin + 1.2, 0.5 * planetTip),
    centreDistance - sunTip + planetTip * 0.45,
  );
  return {
    module,
    centreDistance,
    sunTip,
    sunRoot,
    planetTip,
    planetRoot,
    ringRoot,
    ringOuter: ringRoot + RING_WALL,
    sunShaft,
    sunBore: 0.72 * sunShaft,
    carrierShaft: 0.66 * sunShaft,
    pin,
    bearing,
    plateInner: centreDistance - half,
    plateOuter: centreDistance + half,
    post: postRadius(teeth, centreDistance, planetTip),
    ringShaft: Math.min(13, 0.7 * sunTip),
  };
}
