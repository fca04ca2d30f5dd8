// Conditions on tooth numbers: Elements of Metric Gear Technology, eq. 13-5 to 13-9, p. T-116 (found in the public
// text of that work); the sets named are derived, or found where said.
import { describe, expect, test } from "vitest";
import {
  angleCheck,
  centreCheck,
  neighbourCheck,
  planetClearance,
  spacingCheck,
} from "../../../renderer/scene/gears/assembly.ts";
import { planetSet } from "../../../renderer/scene/gears/planetSet.ts";

const teeth = (sunTeeth: number, planetTeeth: number, ringTeeth: number, planets: number) => ({
  sunTeeth,
  planetTeeth,
  ringTeeth,
  planets,
});

describe("the four conditions", () => {
  test("A1: Nr = Ns + 2 Np", () => {
    expect(centreCheck(teeth(40, 30, 100, 4))).toEqual({ pass: true, value: 100, wanted: 100 });
    expect(centreCheck(teeth(40, 30, 101, 4))).toEqual({ pass: false, value: 101, wanted: 100 });
  });

  test("A2: (Ns + Nr)/n whole", () => {
    expect(spacingCheck(teeth(40, 30, 100, 4))).toEqual({ pass: true, value: 35, wanted: 35 });
    expect(spacingCheck(teeth(40, 30, 100, 3)).pass).toBe(false);
  });

  test("A3: (Ns + Nr) θ/180 whole, θ half the angle between two planets in degrees", () => {
    const set = teeth(40, 30, 100, 3);
    const halfDegrees = (180 * 47) / 140;
    expect(angleCheck(set, (2 * halfDegrees * Math.PI) / 180)).toMatchObject({ pass: true, wanted: 47 });
    expect(angleCheck(set, (2 * Math.PI) / 3).pass).toBe(false);
  });

  test("A4: (Ns + Np) sin(180°/n) > Np + 2", () => {
    expect(neighbourCheck(teeth(40, 30, 100, 4)).pass).toBe(true);
    expect(neighbourCheck(teeth(20, 50, 120, 4)).pass).toBe(false);
    expect(neighbourCheck(teeth(20, 50, 120, 1)).pass).toBe(true);
    // Touching is not clear: 40 · sin 30° = 18 + 2.
    expect(40 * Math.sin(Math.PI / 6)).toBeCloseTo(20, 12);
    expect(planetClearance(teeth(22, 18, 58, 6), { module: 3 })).toBeCloseTo(0, 12);
  });
});

test("A5: 40/32/104 with four planets passes: quotient 36, clearance 34 < 50.91", () => {
  const set = teeth(40, 32, 104, 4);
  expect(centreCheck(set).pass).toBe(true);
  expect(spacingCheck(set).value).toBe(36);
  const clear = neighbourCheck(set);
  expect(clear.pass).toBe(true);
  expect(clear.limit).toBe(34);
  expect(clear.value).toBeCloseTo(50.91, 2);
  expect(() => planetSet(set)).not.toThrow();
});

// A published reference calculation of a planetary stage made to fit by addendum modification (found)
test("A6: 21/43/108 with three planets meets A2 but not A1, and is refused with that reason", () => {
  const set = teeth(21, 43, 108, 3);
  expect(spacingCheck(set)).toEqual({ pass: true, value: 43, wanted: 43 });
  expect(centreCheck(set)).toEqual({ pass: false, value: 108, wanted: 107 });
  expect(() => planetSet(set)).toThrow(/107 would mesh; profile shift is not covered/);
});
