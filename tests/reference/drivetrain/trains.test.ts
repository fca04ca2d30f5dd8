import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mpsToKmh } from "../../../shared/units.ts";
import { engineTables } from "../../../sim/drivetrain/engine.ts";
import {
  carrierSpeed,
  mechanicalPoint,
  planetSpeed,
  planetSpinOnCarrier,
  powerShares,
  ringSpeed,
  sunSpeed,
  torquesFromEngine,
  torquesFromMesh,
} from "../../../sim/drivetrain/gear-set.ts";
import { lookUp } from "../../../sim/drivetrain/table.ts";
import { sunRestRoadSpeed } from "../../../sim/vehicle/figures.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { even } from "../../sim/drivetrain/even.ts";

const SEED = 60101;
const teeth = (sunTeeth: number, planetTeeth: number, ringTeeth: number) => ({
  sunTeeth,
  planetTeeth,
  ringTeeth,
  planets: 3,
});
const speed = even(-2000, 2000);
const ratio = even(1.2, 8);

describe("trains of more than one mesh", () => {
  it("K6 a ring of 224 mm and module 4, sun 5 times the carrier: 56/21/14 teeth and no others (Khurmi and Gupta, Ex. 13.9)", () => {
    const ring = 224 / 4;
    const fits = [];
    for (let sun = 1; sun < ring; sun += 1) {
      const planet = (ring - sun) / 2;
      if (Number.isInteger(planet) && Math.abs(sunSpeed(ring / sun, 1, 0) - 5) < 1e-9)
        fits.push([sun, planet]);
    }
    expect(fits).toEqual([[14, 21]]);
  });

  it("K7 second stage, 30 and 32 teeth on a planet of the first: 12.5 and 22.4 rev/min (Khurmi and Gupta, Ex. 13.17)", () => {
    const second = (ring: number): number => {
      const carrier = carrierSpeed(4, 1000, ring);
      const spin = planetSpinOnCarrier(teeth(20, 30, 80), 1000, carrier);
      // The planet's own ring would turn spin · 30/80 on the carrier; the second stage gears that down by 30/32.
      return carrier + ((spin * 30) / 80) * (30 / 32);
    };
    expect(second(0)).toBeCloseTo(12.5, 9);
    expect(second(10)).toBeCloseTo(22.4, 1);
  });

  it.each([
    [101, 0.0099],
    [99, -0.0101],
  ])(
    "A7 paradox train, 100 held against %i through an idler, arm +1: %f turn (Khurmi and Gupta, Ex. 13.13)",
    (other, printed) => {
      const idler = 20;
      const idlerTurns = 1 + planetSpinOnCarrier({ ...teeth(100, idler, 140) }, 0, 1);
      const turns = 1 + planetSpinOnCarrier({ ...teeth(idler, other, 300) }, idlerTurns, 1);
      expect(Math.abs(turns - printed)).toBeLessThan(5e-5);
      expect(Math.abs(turns - (1 - 100 / other))).toBeLessThan(1e-12);
    },
  );
});

describe("check set 40/32/104 (common practice, no source)", () => {
  const set = teeth(40, 32, 104);
  const k = 104 / 40;

  it("ring held: 3.6 sun turns a carrier turn", () => {
    expect(Math.abs(sunSpeed(k, 1, 0) - 3.6)).toBeLessThan(1e-12);
  });

  it("sun held: 1.385 ring turns a carrier turn", () => {
    expect(Math.abs(ringSpeed(k, 0, 1) - 1.385)).toBeLessThan(5e-4);
    expect(Math.abs(ringSpeed(k, 0, 1) - 18 / 13)).toBeLessThan(1e-12);
  });

  it("carrier at rest: the sun turns −2.6 times the ring", () => {
    expect(Math.abs(sunSpeed(k, 0, 1) + 2.6)).toBeLessThan(1e-12);
    expect(planetSpeed(set, 0, 1)).toBeCloseTo(3.25, 12);
  });
});

describe(`T2 torques and powers of any set (Müller, Epicyclic Drive Trains, 1982, from memory; seed ${SEED})`, () => {
  const torque = even(-500, 500);

  it("torques sum to zero and powers to the loss, to 1e-12 of the largest term", () => {
    fc.assert(
      fc.property(ratio, torque, speed, speed, even(0, 0.05), (k, mesh, c, r, lost) => {
        const s = sunSpeed(k, c, r);
        const loss = lost * Math.abs(mesh) * Math.sign(s - c);
        const t = torquesFromMesh(k, mesh, loss);
        const largest = Math.max(Math.abs(t.sun), Math.abs(t.ring), Math.abs(t.carrier));
        expect(Math.abs(t.sun + t.ring + t.carrier)).toBeLessThanOrEqual(1e-12 * largest + 1e-300);
        const powers = [t.sun * s, t.ring * r, t.carrier * c];
        const most = Math.max(...powers.map(Math.abs));
        const total = powers.reduce((sum, power) => sum + power, 0);
        expect(Math.abs(total - loss * (s - c))).toBeLessThanOrEqual(1e-12 * most + 1e-300);
        expect(loss * (s - c)).toBeGreaterThanOrEqual(0);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("S5 without losses the sun's and the ring's power together are the engine's, whatever the speeds", () => {
    fc.assert(
      fc.property(ratio, torque, speed, speed, (k, engine, c, r) => {
        const t = torquesFromEngine(k, engine);
        const s = sunSpeed(k, c, r);
        const given = -(t.sun * s + t.ring * r);
        const most = Math.max(Math.abs(t.sun * s), Math.abs(t.ring * r), Math.abs(engine * c));
        expect(Math.abs(given - engine * c)).toBeLessThanOrEqual(1e-12 * most + 1e-300);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

describe("power split over the speed ratio r = ring/carrier (derived from Willis and the lever)", () => {
  it("S2 shares follow from the torques on the shafts, for any set (input-split analysis as in Miller 2006, from memory)", () => {
    fc.assert(
      fc.property(ratio, even(50, 500), speed, (k, c, r) => {
        const t = torquesFromEngine(k, 100);
        const shares = powerShares(k, c, r);
        const size = 1 + Math.abs(shares.mechanical);
        expect(Math.abs(shares.mechanical - (-t.ring * r) / (100 * c))).toBeLessThan(1e-12 * size);
        expect(Math.abs(shares.electrical - (-t.sun * sunSpeed(k, c, r)) / (100 * c))).toBeLessThan(
          1e-11 * size,
        );
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("S3 electrical share and sun speed at five ratios, k = 2.6, to 1e-12", () => {
    for (const [r, electrical, sun] of [
      [0, 1, 3.6],
      [0.5, 1 - 1.3 / 3.6, 2.3],
      [1, 1 - 2.6 / 3.6, 1],
      [18 / 13, 0, 0],
      [2, -1.6 / 3.6, -1.6],
    ] as const) {
      expect(Math.abs(powerShares(2.6, 1, r).electrical - electrical)).toBeLessThan(1e-12);
      expect(Math.abs(sunSpeed(2.6, 1, r) - sun)).toBeLessThan(1e-12);
    }
  });

  it("S4 the one mechanical point is at r = (1 + k)/k = 1.384615: sun generates below it, motors above (from memory)", () => {
    const point = mechanicalPoint(2.6);
    expect(Math.abs(point - 1.384615)).toBeLessThan(5e-7);
    const sunPower = (r: number): number => torquesFromEngine(2.6, 100).sun * sunSpeed(2.6, 1, r);
    expect(sunPower(point - 0.01)).toBeLessThan(0);
    expect(sunPower(point + 0.01)).toBeGreaterThan(0);
    expect(Math.abs(sunPower(point))).toBeLessThan(1e-12);
  });
});

describe("demo compact", () => {
  const compact = vehicleById("compact");

  // The model's own figure for the demo vehicle: a separate estimate, no literature.
  it("at 22 kW on the best-efficiency line the sun passes through zero at 100 ± 6 km/h", () => {
    const kmh = mpsToKmh(sunRestRoadSpeed(compact, 22_000));
    expect(Math.abs(kmh - 100)).toBeLessThan(6);
    // The table that the control reads says the same.
    const engine = lookUp(engineTables(compact.engine).line, 22_000);
    const ring = ringSpeed(2.5, 0, engine);
    const tabled = mpsToKmh((ring * compact.body.wheelRadius) / compact.finalDrive.ratio);
    expect(Math.abs(tabled - kmh)).toBeLessThan(0.5);
  });
});
