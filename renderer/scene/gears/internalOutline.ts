import { internalDiameters, toothThickness } from "./dimensions.ts";
import type { OutlineOptions } from "./externalOutline.ts";
import { FILLET_RESERVE } from "./fillet.ts";
import { flankPoints, halfAngleAt, type Involute } from "./flank.ts";
import { halfTooth } from "./halfTooth.ts";
import { tangentLength } from "./involute.ts";
import { fineness, type Outline, repeatTooth } from "./outline.ts";
import { needTeeth, type Proportions, proportions } from "./proportions.ts";

/** The involute of an internal gear without profile shift, lengths in the unit of the module. */
export function internalInvolute(teeth: number, given: Partial<Proportions> = {}): Involute {
  const { pitch, base } = internalDiameters(teeth, given);
  return {
    base: base / 2,
    pitchHalfAngle: toothThickness("internal", given) / pitch,
    pressureAngle: proportions(given).pressureAngle,
    sense: -1,
  };
}

/**
 * The toothed inner edge of an internal gear, counter-clockwise (the metal is outside it), tooth 0 centred on the
 * x axis: tip arc, involute, and a circular fillet into the root circle, all of it further out than the planet's
 * tips reach (see `FILLET_RESERVE`).
 * @param teeth whole; at 20° and addendum 1 at least 34, else the tip lies inside the base circle. Pass
 * `tipDiameter` (see `ringTipDiameter`) where the standard tip would interfere with the planet
 * @throws RangeError for a proportion out of range, a tip inside the base circle, or overlapping fillets
 */
export function internalGearOutline(teeth: number, options: OutlineOptions = {}): Outline {
  needTeeth(teeth, 5);
  const { module, addendum, dedendum } = proportions(options);
  const { flankPoints: count, arcPieces } = fineness(options);
  const { pitch, tip, root } = internalDiameters(teeth, options);
  const curve = internalInvolute(teeth, options);
  const depth = addendum + FILLET_RESERVE * (dedendum - addendum);
  const startRadius = pitch / 2 + module * depth;
  const tipRadius = (options.tipDiameter ?? tip) / 2;
  if (tipRadius < curve.base) {
    throw new RangeError(
      `tip radius ${tipRadius} of ${teeth} internal teeth lies inside the base circle ${curve.base}`,
    );
  }
  const half = halfTooth({
    teeth,
    flank: flankPoints(curve, startRadius, tipRadius, count),
    start: {
      radius: startRadius,
      halfAngle: halfAngleAt(curve, startRadius),
      outward: -tangentLength(startRadius, curve.base),
    },
    rootRadius: root / 2,
    arcPieces,
  });
  return repeatTooth(half, teeth);
}
