import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { mphToMps } from "../../../shared/units.ts";
import { engineAlwaysOn, rules } from "../../../sim/control/strategies/rules.ts";
import { thermostat } from "../../../sim/control/strategies/thermostat.ts";
import { storedEnergy } from "../../../sim/drivetrain/battery.ts";
import { fuelPower } from "../../../sim/drivetrain/engine.ts";
import { limitsIn } from "../../../sim/limits.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { SPEED_TOLERANCE, TIME_TOLERANCE } from "../../../sim/run/trace-quality.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { traceOf } from "../../support/random.ts";

const compact = vehicleById("compact");

describe("battery books", () => {
  it("what leaves the open-circuit source is the area under its curve, also at the longest step", () => {
    // A steep curve, so that the voltage moves within a step.
    const steep = vehicleSchema.parse({
      battery: { cellSoc: [0, 1], cellVoltage: [2.9, 4.2], capacityAh: 2, cellVoltageMin: 2, socFloor: 0.2 },
    });
    const run = simulate(steep, traceOf("pull", [0, 8, 80], [0, 9, 9]), rules, { step: 0.1 });
    const area = storedEnergy(steep.battery, run.p.socStart, run.s.soc);
    expect(Math.abs(area)).toBeGreaterThan(20_000);
    expect(Math.abs(-run.b.source / area - 1)).toBeLessThan(2e-6);
  });

  it("never charges above the ceiling, however long the hill", () => {
    const hill = traceOf("hill", [0, 10, 400], [0, 20, 20], [-0.06, -0.06, -0.06]);
    const run = simulate(compact, hill, rules, { startSoc: 0.76 });
    expect(Math.max(...run.log.view("soc"))).toBeLessThanOrEqual(compact.battery.socCeiling);
    expect(run.s.soc).toBeGreaterThan(0.77);
    const seen = run.log.limits.reduce((mask, bits) => mask | bits, 0);
    expect(limitsIn(seen)).toContain("battery-charge");
  });
});

describe("energy recovered", () => {
  it("does not count what the engine made: the share stays below what the driven axle may brake", () => {
    for (const strategy of [rules, thermostat]) {
      const run = simulate(compact, cycleById("us06"), strategy);
      expect(run.b.recovered / run.b.brakingAsked, strategy.id).toBeLessThan(
        compact.body.drivenAxleBrakingShare,
      );
      expect(run.b.brakingShaft, strategy.id).toBeLessThan(run.b.brakingAsked);
    }
  });
});

describe("fuel books", () => {
  it("the loop burns what the engine's formula says, at every load", () => {
    const run = simulate(compact, cycleById("us06"), rules, { logEvery: "step" });
    const speed = run.log.view("engineSpeed");
    const torque = run.log.view("engineTorque");
    const fuel = run.log.view("fuelPower");
    let loaded = 0;
    for (let i = 30; i < run.log.rows; i += 7) {
      // Settled firing only: start fuel and a changing speed are booked in other lines or at the mean speed.
      const mean = (at(speed, i) + at(speed, i - 1)) / 2;
      if (
        at(run.log.engineMode, i) !== 2 ||
        at(torque, i) < 20 ||
        Math.abs(at(speed, i) - at(speed, i - 1)) > 0.2
      )
        continue;
      const expected = fuelPower(compact.engine, null, mean, at(torque, i));
      if (at(fuel, i) > 1.1 * expected) continue;
      expect(Math.abs(at(fuel, i) / expected - 1)).toBeLessThan(2e-3);
      if (at(torque, i) > 110) loaded += 1;
    }
    expect(loaded).toBeGreaterThan(20);
  });
});

describe("a cold engine", () => {
  it("burns as much more with a gridded map as with the formula it was sampled from", () => {
    const speed = Array.from({ length: 23 }, (_, i) => 84 + i * 21);
    const torque = Array.from({ length: 18 }, (_, i) => i * 8);
    const rows = speed.map((w) => torque.map((t) => fuelPower(compact.engine, null, w, t)));
    const mapped = { ...compact, engine: { ...compact.engine, map: { speed, torque, fuelPower: rows } } };
    const options = { coldStart: true, airTemperature: 263.15 };
    const burnt = (vehicle: typeof compact, cold: boolean): number =>
      simulate(vehicle, cycleById("nycc"), engineAlwaysOn, cold ? options : {}).b.runningFuel;
    const formula = burnt(compact, true) / burnt(compact, false);
    expect(formula).toBeGreaterThan(1.1);
    expect(Math.abs(burnt(mapped, true) / burnt(mapped, false) / formula - 1)).toBeLessThan(0.02);
  });
});

describe("a sun machine smaller than the engine", () => {
  it("limits the engine's torque to what it can bear, and logs it", () => {
    const weak = vehicleSchema.parse({ sunMachine: { peakTorque: 24, peakPower: 30000 } });
    const run = simulate(weak, traceOf("sprint", [0, 10, 40], [0, 30, 30]), rules);
    const torque = run.log.view("engineTorque");
    expect(Math.max(...torque)).toBeLessThan(24 * 3.5);
    expect(Math.max(...run.log.view("engineSpeed"))).toBeLessThan(weak.engine.maxSpeed);
    const seen = run.log.limits.reduce((mask, bits) => mask | bits, 0);
    expect(limitsIn(seen)).toContain("engine-torque-cut");
  });
});

describe("trace tolerance", () => {
  it("F6 is 2 mph within 1 s (40 CFR 600.109-08(b)(2))", () => {
    expect(SPEED_TOLERANCE).toBeCloseTo(mphToMps(2), 12);
    expect(SPEED_TOLERANCE).toBeCloseTo(0.894, 3);
    expect(TIME_TOLERANCE).toBe(1);
  });
});
