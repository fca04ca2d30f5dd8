import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  basicRatio,
  carrierSpeed,
  meshLossTorque,
  planetSpeed,
  planetSpinOnCarrier,
  ringSpeed,
  sunSpeed,
  torquesFromEngine,
  torquesFromMesh,
} from "../../../sim/drivetrain/gear-set.ts";
import { bodies, massMatrix } from "../../../sim/drivetrain/mass-matrix.ts";
import { anyVehicle } from "../../support/random.ts";
import { even } from "./even.ts";

const SEED = 4010;
const teeth = fc
  .record({ sunTeeth: fc.integer({ min: 12, max: 90 }), planetTeeth: fc.integer({ min: 12, max: 90 }) })
  .map((t) => ({ ...t, ringTeeth: t.sunTeeth + 2 * t.planetTeeth, planets: 3 }));
const speed = even(-3000, 3000);
const torque = even(-800, 800);
const RUNS = { seed: SEED, numRuns: 500 };

describe(`gear set (seed ${SEED})`, () => {
  it("G1 the third speed from any two satisfies Willis to 1e-12", () => {
    fc.assert(
      fc.property(teeth, speed, speed, (t, a, b) => {
        const k = basicRatio(t);
        const triples = [
          [sunSpeed(k, a, b), a, b],
          [a, carrierSpeed(k, a, b), b],
          [a, b, ringSpeed(k, a, b)],
        ] as const;
        for (const [s, c, r] of triples) {
          const size = Math.abs(s) + k * Math.abs(r) + (1 + k) * Math.abs(c);
          expect(Math.abs(s + k * r - (1 + k) * c)).toBeLessThanOrEqual(1e-12 * size + 1e-300);
        }
      }),
      RUNS,
    );
  });

  it("planets roll on sun and ring without slip: both statements of their speed agree", () => {
    fc.assert(
      fc.property(teeth, speed, speed, (t, c, r) => {
        const s = sunSpeed(basicRatio(t), c, r);
        const planet = planetSpeed(t, c, r);
        const size = 1 + Math.abs(planet) + Math.abs(s) + Math.abs(c);
        expect(Math.abs(planet - c - planetSpinOnCarrier(t, s, c))).toBeLessThanOrEqual(1e-11 * size);
        expect(Math.abs(t.planetTeeth * (planet - c) - t.ringTeeth * (r - c))).toBeLessThan(1e-9 * size);
      }),
      RUNS,
    );
  });

  it("turned round, every speed and every torque turns round, and no loss changes its sign", () => {
    fc.assert(
      fc.property(teeth, speed, speed, torque, (t, c, r, mesh) => {
        const k = basicRatio(t);
        expect(sunSpeed(k, -c, -r)).toBeCloseTo(-sunSpeed(k, c, r), 9);
        expect(planetSpeed(t, -c, -r)).toBeCloseTo(-planetSpeed(t, c, r), 9);
        const relative = sunSpeed(k, c, r) - c;
        const loss = meshLossTorque(0.98, mesh, relative);
        expect(meshLossTorque(0.98, -mesh, -relative)).toBe(-loss);
        expect(loss * relative).toBeGreaterThanOrEqual(0);
        const there = torquesFromMesh(k, mesh, loss);
        const back = torquesFromMesh(k, -mesh, -loss);
        for (const shaft of ["sun", "ring", "carrier"] as const)
          expect(Math.abs(there[shaft] + back[shaft])).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it("the loss never exceeds 1 − η0 of the mesh torque and fades through zero without a jump", () => {
    fc.assert(
      fc.property(torque, speed, even(0.9, 1), (mesh, relative, eta) => {
        const loss = Math.abs(meshLossTorque(eta, mesh, relative));
        expect(loss).toBeLessThanOrEqual((1 - eta) * Math.abs(mesh));
      }),
      RUNS,
    );
    expect(meshLossTorque(0.98, 100, 0)).toBe(0);
    expect(meshLossTorque(0.98, 100, -0)).toBe(-0);
    // MESH_SMOOTHING 3 rad/s: half the loss at 3, 99 % at 297.
    expect(meshLossTorque(0.98, 100, 3)).toBeCloseTo(1, 12);
    expect(meshLossTorque(0.98, -100, -297)).toBeCloseTo(-1.98, 12);
  });

  it("an engine torque alone fixes both others, at any speed", () => {
    fc.assert(
      fc.property(teeth, torque, (t, engine) => {
        const k = basicRatio(t);
        const s = torquesFromEngine(k, engine);
        expect(Math.abs(s.carrier - engine)).toBeLessThanOrEqual(1e-12 * Math.abs(engine) + 1e-300);
        expect(Math.abs(s.ring - k * s.sun)).toBeLessThanOrEqual(1e-12 * Math.abs(engine) + 1e-300);
      }),
      RUNS,
    );
  });
});

describe(`mass matrix of random vehicles (seed ${SEED})`, () => {
  it("is positive definite, its inverse is one, and it states the bodies' kinetic energy", () => {
    fc.assert(
      fc.property(anyVehicle, speed, speed, even(0, 2000), (v, c, r, load) => {
        const list = bodies(v, load);
        const m = massMatrix(list);
        expect(m.cc).toBeGreaterThan(0);
        expect(m.cc * m.rr - m.cr * m.cr).toBeGreaterThan(0);
        const near = (got: number, expected: number): void =>
          expect(Math.abs(got - expected)).toBeLessThan(1e-12);
        near(m.cc * m.inverseCc + m.cr * m.inverseCr, 1);
        near(m.cr * m.inverseCr + m.rr * m.inverseRr, 1);
        near((m.cc * m.inverseCr + m.cr * m.inverseRr) / (1 + Math.abs(m.cr)), 0);
        near((m.cr * m.inverseCc + m.rr * m.inverseCr) / (1 + m.rr), 0);
        const energy = 0.5 * (m.cc * c * c + 2 * m.cr * c * r + m.rr * r * r);
        const sum = list.reduce((e, b) => e + 0.5 * b.inertia * (b.row[0] * c + b.row[1] * r) ** 2, 0);
        expect(Math.abs(energy - sum)).toBeLessThan(1e-11 * (1 + sum));
        // Put back, an acceleration gives the torques that made it.
        const [qc, qr] = [c, r];
        const ac = m.inverseCc * qc + m.inverseCr * qr;
        const ar = m.inverseCr * qc + m.inverseRr * qr;
        const size = 1 + Math.abs(qc) + Math.abs(qr);
        expect(Math.abs(m.cc * ac + m.cr * ar - qc)).toBeLessThan(1e-11 * size);
        expect(Math.abs(m.cr * ac + m.rr * ar - qr)).toBeLessThan(1e-11 * size);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("payload adds to the ring alone, as mass times metres per radian squared", () => {
    fc.assert(
      fc.property(anyVehicle, (v) => {
        const empty = massMatrix(bodies(v, 0));
        const loaded = massMatrix(bodies(v, 500));
        const perRing = v.body.wheelRadius / v.finalDrive.ratio;
        expect(loaded.cc).toBe(empty.cc);
        expect(loaded.cr).toBe(empty.cr);
        expect(Math.abs(loaded.rr - empty.rr - 500 * perRing * perRing)).toBeLessThan(1e-11);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });
});
