import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  limitTorque,
  machineEfficiency,
  machineElectric,
  machineLoss,
  torqueLimit,
} from "../../../sim/drivetrain/machine.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { even } from "./even.ts";

const SEED = 620;
const { sunMachine: machine } = vehicleSchema.parse({});
const torque = even(-150, 150);
const speed = even(-1500, 1500);
const loss = fc.record({
  loss0: even(0, 500),
  loss1: even(0, 3),
  loss2: even(0, 2),
  loss3: even(0, 1e-5),
  loss4: even(0, 0.1),
});
const RUNS = { seed: SEED, numRuns: 1000 };

describe(`machine limits (seed ${SEED})`, () => {
  it("M2 keep torque and power in all four quadrants, and never turn a torque round", () => {
    fc.assert(
      fc.property(torque, speed, (asked, w) => {
        const got = limitTorque(machine, asked, w);
        expect(Math.abs(got)).toBeLessThanOrEqual(machine.peakTorque);
        expect(Math.abs(got * w)).toBeLessThanOrEqual(machine.peakPower * (1 + 1e-12));
        expect(got * asked).toBeGreaterThanOrEqual(0);
        expect(Math.abs(got)).toBeLessThanOrEqual(Math.abs(asked));
        if (Math.abs(w) >= machine.maxSpeed) expect(got * w).toBeLessThanOrEqual(0);
        // What is allowed goes through unchanged.
        const fine = Math.abs(asked) <= torqueLimit(machine, w) && Math.abs(w) < machine.maxSpeed;
        if (fine) expect(got).toBe(asked);
      }),
      RUNS,
    );
  });

  it("are the same in every quadrant: turned round they turn round", () => {
    fc.assert(
      fc.property(torque, speed, (asked, w) => {
        const got = limitTorque(machine, asked, w);
        // + 0: minus zero counts as zero.
        expect(limitTorque(machine, -asked, -w) + 0).toBe(0 - got);
        expect(torqueLimit(machine, -w)).toBe(torqueLimit(machine, w));
      }),
      RUNS,
    );
  });

  it("at rest, also at minus zero, leave peak torque", () => {
    for (const w of [0, -0, 1e-300, -1e-300]) {
      expect(torqueLimit(machine, w)).toBe(machine.peakTorque);
      expect(limitTorque(machine, 1e9, w)).toBe(machine.peakTorque);
      expect(limitTorque(machine, -1e9, w)).toBe(-machine.peakTorque);
    }
  });

  it("go over from torque to power at their corner without a jump", () => {
    const corner = machine.peakPower / machine.peakTorque;
    expect(torqueLimit(machine, corner * (1 - 1e-12))).toBe(machine.peakTorque);
    expect(Math.abs(torqueLimit(machine, corner * (1 + 1e-12)) - machine.peakTorque)).toBeLessThan(1e-9);
    expect(torqueLimit(machine, 2 * corner)).toBeCloseTo(machine.peakTorque / 2, 12);
  });

  it("beyond the greatest speed leave only braking torque", () => {
    for (const w of [machine.maxSpeed, machine.maxSpeed * 1.2]) {
      expect(limitTorque(machine, 10, w)).toBe(0);
      expect(limitTorque(machine, -10, -w)).toBe(0);
      expect(limitTorque(machine, -10, w)).toBe(-10);
      expect(limitTorque(machine, 10, -w)).toBe(10);
    }
    expect(limitTorque(machine, 10, machine.maxSpeed * (1 - 1e-12))).toBe(10);
  });
});

describe(`machine loss (seed ${SEED})`, () => {
  it("M1 never falls below its constant part, is the same in all four quadrants and grows with torque and speed", () => {
    fc.assert(
      fc.property(loss, torque, speed, (m, t, w) => {
        const here = machineLoss(m, t, w);
        expect(here).toBeGreaterThanOrEqual(m.loss0);
        for (const [a, b] of [
          [-t, w],
          [t, -w],
          [-t, -w],
        ] as const)
          expect(machineLoss(m, a, b)).toBe(here);
        expect(machineLoss(m, 1.1 * t, w)).toBeGreaterThanOrEqual(here);
        expect(machineLoss(m, t, 1.1 * w)).toBeGreaterThanOrEqual(here);
      }),
      RUNS,
    );
  });

  it("M1 electrical power is never below shaft power, and an efficiency lies from 0 to 1", () => {
    fc.assert(
      fc.property(loss, torque, speed, (m, t, w) => {
        expect(machineElectric(m, t, w)).toBeGreaterThanOrEqual(t * w);
        const efficiency = machineEfficiency(m, t, w);
        expect(efficiency).toBeGreaterThanOrEqual(0);
        expect(efficiency).toBeLessThanOrEqual(1);
        if (t * w > 0) expect(efficiency * machineElectric(m, t, w)).toBeCloseTo(t * w, 6);
      }),
      RUNS,
    );
  });

  it("generating too little to cover its loss it is no generator: efficiency 0", () => {
    const m = { loss0: 100, loss1: 0, loss2: 0, loss3: 0, loss4: 0 };
    expect(machineElectric(m, -1, 50)).toBe(50);
    expect(machineEfficiency(m, -1, 50)).toBe(0);
    expect(machineEfficiency(m, -4, 50)).toBe(0.5);
    expect(machineEfficiency(m, 0, 50)).toBe(0);
    expect(machineEfficiency(m, 5, 0)).toBe(0);
  });
});
