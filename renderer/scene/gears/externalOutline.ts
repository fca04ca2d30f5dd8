import { externalDiameters, toothThickness } from "./dimensions.ts";
import { FILLET_RESERVE } from "./fillet.ts";
import { flankPoints, halfAngleAt, type Involute } from "./flank.ts";
import { halfTooth } from "./halfTooth.ts";
import { tangentLength } from "./involute.ts";
import { type Fineness, fineness, type Outline, repeatTooth } from "./outline.ts";
import { needTeeth, type Proportions, proportions } from "./proportions.ts";

/** Tooth system, fineness, and a tip circle other than the standard one. */
export interface OutlineOptions extends Partial<Proportions>, Fineness {
  /** Unit of the module. */
  readonly tipDiameter?: number;
}

/** The involute of an external gear without profile shift, lengths in the unit of the module. */
export function externalInvolute(teeth: number, given: Partial<Proportions> = {}): Involute {
  const { pitch, base } = externalDiameters(teeth, given);
  return {
    base: base / 2,
    pitchHalfAngle: toothThickness("external", given) / pitch,
    pressureAngle: proportions(given).pressureAngle,
    sense: 1,
  };
}

/**
 * Outline of an external gear, counter-clockwise, tooth 0 centred on the x axis: tip arc, involute down to the
 * base circle or the start of the fillet, radial line where the base circle lies above that start, and a circular
 * fillet into the root circle, all of it deeper than the mate's tips reach (see `FILLET_RESERVE`). Below
 * `leastTeethWithRack` a real cutter would undercut the tooth; here the flank just ends at the base circle.
 * @param teeth whole, ≥ 5
 * @throws RangeError for a proportion out of range, a pointed tooth or overlapping fillets
 */
export function externalGearOutline(teeth: number, options: OutlineOptions = {}): Outline {
  needTeeth(teeth, 5);
  const { module, addendum, dedendum } = proportions(options);
  const { flankPoints: count, arcPieces } = fineness(options);
  const { pitch, tip, root } = externalDiameters(teeth, options);
  const curve = externalInvolute(teeth, options);
  const depth = addendum + FILLET_RESERVE * (dedendum - addendum);
  const startRadius = pitch / 2 - module * depth;
  const foot = Math.max(startRadius, curve.base);
  const half = halfTooth({
    teeth,
    flank: flankPoints(curve, foot, (options.tipDiameter ?? tip) / 2, count),
    start: {
      radius: startRadius,
      halfAngle: halfAngleAt(curve, foot),
      outward: tangentLength(startRadius, curve.base),
    },
    rootRadius: root / 2,
    arcPieces,
  });
  return repeatTooth(half, teeth);
}
