import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { even } from "../../sim/drivetrain/even.ts";
import { anyVehicle } from "../../support/random.ts";
import { TiedBodies } from "./bodies.ts";
import { HeldPlant } from "./held-plant.ts";

const SEED = 60301;
const real = (size: number): fc.Arbitrary<number> => even(-size, size);

// S6: Liu and Peng, IEEE Trans. Control Syst. Technol. 16(6), 2008 (from memory) state the input-split dynamics as bodies
// and one inner gear force; here every body and every tie is kept, planets' spin included (derived).
describe(`S6 the mass matrix against seven bodies tied by constraint forces (seed ${SEED})`, () => {
  const scene = fc.record({
    vehicle: anyVehicle,
    carrier: even(50, 400),
    ring: even(20, 400),
    engine: even(0, 150),
    sun: real(60),
    output: real(200),
    mesh: real(60),
    payload: fc.constantFrom(0, 400),
  });

  it("gives the same accelerations and mesh torque to 1e-10, losses and drag included", () => {
    fc.assert(
      fc.property(scene, (r) => {
        const plant = new HeldPlant(r.vehicle, { step: 0.001, payload: r.payload });
        const { p, s } = plant;
        Object.assign(s, { carrierSpeed: r.carrier, ringSpeed: r.ring, indicatedTorque: r.engine });
        Object.assign(s, { sunTorque: r.sun, outputTorque: r.output, meshTorque: r.mesh, driveTorque: 80 });
        plant.step();
        fc.pre(s.carrierHeld === 0 && s.ringHeld === 0);
        const road = s.airForce + s.gradeForce + s.rollingForce;
        const m = new TiedBodies(r.vehicle, r.payload).motion({
          sun: s.sunTorque - s.meshLossTorque,
          carrier: r.engine - s.frictionBound + s.meshLossTorque,
          ring: -s.driveLossTorque - s.reductionLossTorque,
          machine: r.output,
          vehicle: -road,
        });
        const near = (got: number, expected: number, scale: number): void =>
          expect(Math.abs(got - expected)).toBeLessThan(1e-10 * Math.max(1, scale));
        // A rounding of the speed counts 1/h times in its change.
        const most = Math.abs(m.carrier) + Math.abs(m.ring) + (r.carrier + r.ring) * p.perH * 1e-5;
        near(s.carrierChange, m.carrier, most);
        near(s.ringChange, m.ring, most);
        near(s.ringChange * p.metresPerRing, m.vehicle, most);
        near(s.meshTorque, m.mesh, Math.abs(m.mesh) + p.sunInertia * p.k1 * most);
        near(s.driveTorque, m.drive, Math.abs(m.drive) + p.wheelSideInertia * most);
      }),
      { seed: SEED, numRuns: 120 },
    );
  });

  it("the tied bodies themselves keep every tie", () => {
    fc.assert(
      fc.property(anyVehicle, real(100), real(100), real(100), (vehicle, sun, carrier, machine) => {
        const m = new TiedBodies(vehicle).motion({ sun, carrier, ring: 0, machine, vehicle: -300 });
        const { sunTeeth, planetTeeth, ringTeeth } = vehicle.gearSet;
        const size = Math.abs(m.sun) + Math.abs(m.carrier) + Math.abs(m.ring) + Math.abs(m.planet);
        const slip = sunTeeth * (m.sun - m.carrier) + planetTeeth * (m.planet - m.carrier);
        expect(Math.abs(slip)).toBeLessThan(1e-9 * (1 + size) * sunTeeth);
        const willis = sunTeeth * (m.sun - m.carrier) + ringTeeth * (m.ring - m.carrier);
        expect(Math.abs(willis)).toBeLessThan(1e-9 * (1 + size) * ringTeeth);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});
