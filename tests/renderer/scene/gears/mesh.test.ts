import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SetTeeth } from "../../../../renderer/scene/gears/assembly.ts";
import { signedArea } from "../../../../renderer/scene/gears/outline.ts";
import { planetSet, setOutlines } from "../../../../renderer/scene/gears/planetSet.ts";
import { STANDARD } from "../../../../renderer/scene/gears/proportions.ts";
import { shaftAngles } from "../../../../renderer/scene/gears/shaftAngles.ts";
import { at } from "../../../../shared/at.ts";
import { meshOverlap, NAMED_SETS, placed, type Trio, trio } from "./meshing.ts";
import { overlapArea } from "./polygonArea.ts";
import { buildableSet } from "./randomSets.ts";

const STEPS = 16;
/** Area of a tooth in modules²: pitch/2 wide, 2.25 high. */
const TOOTH_AREA = (Math.PI / 2) * 2.25;
/** Metal in metal up to which a mesh counts as fitting: a thousandth of a tooth. The gears stay far below. */
const ALLOWED = TOOTH_AREA / 1000;
/** Rounding of the area sum. */
const NOTHING = 1e-9;
/** How far past half the backlash a gear is forced, modules along the pitch circle. */
const FORCED = 0.02;

/** Every planet of a set at `STEPS` positions of one sun pitch, at some standing of the carrier. */
function* positions(set: SetTeeth, carrierAngle: number, options = {}): Generator<Trio> {
  const places = planetSet(set);
  const outlines = setOutlines(set, options);
  for (const place of places.planets) {
    for (let step = 0; step < STEPS; step += 1) {
      // Relative to the carrier the sun turns one pitch; the ring follows the other way.
      const turn = (2 * Math.PI * step) / STEPS / set.sunTeeth;
      const ring = carrierAngle - (turn * set.sunTeeth) / set.ringTeeth;
      yield trio(places, place, outlines, shaftAngles(carrierAngle + turn, ring, set));
    }
  }
}

function largestOverlap(set: SetTeeth, carrierAngle: number, options = {}): number {
  let largest = 0;
  for (const { sun, planet, ring } of positions(set, carrierAngle, options)) {
    largest = Math.max(largest, Math.abs(meshOverlap(sun, planet)), Math.abs(meshOverlap(planet, ring)));
  }
  return largest;
}

/** Least overlap when sun, ring (against the planet) are forced either way past half the backlash. */
function leastForcedOverlap(set: SetTeeth): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { sun, planet, ring } of positions(set, 0.3)) {
    for (const way of [-1, 1]) {
      const arc = way * (STANDARD.backlash / 2 + FORCED);
      const sunForced = { ...sun, angle: sun.angle + arc / (set.sunTeeth / 2) };
      const ringForced = { ...ring, angle: ring.angle + arc / (set.ringTeeth / 2) };
      least = Math.min(least, meshOverlap(sunForced, planet), meshOverlap(planet, ringForced));
    }
  }
  return least;
}

/** Greatest overlap when the gears are turned either way through nine tenths of their play. */
function playOverlap(set: SetTeeth): number {
  let largest = 0;
  for (const { sun, planet, ring } of positions(set, 1.1)) {
    for (const way of [-1, 1]) {
      const arc = way * 0.45 * STANDARD.backlash;
      const sunTurned = { ...sun, angle: sun.angle + arc / (set.sunTeeth / 2) };
      const ringTurned = { ...ring, angle: ring.angle + arc / (set.ringTeeth / 2) };
      largest = Math.max(largest, meshOverlap(sunTurned, planet), meshOverlap(planet, ringTurned));
    }
  }
  return largest;
}

describe.each(NAMED_SETS)("the $name set $sunTeeth/$planetTeeth/$ringTeeth", (set) => {
  test("no tooth cuts into another over one pitch", () => {
    const largest = largestOverlap(set, 0.7);
    expect(largest).toBeLessThan(ALLOWED);
    expect(largest).toBeLessThan(NOTHING);
  });

  test("the gears turn freely through their backlash", () => {
    expect(playOverlap(set)).toBeLessThan(NOTHING);
  });

  test("past the backlash they cut into each other, both ways: the contact is real", () => {
    expect(leastForcedOverlap(set)).toBeGreaterThan(ALLOWED);
  });

  test("without backlash fine outlines touch and overlap by no more than their straight pieces", () => {
    expect(largestOverlap(set, 0, { backlash: 0, flankPoints: 60 })).toBeLessThan(1e-5);
  });
});

test("whole outlines, not only the part near the mesh, stay clear (demo set, odd angles)", () => {
  const [set] = NAMED_SETS;
  if (set === undefined) throw new Error("no set");
  const places = planetSet(set);
  const outlines = setOutlines(set, { flankPoints: 6, arcPieces: 2 });
  const angles = shaftAngles(12.345, -6.789, set);
  const wheels = places.planets.map((place) => trio(places, place, outlines, angles));
  const [first] = wheels;
  if (first === undefined) throw new Error("no planets");
  const sun = placed(outlines.sun, first.sun.angle);
  const opening = placed(outlines.ring, first.ring.angle);
  const planets = wheels.map(({ planet }) => placed(planet.outline, planet.angle, planet.x, planet.y));
  planets.forEach((planet, index) => {
    expect(Math.abs(overlapArea(planet, sun))).toBeLessThan(NOTHING);
    // Inside the ring's opening: all of the planet's area is shared with it.
    expect(Math.abs(overlapArea(planet, opening) - signedArea(planet))).toBeLessThan(NOTHING);
    for (const other of planets.slice(index + 1))
      expect(Math.abs(overlapArea(planet, other))).toBeLessThan(NOTHING);
  });
});

test("24 random buildable sets, seed 20250: no overlap, free play, real contact", () => {
  fc.assert(
    fc.property(buildableSet, fc.double({ min: -3, max: 3, noNaN: true }), (set, carrier) => {
      expect(largestOverlap(set, carrier)).toBeLessThan(NOTHING);
      expect(playOverlap(set)).toBeLessThan(NOTHING);
      expect(leastForcedOverlap(set)).toBeGreaterThan(ALLOWED);
    }),
    { seed: 20250, numRuns: 24 },
  );
});

test("a module in metres scales lengths and nothing else", () => {
  const [set] = NAMED_SETS;
  if (set === undefined) throw new Error("no set");
  const unit = setOutlines(set);
  const metres = setOutlines(set, { module: 0.00175 });
  for (const wheel of ["sun", "planet", "ring"] as const) {
    const scaled = unit[wheel].map((value) => value * 0.00175);
    expect(metres[wheel].length).toBe(scaled.length);
    const apart = metres[wheel].map((value, index) => Math.abs(value - at(scaled, index)));
    expect(Math.max(...apart)).toBeLessThan(1e-15);
  }
  expect(planetSet(set, 0.00175).centreDistance).toBeCloseTo(0.06125, 15);
});
