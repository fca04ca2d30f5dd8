/** The tooth system shared by all gears of a set. Angles in rad; heights and backlash are multiples of the module. */
export interface Proportions {
  /** Pitch diameter per tooth; every length that comes out is in this unit (1 gives lengths in modules). > 0 */
  readonly module: number;
  /** Pressure angle of the basic rack, rad, 0 < α < π/4. */
  readonly pressureAngle: number;
  /** Tip height over the pitch line, modules, > 0. */
  readonly addendum: number;
  /** Root depth under the pitch line, modules, > addendum; the difference is the tip clearance. */
  readonly dedendum: number;
  /** Play of a pair measured along the pitch circles, modules, ≥ 0. Each gear's teeth are thinned by half of it. */
  readonly backlash: number;
}

/**
 * Full-depth 20° involutes with a quarter module of tip clearance (ISO 53 heights) and a circular backlash of
 * 0.04 modules: about 0.07 mm at module 1.75 mm, an ordinary running fit, and too little to be seen.
 */
export const STANDARD: Proportions = Object.freeze({
  module: 1,
  pressureAngle: Math.PI / 9,
  addendum: 1,
  dedendum: 1.25,
  backlash: 0.04,
});

/**
 * Fills in what is not given from {@link STANDARD} and checks the result.
 * @throws RangeError naming the value that is out of its range
 */
export function proportions(given: Partial<Proportions> = {}): Proportions {
  const { module, pressureAngle, addendum, dedendum, backlash } = { ...STANDARD, ...given };
  need(module > 0 && Number.isFinite(module), "module", module, "> 0");
  need(
    pressureAngle > 0 && pressureAngle < Math.PI / 4,
    "pressure angle",
    pressureAngle,
    "within 0 … π/4 rad",
  );
  need(addendum > 0, "addendum", addendum, "> 0 modules");
  need(dedendum > addendum && Number.isFinite(dedendum), "dedendum", dedendum, `> addendum ${addendum}`);
  need(backlash >= 0 && backlash < 1, "backlash", backlash, "within 0 … 1 module");
  return { module, pressureAngle, addendum, dedendum, backlash };
}

/** @throws RangeError unless `teeth` is a whole number of at least `least` (3 where none is given) */
export function needTeeth(teeth: number, least = 3): void {
  need(Number.isInteger(teeth) && teeth >= least, "number of teeth", teeth, `whole and ≥ ${least}`);
}

function need(holds: boolean, what: string, value: number, range: string): void {
  if (!holds) throw new RangeError(`${what} is ${value}, must be ${range}`);
}
