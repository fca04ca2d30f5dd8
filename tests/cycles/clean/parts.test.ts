import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cross } from "../../../cycles/clean/crossing.ts";
import { findFrozen } from "../../../cycles/clean/frozen.ts";
import { findJitter } from "../../../cycles/clean/jitter.ts";
import { believable } from "../../../cycles/clean/jumps.ts";
import { smoothSpline } from "../../../cycles/clean/spline.ts";
import { findStops, inside } from "../../../cycles/clean/stops.ts";
import { Draws } from "../../../cycles/demo/draws.ts";
import { at } from "../../../shared/at.ts";

const f64 = (count: number, of: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => of(i));

describe("believable", () => {
  const possibleIn = (values: readonly number[]) => (i: number, j: number) =>
    Math.abs(at(values, j) - at(values, i)) <= 2 * (j - i);
  const kept = (values: readonly number[], stray = 3): number[] => {
    const marks = believable(values.length, possibleIn(values), stray);
    return values.filter((_, i) => marks[i] === 1);
  };

  it.each([
    ["nothing of a sound list", [0, 1, 2, 3], [0, 1, 2, 3]],
    ["a spike", [0, 1, 90, 3, 4], [0, 1, 3, 4]],
    ["two strays that agree", [0, 1, 2, 3, 90, 91, 6, 7, 8, 9], [0, 1, 2, 3, 6, 7, 8, 9]],
    ["strays at both ends", [90, 1, 2, 3, 4, 80], [1, 2, 3, 4]],
    ["several strays one after the other", [0, 1, 2, 3, 90, -90, 50, 8, 9], [0, 1, 2, 3, 8, 9]],
  ])("sets aside %s", (_, values, expected) => {
    expect(kept(values)).toEqual(expected);
  });

  it("keeps both sides of a jump that is no stray", () => {
    expect(kept([0, 1, 2, 90, 91, 92])).toEqual([0, 1, 2, 90, 91, 92]);
  });

  it("does not drop a good stretch for two wrong ones that agree", () => {
    const values = [0, 0, 50, 51, 52, 53, 0, 0, 54, 55, 56, 57, 58];
    expect(kept(values, 5)).toEqual([50, 51, 52, 53, 54, 55, 56, 57, 58]);
  });
});

describe("findFrozen", () => {
  const time = f64(9, (i) => i);
  const plane = (east: readonly number[]) => ({ east: Float64Array.from(east), north: new Float64Array(9) });

  it("marks places repeated at speed, not those of a real stop", () => {
    expect([...findFrozen(time, plane([0, 20, 40, 40, 40, 40, 120, 140, 160]))]).toEqual([
      0, 0, 0, 1, 1, 1, 0, 0, 0,
    ]);
    expect([...findFrozen(time, plane([0, 4, 6, 6, 6, 6, 7, 9, 12]))]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0]);
  });
});

describe("findStops", () => {
  const time = f64(40, (i) => i);
  const speed = time.map((t) => (t > 10 && t < 30 ? 0.2 : 5));

  it("finds where a track gets nowhere", () => {
    const still = { east: f64(40, () => 0), north: f64(40, () => 0) };
    expect(findStops(time, still, speed, 1)).toEqual([{ start: 11, end: 29 }]);
  });

  it("leaves creeping alone", () => {
    const creeping = { east: time.map((t) => 0.6 * t), north: f64(40, () => 0) };
    const slow = time.map(() => 0.6);
    expect(findStops(time, creeping, slow, 1)).toEqual([]);
  });

  it("joins stretches with a twitch between, and marks times inside", () => {
    const still = { east: f64(40, () => 0), north: f64(40, () => 0) };
    const twitch = speed.map((v, i) => (i === 20 ? 2 : v));
    const stops = findStops(time, still, twitch, 1);
    expect(stops).toEqual([{ start: 11, end: 29 }]);
    expect(inside(time, stops).reduce((sum, mark) => sum + mark, 0)).toBe(19);
  });
});

describe("findJitter", () => {
  it.each([0.5, 1, 2, 5])("finds a jitter of %d m within a quarter", (jitter) => {
    const draws = new Draws(3);
    const along = f64(1500, (i) => i);
    const of = (i: number): number => 200 * Math.sin(i / 60) + jitter * draws.normal();
    const measured = { along, values: [f64(1500, of), f64(1500, of)], known: new Uint8Array(1500).fill(1) };
    const found = findJitter(measured, 0.7, 0.3, 15);
    expect(found / jitter).toBeGreaterThan(0.75);
    expect(found / jitter).toBeLessThan(1.25);
  });
});

describe("smoothSpline", () => {
  it("keeps a straight line, uneven samples and holes included", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(0.1, 1, 3), fc.boolean()), { minLength: 5, maxLength: 40 }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        (steps, slope) => {
          let t = 0;
          const along = Float64Array.from(steps, ([step]) => {
            t += step;
            return t;
          });
          const known = Uint8Array.from(steps, ([, yes], i) =>
            yes || i < 2 || i === steps.length - 1 ? 1 : 0,
          );
          const { values, rates } = smoothSpline(
            { along, values: [along.map((x) => 7 + slope * x)], known },
            { jitter: 1, liveliness: 0.5 },
          );
          along.forEach((x, i) => {
            expect(at(at(values, 0), i)).toBeCloseTo(7 + slope * x, 1);
            expect(at(at(rates, 0), i)).toBeCloseTo(slope, 1);
          });
        },
      ),
    );
  });

  it("stands where it is told to", () => {
    const along = f64(30, (i) => i);
    const still = Uint8Array.from(along, (t) => (t > 10 && t < 20 ? 1 : 0));
    const draws = new Draws(5);
    const values = [along.map(() => draws.normal())];
    const { rates } = smoothSpline(
      { along, values, known: new Uint8Array(30).fill(1) },
      { jitter: 1, liveliness: 1, still },
    );
    for (let i = 11; i < 20; i += 1) expect(Math.abs(at(at(rates, 0), i))).toBeLessThan(0.02);
  });
});

describe("cross", () => {
  it("covers any distance that can be driven, with speeds of 0 or more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 600, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (length, mean, before, after) => {
          // Braking and pulling away at 8 m/s² takes so much way at least.
          const distance = mean * length + (before * before + after * after) / 16;
          const line = [
            { time: 0, speed: before },
            ...cross(length, distance, before, after),
            { time: length, speed: after },
          ];
          let way = 0;
          for (let i = 1; i < line.length; i += 1) {
            const a = at(line, i - 1);
            const b = at(line, i);
            expect(b.time).toBeGreaterThan(a.time);
            expect(b.speed).toBeGreaterThanOrEqual(0);
            way += ((a.speed + b.speed) / 2) * (b.time - a.time);
          }
          expect(Math.abs(way - distance)).toBeLessThan(0.01 + 1e-4 * distance);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("keeps to 1 m/s² where that is enough", () => {
    const line = cross(60, 600, 15, 15);
    // Slower in the middle: 15 − u for a ramp of as many seconds, 60 u + (15 − u)² = 600.
    expect(line).toHaveLength(2);
    expect(at(line, 0).speed).toBeCloseTo(at(line, 1).speed, 6);
    expect(at(line, 0).time).toBeCloseTo(15 - at(line, 0).speed, 6);
  });
});
