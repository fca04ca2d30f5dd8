// Internal meshes against Elements of Metric Gear Technology, section 5.2, p. T-44 to T-46 (found in its public text).
import { expect, test } from "vitest";
import {
  involuteInterferenceCheck,
  trimmingInterferenceCheck,
  trochoidInterferenceCheck,
} from "../../../renderer/scene/gears/internalMesh.ts";

/** Table 5-3a: teeth of a pinion cutter without shift, and the smallest internal gear it does not trim. */
const TRIMMING_LIMITS: readonly (readonly [number, number])[] = [
  [15, 34],
  [16, 34],
  [17, 35],
  [18, 36],
  [19, 37],
  [20, 38],
  [21, 39],
  [22, 40],
  [24, 42],
  [25, 43],
  [27, 45],
  [28, 46],
  [30, 48],
  [31, 49],
  [32, 50],
  [33, 51],
  [34, 52],
  [38, 56],
  [40, 58],
  [42, 60],
  [44, 62],
  [48, 66],
  [50, 68],
  [56, 74],
  [60, 78],
  [64, 82],
  [66, 84],
  [80, 98],
  [96, 114],
  [100, 118],
];

// A cutter is 1.25 modules high: the table does not say so, but follows to the tooth with that height.
test.each(TRIMMING_LIMITS)(
  "table 5-3a: cutter of %i teeth trims up to one tooth below %i",
  (cutter, ring) => {
    const tips = { first: cutter + 2.5 };
    expect(trimmingInterferenceCheck(cutter, ring, {}, tips).pass).toBe(true);
    expect(trimmingInterferenceCheck(cutter, ring - 1, {}, tips).pass).toBe(false);
  },
);

test.each(TRIMMING_LIMITS)(
  "the note under it: cutters of 15 to 22 teeth have involute interference (%i)",
  (cutter, ring) => {
    expect(involuteInterferenceCheck(cutter, ring).pass).toBe(cutter > 22);
  },
);

test("trochoid interference is avoided when the tooth numbers differ by more than 9", () => {
  for (let planet = 26; planet <= 120; planet += 1) {
    expect(trochoidInterferenceCheck(planet, planet + 10).pass).toBe(true);
    expect(trochoidInterferenceCheck(planet, planet + 7).pass).toBe(false);
  }
});

// The condition as the work prints it, z1/z2 ≥ 1 − tan αa2/tan αw, must say the same as the diameters compared here.
test("involute interference in its printed form", () => {
  const tangent = Math.tan(Math.PI / 9);
  for (let planet = 15; planet <= 40; planet += 1) {
    for (let ring = Math.max(34, planet + 9); ring <= 130; ring += 1) {
      const tipAngle = Math.acos((ring * Math.cos(Math.PI / 9)) / (ring - 2));
      const printed = planet / ring >= 1 - Math.tan(tipAngle) / tangent;
      expect(involuteInterferenceCheck(planet, ring).pass, `${planet}/${ring}`).toBe(printed);
    }
  }
});
