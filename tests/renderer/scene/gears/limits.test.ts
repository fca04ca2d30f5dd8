import { expect, test } from "vitest";
import { internalContact } from "../../../../renderer/scene/gears/contact.ts";
import { internalDiameters } from "../../../../renderer/scene/gears/dimensions.ts";
import { externalGearOutline } from "../../../../renderer/scene/gears/externalOutline.ts";
import {
  involuteInterferenceCheck,
  ringTipDiameter,
  trimmingInterferenceCheck,
  trochoidInterferenceCheck,
} from "../../../../renderer/scene/gears/internalMesh.ts";
import { internalGearOutline } from "../../../../renderer/scene/gears/internalOutline.ts";
import {
  externalInterferenceCheck,
  leastPinionTeeth,
  undercutCheck,
} from "../../../../renderer/scene/gears/limits.ts";
import { meshOverlap, NAMED_SETS } from "./meshing.ts";

/** Largest overlap of a planet turning in a ring over one pitch, no backlash. */
function overlapInRing(
  planetTeeth: number,
  ringTeeth: number,
  flankPoints: number,
  tipDiameter?: number,
): number {
  const options = { backlash: 0, flankPoints };
  const planet = externalGearOutline(planetTeeth, options);
  const ring = internalGearOutline(
    ringTeeth,
    tipDiameter === undefined ? options : { ...options, tipDiameter },
  );
  const x = (ringTeeth - planetTeeth) / 2;
  let largest = 0;
  for (let step = 0; step < 16; step += 1) {
    const turn = (2 * Math.PI * step) / 16 / planetTeeth;
    largest = Math.max(
      largest,
      meshOverlap(
        { outline: planet, angle: turn, x, y: 0, internal: false },
        { outline: ring, angle: (Math.PI + turn * planetTeeth) / ringTeeth, x: 0, y: 0, internal: true },
      ),
    );
  }
  return largest;
}

/** Points a flank, and the overlap that its straight pieces alone leave, modules². */
const FINE = { points: 200, overlap: 2e-7 };
const COARSE = { points: 40, overlap: 3e-6 };

test.each(NAMED_SETS)(
  "the $name set has no interference of any kind and keeps its full ring teeth",
  (set) => {
    const { sunTeeth, planetTeeth, ringTeeth } = set;
    expect(undercutCheck(sunTeeth).pass && undercutCheck(planetTeeth).pass).toBe(true);
    expect(
      externalInterferenceCheck(Math.min(sunTeeth, planetTeeth), Math.max(sunTeeth, planetTeeth)).pass,
    ).toBe(true);
    expect(involuteInterferenceCheck(planetTeeth, ringTeeth).pass).toBe(true);
    expect(trochoidInterferenceCheck(planetTeeth, ringTeeth).pass).toBe(true);
    expect(trimmingInterferenceCheck(planetTeeth, ringTeeth).pass).toBe(true);
    expect(ringTipDiameter(planetTeeth, ringTeeth)).toBe(internalDiameters(ringTeeth).tip);
  },
);

test.each([
  [18, 36],
  [18, 54],
  [19, 60],
  [20, 50],
])(
  "planet %i in ring %i: involute interference is real, and the shortened ring tip cures it",
  (planet, ring) => {
    expect(involuteInterferenceCheck(planet, ring).pass).toBe(false);
    expect(overlapInRing(planet, ring, FINE.points)).toBeGreaterThan(20 * FINE.overlap);
    const tip = ringTipDiameter(planet, ring);
    expect(involuteInterferenceCheck(planet, ring, {}, { second: tip }).pass).toBe(true);
    expect(overlapInRing(planet, ring, FINE.points, tip)).toBeLessThan(FINE.overlap);
    const shortening = (tip - internalDiameters(ring).tip) / 2;
    expect(shortening).toBeGreaterThan(0);
    expect(shortening).toBeLessThan(0.25);
    expect(internalContact(planet, ring, {}, { second: tip }).ratio).toBeGreaterThan(1.4);
  },
);

test.each([30, 40, 60])("planet of %i: fouling is real where the trochoid check fails", (planet) => {
  for (const difference of [4, 5, 6, 7]) {
    expect(trochoidInterferenceCheck(planet, planet + difference).pass).toBe(false);
    expect(overlapInRing(planet, planet + difference, COARSE.points)).toBeGreaterThan(100 * COARSE.overlap);
  }
  for (const difference of [9, 10, 12, 20]) {
    expect(trochoidInterferenceCheck(planet, planet + difference).pass).toBe(true);
    expect(overlapInRing(planet, planet + difference, COARSE.points)).toBeLessThan(COARSE.overlap);
  }
});

test("checks give the two numbers they compare", () => {
  const { pass, value, limit } = involuteInterferenceCheck(30, 100);
  expect(value).toBe(98);
  expect(pass).toBe(value >= limit);
  expect(undercutCheck(17)).toMatchObject({ pass: false, value: 17 });
});

test("a ring tip inside its base circle fails, tip circles that do not cross pass", () => {
  expect(trochoidInterferenceCheck(18, 30).pass).toBe(false);
  expect(trimmingInterferenceCheck(18, 30).pass).toBe(false);
  expect(trochoidInterferenceCheck(30, 100, {}, { first: 27.9 }).value).toBe(Number.POSITIVE_INFINITY);
  expect(() => involuteInterferenceCheck(40, 40)).toThrow(RangeError);
});

test("the pair check turns over exactly at the least pinion", () => {
  for (const ratio of [1, 1.5, 3, 10]) {
    const least = leastPinionTeeth(ratio);
    expect(externalInterferenceCheck(least * 1.0001, least * 1.0001 * ratio).pass).toBe(true);
    expect(externalInterferenceCheck(least * 0.9999, least * 0.9999 * ratio).pass).toBe(false);
  }
});
