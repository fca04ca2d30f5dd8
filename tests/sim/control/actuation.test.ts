import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { actuate } from "../../../sim/control/actuation.ts";
import { ControlState, ENGINE } from "../../../sim/control/state.ts";
import { burn, charge, settle } from "../../../sim/drivetrain/plant.ts";
import { type Prepared, prepare } from "../../../sim/drivetrain/prepared.ts";
import { PlantState } from "../../../sim/drivetrain/state.ts";
import { limitsIn } from "../../../sim/limits.ts";
import { runSettings } from "../../../sim/options.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { even } from "../drivetrain/even.ts";

const SEED = 77;
const p = prepare(vehicleById("compact"), runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));

/** A running engine held at a speed, the vehicle at another; the battery sets no limit. */
function running(carrier: number, ring: number): { s: PlantState; c: ControlState } {
  const s = new PlantState();
  const c = new ControlState();
  s.soc = 0.58;
  s.carrierSpeed = carrier;
  s.ringSpeed = ring;
  s.rollingForce = p.rolling;
  s.auxiliaryPower = 320;
  s.currentOut = 1e6;
  s.currentIn = 1e6;
  s.firing = 1;
  c.engineMode = ENGINE.running;
  c.carrierTarget = carrier;
  return { s, c };
}

function steps(s: PlantState, c: ControlState, count: number, prepared: Prepared = p): void {
  for (let i = 0; i < count; i += 1) {
    actuate(prepared, s, c);
    burn(prepared, s);
    charge(prepared, s);
    settle(prepared, s);
    // The target of this scene stands still; only the time within the period goes on.
    if ((i + 1) % prepared.stepsPerTick === 0) c.within = 0;
  }
}

describe("torques of a step", () => {
  it("the sun machine brings the engine to its target speed and holds it there against its torque", () => {
    const { s, c } = running(200, 120);
    c.enginePower = 15_000;
    c.carrierTarget = 240;
    c.wheelForceAsk = 600;
    steps(s, c, 150);
    expect(Math.abs(s.carrierSpeed - 240)).toBeLessThan(0.5);
    expect(Math.abs(s.engineTorque * s.carrierMean - 15_000)).toBeLessThan(150);
    expect(s.sunTorque).toBeLessThan(0);
  });

  it("the wheels get the force that was asked, whatever the engine does", () => {
    for (const power of [0, 8_000, 22_000]) {
      const { s, c } = running(230, 130);
      c.enginePower = power;
      c.wheelForceAsk = 900;
      steps(s, c, 100);
      const force = s.driveTorque * p.perMetresPerRing;
      expect(Math.abs(force / 900 - 1)).toBeLessThan(1e-3);
    }
  });

  it("a braking demand is met by regeneration and brakes together", () => {
    const { s, c } = running(0, 200);
    c.engineMode = ENGINE.off;
    s.firing = 0;
    c.wheelForceAsk = -2500;
    c.braking = 1;
    c.regenShare = 0.8;
    steps(s, c, 30);
    const slowing = -s.ringChange * p.metresPerRing;
    const road = s.rollingForce + s.airForce;
    // What turns before the final drive is slowed by the machines; the wheels' force slows wheels and vehicle.
    const mass = p.wheelSideInertia / (p.metresPerRing * p.metresPerRing);
    expect(Math.abs((slowing * mass - road) / 2500 - 1)).toBeLessThan(1e-3);
    expect(limitsIn(s.limits)).toContain("axle-share");
    expect(Math.abs(s.brakeForce / 500 - 1)).toBeLessThan(0.1);
  });

  it("the indicated torque follows with the engine's own lag, the same for every step size", () => {
    const speedAfter = (step: number): number => {
      const fine = prepare(
        vehicleById("compact"),
        runSettings({ step }, { startSoc: 0.58, auxiliaryPower: 0 }),
      );
      const { s, c } = running(235, 130);
      c.enginePower = 15_000;
      steps(s, c, Math.round(0.2 / step), fine);
      return c.laggedTorque;
    };
    const fine = speedAfter(0.0005);
    for (const step of [0.02, 0.01, 0.005]) expect(Math.abs(speedAfter(step) / fine - 1)).toBeLessThan(5e-3);
  });

  it("no torque where the engine does not fire", () => {
    for (const mode of [ENGINE.off, ENGINE.cranking, ENGINE.stopping]) {
      const { s, c } = running(100, 50);
      c.engineMode = mode;
      c.enginePower = 20_000;
      c.laggedTorque = 80;
      steps(s, c, 1);
      expect(s.indicatedTorque).toBe(0);
      expect(s.fuelPower).toBe(0);
    }
  });

  it("above its greatest speed the engine gets no fuel, and the log says why", () => {
    const { s, c } = running(p.engineTop + 5, 250);
    c.enginePower = 40_000;
    steps(s, c, 1);
    expect(s.fuelPower).toBe(0);
    expect(limitsIn(s.limits)).toContain("engine-speed");
  });
});

describe(`machine limits in every step (seed ${SEED})`, () => {
  it("M2 torque and power at the step's start speed; beyond the greatest speed only braking torque", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, 1, 2, 3) as fc.Arbitrary<0 | 1 | 2 | 3>,
        fc.oneof(fc.constant(0), even(0, 540)),
        fc.oneof(even(-100, 470), even(430, 620)),
        even(-9000, 6000),
        even(-20_000, 66_000),
        even(80, 520),
        even(-30, 30),
        (mode, carrier, ring, force, power, target, acceleration) => {
          const { s, c } = running(mode === ENGINE.off ? 0 : carrier, ring);
          c.engineMode = mode;
          c.enginePower = power;
          c.wheelForceAsk = force;
          c.braking = force * ring < 0 ? 1 : 0;
          c.regenShare = 0.8;
          c.carrierTarget = target;
          s.ringAcceleration = acceleration;
          const sun = p.k1 * s.carrierSpeed - p.k * ring;
          const out = p.reduction * ring;
          actuate(p, s, c);
          const hair = 1 + 1e-9;
          expect(Math.abs(s.sunTorque)).toBeLessThanOrEqual(p.sunPeakTorque * hair);
          expect(Math.abs(s.sunTorque * sun)).toBeLessThanOrEqual(p.sunPeakPower * hair);
          expect(Math.abs(s.outputTorque)).toBeLessThanOrEqual(p.outPeakTorque * hair);
          expect(Math.abs(s.outputTorque * out)).toBeLessThanOrEqual(p.outPeakPower * hair);
          if (Math.abs(sun) >= p.sunTop) expect(s.sunTorque * sun).toBeLessThanOrEqual(0);
          if (Math.abs(out) >= p.outTop) expect(s.outputTorque * out).toBeLessThanOrEqual(0);
        },
      ),
      { seed: SEED, numRuns: 3000, endOnFailure: true },
    );
  });
});
