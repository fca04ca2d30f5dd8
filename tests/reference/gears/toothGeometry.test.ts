// Involute tooth geometry against printed examples. Standing of each row:
// "found" = seen in a public text or in a public set of worked solutions to the book named;
// "from memory" = known but not seen again; "derived" = worked out from the formulas alone, a check of the code.
// Tolerance: half a unit of the last printed digit.
import { describe, expect, test } from "vitest";
import { externalContact, internalContact, slidingSpeed } from "../../../renderer/scene/gears/contact.ts";
import {
  chordalThickness,
  externalDiameters,
  toothThickness,
} from "../../../renderer/scene/gears/dimensions.ts";
import { leastPinionTeeth, leastTeethWithRack } from "../../../renderer/scene/gears/limits.ts";

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const within = (got: number, printed: number, half: number): void => {
  expect(Math.abs(got - printed), `got ${got}, printed ${printed}`).toBeLessThanOrEqual(half);
};

describe("contact of external gears", () => {
  // Khurmi & Gupta, Theory of Machines, Ex. 12.3, p. 398 (found; unrounded path and ratio recomputed)
  test("G1: module 12, 30/80 teeth, addendum 10 mm", () => {
    const contact = externalContact(30, 80, { module: 12, addendum: 10 / 12 });
    within(contact.path, 52.3, 0.05);
    within(contact.path, 52.258, 0.0005);
    within(contact.arc, 55.61, 0.005);
    within(contact.ratio, 1.475, 0.0005);
  });

  // Khurmi & Gupta, Ex. 12.4, p. 399 (found)
  test("G2: module 5, 20/40 teeth, pitch line 1.2 m/s", () => {
    const contact = externalContact(20, 40, { module: 5 });
    within(degrees(contact.firstAngle), 29.43, 0.005);
    const pinion = 1200 / 50;
    within(slidingSpeed(pinion, -pinion / 2, Math.max(contact.approach, contact.recess)), 455.3, 0.5);
  });

  // Khurmi & Gupta, Ex. 12.5, p. 400 (found; the book rounds the speeds it multiplies, hence half a unit in the third digit)
  test("G3: the same gears at 2000 rev/min", () => {
    const contact = externalContact(20, 40, { module: 5 });
    const pinion = (2000 * Math.PI) / 30;
    within(slidingSpeed(pinion, -pinion / 2, contact.approach), 3973, 5);
    within(slidingSpeed(pinion, -pinion / 2, contact.recess), 3610, 5);
  });

  // Khurmi & Gupta, Ex. 12.6, p. 401 (found)
  test("G4: module 6, 17/49 teeth", () => {
    const contact = externalContact(17, 49, { module: 6 });
    within(degrees(contact.firstAngle), 34.6, 0.05);
    within(degrees(contact.secondAngle), 12, 0.05);
    within(contact.ratio, 1.633, 0.0005);
    const [pinion, wheel] = [1, -17 / 49];
    const rolling = pinion * 51;
    within(slidingSpeed(pinion, wheel, contact.approach) / rolling, 0.41, 0.005);
    within(slidingSpeed(pinion, wheel, contact.recess) / rolling, 0.354, 0.0005);
  });

  // Sarkar, Theory of Machines, ch. 4 Ill. 1, p. 133 (found; the ratio derived)
  test("G5: module 5, 48/30 teeth", () => {
    const contact = externalContact(48, 30, { module: 5 });
    within(contact.arc, 26.7, 0.05);
    within(contact.ratio, 1.7005, 0.00005);
  });

  test("sliding is zero at the pitch point and in block rotation", () => {
    expect(slidingSpeed(3, -2, 0)).toBe(0);
    expect(slidingSpeed(3, 3, 5)).toBe(0);
  });
});

// Bevan, The Theory of Machines, ch. 10 Ex. 4, p. 334 (found; the unrounded numbers recomputed)
test.each([
  ["a rack", leastTeethWithRack(), 17.1, 18],
  ["an equal pinion", leastPinionTeeth(1), 12.32, 13],
  ["a wheel of 3:1", leastPinionTeeth(3), 14.98, 15],
  ["a very large wheel", leastPinionTeeth(1e9), 17.1, 18],
])("G6: fewest teeth free of interference with %s", (_, got, exact, teeth) => {
  within(got, exact, 0.005);
  expect(Math.ceil(got)).toBe(teeth);
});

// Elements of Metric Gear Technology, Table 10-1, p. T-81 (found)
test("G7: tooth thickness with profile shift, module 10, 12 teeth, x = +0.3", () => {
  const given = { module: 10, backlash: 0 };
  within(toothThickness("external", given, 0.3), 17.8918, 0.00005);
  const { halfAngle, chord, height } = chordalThickness(12, given, 0.3);
  within(degrees(halfAngle), 8.5427, 0.000005);
  within(chord, 17.8256, 0.00005);
  within(height, 13.6657, 0.00005);
  within((externalDiameters(12, given, 0.3).tip - 120) / 2, 13, 1e-12);
});

test("shift moves thickness from a tooth to the space: external and internal add up to a pitch", () => {
  const given = { module: 2, backlash: 0 };
  const sum = toothThickness("external", given, 0.3) + toothThickness("internal", given, 0.3);
  within(sum, 2 * Math.PI, 1e-12);
});

// Elements of Metric Gear Technology, Table 4-1, p. T-34 (inputs seen, results from memory; contact ratio derived)
test("G8: module 3, 12/24 teeth", () => {
  const small = externalDiameters(12, { module: 3 });
  const large = externalDiameters(24, { module: 3 });
  const contact = externalContact(12, 24, { module: 3 });
  within(contact.centreDistance, 54, 1e-9);
  for (const [got, printed] of [
    [small.pitch, 36],
    [large.pitch, 72],
    [small.base, 33.8289],
    [large.base, 67.6579],
    [small.tip, 42],
    [large.tip, 78],
    [small.root, 28.5],
    [large.root, 64.5],
  ] as const) {
    within(got, printed, 0.00005);
  }
  within(contact.ratio, 1.5111, 0.00005);
});

// Derived from the contact ratio formulas of ISO 21771 (formulas from memory)
test("G9: contact ratios of the set 40/32/104", () => {
  within(externalContact(40, 32).ratio, 1.6906, 0.00005);
  within(internalContact(32, 104).ratio, 1.911, 0.00005);
});

test("an internal contact asks for a ring larger than its planet", () => {
  expect(() => internalContact(40, 40)).toThrow(RangeError);
});
