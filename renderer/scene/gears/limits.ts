import { type Check, compare } from "./check.ts";
import { externalDiameters } from "./dimensions.ts";
import { type Proportions, proportions } from "./proportions.ts";

/**
 * Fewest teeth (not rounded) a rack of addendum `ha` meshes with, and cuts, without undercut: 2 ha/sin² α
 * (Bevan, The Theory of Machines, ch. 10).
 */
export function leastTeethWithRack(given: Partial<Proportions> = {}): number {
  const { pressureAngle, addendum } = proportions(given);
  return (2 * addendum) / Math.sin(pressureAngle) ** 2;
}

/**
 * Fewest teeth (not rounded) of a pinion whose wheel, `ratio` times as many teeth, does not reach past the
 * pinion's base point: 2 ha / (G (√(1 + (1/G)(1/G + 2) sin² α) − 1)) (Bevan, The Theory of Machines, ch. 10).
 * @param ratio G, wheel teeth over pinion teeth, ≥ 1
 */
export function leastPinionTeeth(ratio: number, given: Partial<Proportions> = {}): number {
  const { pressureAngle, addendum } = proportions(given);
  const inverse = 1 / ratio;
  const term = inverse * (inverse + 2) * Math.sin(pressureAngle) ** 2;
  // √(1 + term) − 1, written so that large ratios keep their digits
  return (2 * addendum * (Math.sqrt(1 + term) + 1)) / (ratio * term);
}

/** No undercut by a rack tool: teeth against {@link leastTeethWithRack}. */
export const undercutCheck = (teeth: number, given: Partial<Proportions> = {}): Check =>
  compare(teeth, leastTeethWithRack(given));

/**
 * No interference of an external pair: the wheel's tip must not reach past the point where the line of action
 * touches the pinion's base circle. value = greatest tip diameter allowed, limit = the wheel's tip diameter.
 */
export function externalInterferenceCheck(
  pinionTeeth: number,
  wheelTeeth: number,
  given: Partial<Proportions> = {},
): Check {
  const { pressureAngle, module } = proportions(given);
  const wheel = externalDiameters(wheelTeeth, given);
  const reach = module * (pinionTeeth + wheelTeeth) * Math.sin(pressureAngle);
  return compare(Math.hypot(wheel.base, reach), wheel.tip);
}
