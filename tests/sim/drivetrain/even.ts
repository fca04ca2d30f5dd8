import fc from "fast-check";

const STEPS = 2 ** 30;

/**
 * A number spread evenly over [min, max], both ends included. `fc.double` spreads over the floating-point numbers
 * instead: from 0 to 40 nine in ten of them lie below 1e-12, so a range that holds zero is hardly tried.
 */
export const even = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((i) => min + ((max - min) * i) / STEPS);
