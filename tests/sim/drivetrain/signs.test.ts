import { describe, expect, it } from "vitest";
import { mechanicalPoint } from "../../../sim/drivetrain/gear-set.ts";
import type { PlantState } from "../../../sim/drivetrain/state.ts";
import { compactWith, HeldPlant, withoutLosses } from "../../reference/drivetrain/held-plant.ts";

/** A step of the lossless compact in a state that the scene sets. */
function scene(set: (s: PlantState, plant: HeldPlant) => void): HeldPlant {
  const plant = new HeldPlant(compactWith(withoutLosses), { auxiliaryPower: 0 });
  set(plant.s, plant);
  plant.step();
  return plant;
}

// Signs as the model states them: speeds positive forward; a torque is what a shaft exerts on the gear set; T·ω > 0 is
// power into it; battery power and current are positive on discharge; grade and head wind positive against the motion.
describe("the signs, as scenes", () => {
  it("output machine pulls forward: speed up, power in, battery discharges, charge falls", () => {
    const { s } = scene((state) => {
      state.ringSpeed = 50;
      state.outputTorque = 60;
    });
    expect(s.ringChange).toBeGreaterThan(0);
    expect(s.outputElectric).toBeGreaterThan(60 * s.outputMean);
    expect(s.current).toBeGreaterThan(0);
    expect(s.voltage).toBeLessThan(s.openCircuitMid);
    expect(s.soc).toBeLessThan(0.58);
    expect(s.rcVoltage).toBeGreaterThan(0);
  });

  it("output machine brakes: speed down, power out, battery charges, charge rises", () => {
    const { s } = scene((state) => {
      state.ringSpeed = 150;
      state.outputTorque = -60;
    });
    expect(s.ringChange).toBeLessThan(0);
    expect(s.outputElectric).toBeLessThan(0);
    expect(s.outputElectric).toBeGreaterThan(-60 * s.outputMean);
    expect(s.current).toBeLessThan(0);
    expect(s.voltage).toBeGreaterThan(s.openCircuitMid);
    expect(s.soc).toBeGreaterThan(0.58);
    expect(s.rcVoltage).toBeLessThan(0);
  });

  it("output machine pulls backward from rest: the vehicle backs up, which still discharges", () => {
    const { s } = scene((state) => {
      state.outputTorque = -60;
    });
    expect(s.ringSpeed).toBeLessThan(0);
    expect(s.outputTorque * s.outputMean).toBeGreaterThan(0);
    expect(s.outputElectric).toBeGreaterThan(0);
  });

  it("sun machine turns forward with the ring held: the engine is cranked forward", () => {
    const { s } = scene((state) => {
      state.brakeForce = 16000;
      state.sunTorque = 20;
    });
    expect(s.carrierSpeed).toBeGreaterThan(0);
    expect(s.ringSpeed).toBe(0);
    expect(s.sunMean).toBeGreaterThan(0);
    // The brake bears what the ring would get: the sun pushes it backward.
    expect(s.ringReaction).toBeGreaterThan(0);
  });

  it("engine pushes forward, sun machine holds against it: the ring is driven forward", () => {
    const { s, p } = scene((state) => {
      state.carrierSpeed = 200;
      state.ringSpeed = 100;
      state.indicatedTorque = 80;
      state.sunTorque = -80 / 3.5;
    });
    expect(Math.abs(s.carrierChange * p.carrierInertia)).toBeLessThan(0.5);
    expect(s.ringChange).toBeGreaterThan(0);
    expect(s.meshTorque).toBeLessThan(0);
    expect(s.engineTorque).toBe(80);
    // Torque through the final drive is positive while the wheels are driven.
    expect(s.driveTorque).toBeGreaterThan(0);
  });

  it.each([
    ["below the mechanical point the sun machine generates", 0.9, -1],
    ["above it the sun turns backward and the machine motors: power circulates", 1.1, 1],
  ])("%s", (_title, share, sign) => {
    const { s, p } = scene((state, plant) => {
      state.carrierSpeed = 200;
      state.ringSpeed = 200 * mechanicalPoint(plant.p.k) * share;
      state.indicatedTorque = 80;
      state.sunTorque = -80 / 3.5;
    });
    expect(Math.sign(s.sunTorque * s.sunMean)).toBe(sign);
    expect(Math.sign(p.k1 * s.carrierSpeed - p.k * s.ringSpeed)).toBe(-sign);
  });

  it("an engine without fuel is dragged: its torque is negative and slows it", () => {
    const plant = new HeldPlant(compactWith(() => ({})));
    plant.s.carrierSpeed = 200;
    plant.s.brakeForce = 16000;
    plant.step();
    expect(plant.s.engineTorque).toBeLessThan(-10);
    expect(plant.s.carrierChange).toBeLessThan(0);
    expect(plant.s.fuelPower).toBe(0);
  });

  it("uphill pulls back, downhill pushes on; head wind slows, tail wind pushes", () => {
    const change = (grade: number, wind: number): number => {
      const plant = new HeldPlant(compactWith(withoutLosses), { headWind: wind });
      plant.s.ringSpeed = 100;
      plant.s.rollingForce = 0;
      plant.s.gradeForce = plant.p.weight * grade;
      plant.step();
      return plant.s.ringChange;
    };
    const level = change(0, 0);
    expect(change(0.02, 0)).toBeLessThan(level);
    expect(change(-0.02, 0)).toBeGreaterThan(-level);
    expect(change(0, 5)).toBeLessThan(level);
    expect(change(0, -5)).toBeGreaterThan(level);
    expect(change(0, -30)).toBeGreaterThan(0);
  });

  it("brakes and rolling oppose the motion either way", () => {
    for (const way of [1, -1]) {
      const { s } = scene((state) => {
        state.ringSpeed = 60 * way;
        state.brakeForce = 3000;
      });
      expect(s.ringReaction * way).toBeLessThan(0);
      expect(s.ringChange * way).toBeLessThan(0);
    }
  });
});

describe("the line turned round (engine at rest, which alone knows forward)", () => {
  it("backward is forward's mirror image: speeds and torques change sign, powers and losses do not", () => {
    const run = (way: number): HeldPlant => {
      const plant = new HeldPlant(
        compactWith(() => ({})),
        { headWind: 0 },
      );
      plant.s.ringSpeed = 40 * way;
      plant.s.brakeForce = 200;
      plant.s.gradeForce = 500 * way;
      plant.s.outputTorque = 70 * way;
      // The engine's stop holds one way only: breakaway is enough for what the sun's inertia asks here.
      plant.runTo(0.5);
      return plant;
    };
    const { s: there } = run(1);
    const { s: back } = run(-1);
    expect(there.carrierHeld).toBe(1);
    expect(back.carrierHeld).toBe(1);
    for (const name of [
      "ringSpeed",
      "ringReaction",
      "airForce",
      "driveTorque",
      "reductionLossTorque",
    ] as const) {
      expect(Math.abs(there[name])).toBeGreaterThan(0);
      expect(Math.abs(there[name] + back[name])).toBeLessThan(1e-12 * Math.abs(there[name]));
    }
    for (const name of ["outputElectric", "outputLoss", "current", "soc", "voltage"] as const)
      expect(Math.abs(there[name] - back[name])).toBeLessThan(1e-12 * Math.abs(there[name]));
  });
});
