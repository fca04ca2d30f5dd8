import { describe, expect, it } from "vitest";
import { mpsToKmh, rpmToRadPerS } from "../../../shared/units.ts";
import {
  brakeEfficiency,
  engineTables,
  frictionTorque,
  fuelPower,
  fullLoadTorque,
} from "../../../sim/drivetrain/engine.ts";
import { lookUp } from "../../../sim/drivetrain/table.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const engine = compact.engine;

/** Mean effective pressure of a four-stroke engine, Pa: 4π T / Vd. */
const meanPressure = (torque: number, volume: number): number => (4 * Math.PI * torque) / volume;

describe("Willans form against published engines", () => {
  it("E1 one more unit of work costs 1/0.46 to 1/0.36 of fuel (EU Decision 2020/728: 0.264 L/kWh, 0.426 at 32 MJ/L)", () => {
    for (const speed of [150, 235, 300]) {
      const step = 1;
      const more = fuelPower(engine, null, speed, 61) - fuelPower(engine, null, speed, 60);
      const slope = more / (step * speed);
      expect(1 / slope).toBeGreaterThan(0.36);
      expect(1 / slope).toBeLessThan(0.46);
    }
  });

  it("E3 affine mean pressures: 0.8 MPa at e 0.4 and 0.15 MPa of friction is 33.684 % (Guzzella and Onder; from memory)", () => {
    const volume = 0.0016;
    const torqueOf = (pressure: number): number => (pressure * volume) / (4 * Math.PI);
    const affine = vehicleSchema.parse({
      engine: {
        friction0: torqueOf(0.15e6),
        friction1: 0,
        friction2: 0,
        indicatedEfficiency: 0.4,
        speedFall: 0,
        loadFall: 0,
      },
    }).engine;
    expect(brakeEfficiency(affine, null, 200, torqueOf(0.8e6))).toBeCloseTo(0.33684, 5);
  });

  it("E4 friction within 40 % of a warm four-cylinder's (Heywood, ch. 13, after Barnes-Moss), and below it", () => {
    for (const [rpm, bar] of [
      [1000, 1.17],
      [1500, 1.3075],
      [2000, 1.47],
      [3000, 1.87],
      [4000, 2.37],
    ] as const) {
      const ours = meanPressure(frictionTorque(engine, rpmToRadPerS(rpm)), engine.displacement) / 1e5;
      expect(ours).toBeLessThan(bar);
      expect(ours).toBeGreaterThan(0.6 * bar);
    }
  });

  it("E6 four cylinders of 90 × 100 mm at 120 N·m: 5.93 bar (Gupta, Ex. 16.3)", () => {
    expect(meanPressure(120, 4 * (Math.PI / 4) * 0.09 ** 2 * 0.1) / 1e5).toBeCloseTo(5.93, 2);
  });

  it("E10 the best brake efficiency lies in 0.37–0.40 (SAE 2009-01-1061 and 2016-01-0684; from memory)", () => {
    const { line } = engineTables(engine);
    let best = 0;
    for (let power = 5000; power < 60000; power += 500) {
      const speed = lookUp(line, power);
      best = Math.max(best, brakeEfficiency(engine, null, speed, power / speed));
    }
    expect(best).toBeGreaterThan(0.37);
    expect(best).toBeLessThan(0.4);
  });
});

describe("the sun passes through zero (common practice, no source)", () => {
  it("at a constant 22 kW of the compact's engine, at 100 ± 6 km/h", () => {
    const carrier = lookUp(engineTables(engine).line, 22000);
    const ring = (carrier * 3.5) / 2.5;
    const speed = mpsToKmh((ring / compact.finalDrive.ratio) * compact.body.wheelRadius);
    expect(speed).toBeGreaterThan(94);
    expect(speed).toBeLessThan(106);
  });
});

describe("best-efficiency line", () => {
  it("is never worse than any other speed by more than 0.5 %", () => {
    const { line } = engineTables(engine);
    for (let power = 3000; power <= 60000; power += 3000) {
      const ours = fuelPower(engine, null, lookUp(line, power), power / lookUp(line, power));
      for (let speed = engine.idleSpeed; speed <= engine.maxSpeed; speed += 2) {
        if (power / speed > 0.97 * fullLoadTorque(engine, speed)) continue;
        expect(ours).toBeLessThan(1.005 * fuelPower(engine, null, speed, power / speed));
      }
    }
  });
});

describe("gridded map", () => {
  it("sampled from the Willans form it gives its fuel at the samples exactly and nearly between", () => {
    const speed = Array.from({ length: 22 }, (_, i) => 90 + i * 22);
    const torque = Array.from({ length: 18 }, (_, i) => i * 8);
    const map = {
      speed: Float64Array.from(speed),
      torque: Float64Array.from(torque),
      fuelPower: Float64Array.from(speed.flatMap((w) => torque.map((t) => fuelPower(engine, null, w, t)))),
    };
    expect(fuelPower(engine, map, 200, 64)).toBeCloseTo(fuelPower(engine, null, 200, 64), 6);
    for (const [w, t] of [
      [141, 37],
      [260, 91],
      [333, 60],
    ] as const) {
      expect(Math.abs(fuelPower(engine, map, w, t) / fuelPower(engine, null, w, t) - 1)).toBeLessThan(0.005);
    }
    expect(fuelPower(engine, map, 200, -frictionTorque(engine, 200))).toBe(0);
  });
});
