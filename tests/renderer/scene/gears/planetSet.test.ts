import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SetTeeth } from "../../../../renderer/scene/gears/assembly.ts";
import { type PlanetPlace, type PlanetSet, planetSet } from "../../../../renderer/scene/gears/planetSet.ts";
import {
  type ShaftAngles,
  shaftAngles,
  shaftAnglesFromCarrier,
} from "../../../../renderer/scene/gears/shaftAngles.ts";
import { NAMED_SETS } from "./meshing.ts";
import { buildableSet } from "./randomSets.ts";

const angle = fc.double({ min: -200, max: 200, noNaN: true });
const near = (got: number, expected: number, scale: number): void => {
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-12 * Math.max(1, scale));
};

describe("gear equation, seed 11", () => {
  const run = (check: (set: SetTeeth, angles: ShaftAngles) => void): void =>
    fc.assert(
      fc.property(buildableSet, angle, angle, (set, one, two) => {
        check(set, shaftAngles(one, two, set));
        check(set, shaftAnglesFromCarrier(one, two, set));
      }),
      { seed: 11, numRuns: 300 },
    );

  test("φs + k φr = (1 + k) φc", () => {
    run((set, { sun, carrier, ring }) => {
      const k = set.ringTeeth / set.sunTeeth;
      const scale = Math.abs(sun) + k * Math.abs(ring) + (1 + k) * Math.abs(carrier);
      near(sun + k * ring, (1 + k) * carrier, scale);
    });
  });

  test("φp = (1 − Nr/Np) φc + (Nr/Np) φr, and planet against sun seen from the carrier", () => {
    run((set, { sun, carrier, ring, planet }) => {
      const ratio = set.ringTeeth / set.planetTeeth;
      const scale = ratio * (Math.abs(carrier) + Math.abs(ring)) + Math.abs(sun);
      near(planet, (1 - ratio) * carrier + ratio * ring, scale);
      near(planet - carrier, -(set.sunTeeth / set.planetTeeth) * (sun - carrier), 3 * scale);
    });
  });
});

test("all shafts at one angle: the planets turn with them as one block", () => {
  expect(shaftAngles(2, 2, { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100 })).toEqual({
    sun: 2,
    carrier: 2,
    ring: 2,
    planet: 2,
  });
});

test("ring held, sun forward: carrier forward, planets backward", () => {
  const { carrier, planet } = shaftAngles(3.5, 0, { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100 });
  expect(carrier).toBeCloseTo(1, 14);
  expect(planet).toBeCloseTo(1 - 100 / 30, 14);
});

/** Teeth counted from tooth 0 to a direction, on a gear turned by `turn`. */
const count = (teeth: number, direction: number, turn: number): number =>
  (teeth * (direction - turn)) / (2 * Math.PI);
/** Distance of a count from the nearest half: 0 when a tooth meets the middle of a space. */
const offHalf = (value: number): number => Math.abs(value - 0.5 - Math.round(value - 0.5));

/** Largest mismatch, in pitches, of the sun and the ring mesh of one planet. */
function mismatch(set: SetTeeth, places: PlanetSet, place: PlanetPlace, angles: ShaftAngles): number {
  const direction = place.position + angles.carrier;
  const planetTurn = place.phase + angles.planet;
  const sun = count(set.sunTeeth, direction, places.sunPhase + angles.sun);
  const ring = count(set.ringTeeth, direction, places.ringPhase + angles.ring);
  const toSun = count(set.planetTeeth, direction + Math.PI, planetTurn);
  const toRing = count(set.planetTeeth, direction, planetTurn);
  return Math.max(offHalf(sun + toSun), offHalf(ring - toRing));
}

describe("phases, seed 12", () => {
  test("every planet meets sun and ring tooth to space, at any carrier angle", () => {
    fc.assert(
      fc.property(buildableSet, fc.array(fc.tuple(angle, angle), { minLength: 20 }), (set, turns) => {
        const places = planetSet(set);
        expect(places.planets).toHaveLength(set.planets);
        for (const place of places.planets) {
          expect(mismatch(set, places, place, shaftAngles(0, 0, set))).toBeLessThan(1e-12);
          for (const [carrier, ring] of turns) {
            const angles = shaftAnglesFromCarrier(carrier, ring, set);
            // Angles of a few thousand radians, counted in pitches, keep about ten digits.
            expect(mismatch(set, places, place, angles)).toBeLessThan(1e-9);
          }
        }
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  test.each(NAMED_SETS)("$name set: positions equally spaced, phases within one pitch", (set) => {
    const { planets, centreDistance, sunPhase } = planetSet(set, 2);
    expect(centreDistance).toBe(set.sunTeeth + set.planetTeeth);
    expect(sunPhase).toBe(0);
    planets.forEach(({ position, phase }, index) => {
      expect(position).toBeCloseTo((2 * Math.PI * index) / set.planets, 14);
      expect(phase).toBeGreaterThanOrEqual(0);
      expect(phase).toBeLessThan((2 * Math.PI) / set.planetTeeth);
    });
  });

  test("an odd planet turns the ring by half a pitch, an even one does not", () => {
    expect(planetSet({ sunTeeth: 21, planetTeeth: 27, ringTeeth: 75, planets: 3 }).ringPhase).toBeCloseTo(
      Math.PI / 75,
      15,
    );
    expect(planetSet({ sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 4 }).ringPhase).toBe(0);
  });

  test("a phase off by a twentieth of a pitch is noticed", () => {
    const set = { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 4 };
    const places = planetSet(set);
    const [place] = places.planets;
    if (place === undefined) throw new Error("no planet");
    const wrong = { ...place, phase: place.phase + (0.05 * 2 * Math.PI) / 30 };
    expect(mismatch(set, places, wrong, shaftAngles(1, 2, set))).toBeCloseTo(0.05, 9);
  });
});

test.each([
  [
    "unequal centre distances",
    { sunTeeth: 40, planetTeeth: 30, ringTeeth: 101, planets: 4 },
    /100 would mesh/,
  ],
  [
    "planets that do not fit",
    { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 3 },
    /equally spaced/,
  ],
  [
    "half a tooth",
    { sunTeeth: 40.5, planetTeeth: 30, ringTeeth: 100.5, planets: 3 },
    /number of teeth is 40.5/,
  ],
  ["no planet", { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 0 }, /number of teeth is 0/],
])("refuses %s", (_, set, message) => {
  expect(() => planetSet(set)).toThrow(message);
});
