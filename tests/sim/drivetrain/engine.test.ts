import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import {
  bestSpeedFor,
  brakeEfficiency,
  engineMap,
  engineTables,
  frictionTorque,
  fuelPower,
  fullLoadTorque,
  greatestPower,
  indicatedEfficiency,
  mapFuelPower,
} from "../../../sim/drivetrain/engine.ts";
import { lookUp } from "../../../sim/drivetrain/table.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

type Engine = Vehicle["engine"];
const IDS = ["compact", "family", "van"] as const;
const { engine: compact } = vehicleById("compact");

/** The engine's own Willans form, sampled on a grid that covers idle to greatest speed. */
function sampled(e: Engine, rows: number, columns: number): Engine {
  const top = Math.max(...e.fullLoadTorque);
  const axis = (count: number, from: number, to: number): number[] =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const speed = axis(rows, e.idleSpeed, e.maxSpeed);
  const torque = axis(columns, 0, top);
  return {
    ...e,
    map: { speed, torque, fuelPower: speed.map((w) => torque.map((t) => fuelPower(e, null, w, t))) },
  };
}

/** Least fuel for a power over a fine search of speeds, and its place. */
function searched(e: Engine, power: number): { fuel: number; speed: number } {
  let best = { fuel: Number.POSITIVE_INFINITY, speed: 0 };
  for (let i = 0; i <= 4000; i += 1) {
    const speed = e.idleSpeed + ((e.maxSpeed - e.idleSpeed) * i) / 4000;
    if (power / speed > 0.97 * fullLoadTorque(e, speed)) continue;
    const fuel = fuelPower(e, null, speed, power / speed);
    if (fuel < best.fuel) best = { fuel, speed };
  }
  return best;
}

describe.each(IDS)("best-efficiency line of the %s", (id) => {
  const { engine } = vehicleById(id);
  const { line, top } = engineTables(engine);

  it("makes each power with at most 0.5 % more fuel than the best of a fine search", () => {
    for (let share = 0.02; share <= 0.96; share += 0.02) {
      const power = share * top.power;
      const { fuel } = searched(engine, power);
      for (const speed of [lookUp(line, power), bestSpeedFor(engine, null, power)]) {
        const ours = fuelPower(engine, null, speed, power / speed);
        expect(ours).toBeLessThan(1.005 * fuel);
        expect(power / speed).toBeLessThanOrEqual(fullLoadTorque(engine, speed));
      }
    }
  });

  it("never falls with power, begins at idle and ends where the greatest power is", () => {
    for (let i = 1; i < line.values.length; i += 1)
      expect(at(line.values, i)).toBeGreaterThanOrEqual(at(line.values, i - 1));
    expect(lookUp(line, 0)).toBe(engine.idleSpeed);
    expect(lookUp(line, top.power)).toBeGreaterThan(0.97 * top.speed);
    expect(lookUp(line, 10 * top.power)).toBeLessThanOrEqual(engine.maxSpeed);
  });

  it("greatest power is full-load torque times speed, and no speed makes more", () => {
    expect(fullLoadTorque(engine, top.speed) * top.speed).toBe(top.power);
    for (let speed = engine.idleSpeed; speed <= engine.maxSpeed; speed += 0.5)
      expect(fullLoadTorque(engine, speed) * speed).toBeLessThanOrEqual(top.power * (1 + 1e-4));
  });

  it("its full-load table is the curve, within 0.1 % (its corners are cut by half a step)", () => {
    const { full } = engineTables(engine);
    for (let speed = 0; speed <= engine.maxSpeed; speed += 0.3)
      expect(Math.abs(lookUp(full, speed) / fullLoadTorque(engine, speed) - 1)).toBeLessThan(1e-3);
  });
});

describe("Willans form", () => {
  it("is best at its best speed and falls off to both sides and above the knee", () => {
    const at60 = (speed: number): number => indicatedEfficiency(compact, speed, 0.6);
    expect(at60(235)).toBe(0.44);
    expect(at60(0)).toBeCloseTo(0.44 * 0.9, 12);
    expect(at60(470)).toBeCloseTo(0.44 * 0.9, 12);
    expect(indicatedEfficiency(compact, 235, 0.85)).toBe(0.44);
    expect(indicatedEfficiency(compact, 235, 1)).toBeCloseTo(0.44 * (1 - 5.5 * 0.0225), 12);
    expect(indicatedEfficiency(compact, 235, 5)).toBe(0.02);
  });

  it("burns nothing at or below fuel cut, nor standing", () => {
    const friction = frictionTorque(compact, 200);
    expect(fuelPower(compact, null, 200, -friction)).toBe(0);
    expect(fuelPower(compact, null, 200, -friction - 1)).toBe(0);
    expect(fuelPower(compact, null, 0, 50)).toBe(0);
    expect(fuelPower(compact, null, 200, -friction + 1e-9)).toBeGreaterThan(0);
    expect(brakeEfficiency(compact, null, 200, 0)).toBe(0);
    expect(brakeEfficiency(compact, null, 200, -5)).toBe(0);
  });
});

describe("gridded map sampled from the Willans form", () => {
  const gridded = sampled(compact, 34, 24);
  const map = engineMap(gridded);
  if (!map) throw new Error("the engine has a map");

  it("gives the samples exactly", () => {
    for (let i = 0; i < map.speed.length; i += 1)
      for (let j = 0; j < map.torque.length; j += 1) {
        const [speed, torque] = [at(map.speed, i), at(map.torque, j)];
        const exact = fuelPower(compact, null, speed, torque);
        expect(Math.abs(fuelPower(gridded, map, speed, torque) / exact - 1)).toBeLessThan(1e-12);
      }
  });

  it("gives the form between them within 0.5 % below full load, and halving the grid quarters the error", () => {
    const worst = (rows: number, columns: number): number => {
      const e = sampled(compact, rows, columns);
      const m = engineMap(e);
      let most = 0;
      for (let speed = 110; speed < 520; speed += 1.7)
        for (let load = 0.02; load <= 0.8; load += 0.017) {
          const torque = load * fullLoadTorque(e, speed);
          most = Math.max(
            most,
            Math.abs(fuelPower(e, m, speed, torque) / fuelPower(e, null, speed, torque) - 1),
          );
        }
      return most;
    };
    expect(worst(34, 24)).toBeLessThan(5e-3);
    const ratio = worst(18, 12) / worst(35, 23);
    expect(ratio).toBeGreaterThan(3);
    expect(ratio).toBeLessThan(5);
  });

  it("holds its edges outside and is the mean of four corners in a cell's middle", () => {
    const [w0, w1] = [at(map.speed, 3), at(map.speed, 4)];
    const [t0, t1] = [at(map.torque, 5), at(map.torque, 6)];
    const corners = [w0, w1].flatMap((w) => [t0, t1].map((t) => mapFuelPower(map, w, t)));
    const mean = corners.reduce((sum, f) => sum + f, 0) / 4;
    expect(Math.abs(mapFuelPower(map, (w0 + w1) / 2, (t0 + t1) / 2) / mean - 1)).toBeLessThan(1e-12);
    expect(mapFuelPower(map, 10, 50)).toBe(mapFuelPower(map, compact.idleSpeed, 50));
    expect(mapFuelPower(map, 9e9, 50)).toBe(mapFuelPower(map, compact.maxSpeed, 50));
    expect(mapFuelPower(map, 200, 9e9)).toBe(mapFuelPower(map, 200, at(map.torque, map.torque.length - 1)));
  });

  it("gives a bilinear function back at any place of any grid", () => {
    const axis = fc
      .uniqueArray(fc.integer({ min: 1, max: 5000 }), { minLength: 2, maxLength: 40 })
      .map((list) => Float64Array.from(list).sort());
    fc.assert(
      fc.property(axis, axis, fc.nat(6000), fc.nat(6000), (speed, torque, w, m) => {
        const f = (x: number, y: number): number => 3 + 2 * x + 5 * y + 0.25 * x * y;
        const fuelPower = Float64Array.from([...speed].flatMap((x) => [...torque].map((y) => f(x, y))));
        const held = (list: Float64Array, value: number): number =>
          Math.min(Math.max(value, at(list, 0)), at(list, list.length - 1));
        const right = f(held(speed, w), held(torque, m));
        expect(Math.abs(mapFuelPower({ speed, torque, fuelPower }, w, m) / right - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("has nearly the same best line as the form itself", () => {
    for (const power of [5_000, 15_000, 30_000, 50_000]) {
      const speed = bestSpeedFor(gridded, map, power);
      const fuel = fuelPower(compact, null, speed, power / speed);
      expect(fuel).toBeLessThan(1.005 * searched(compact, power).fuel);
    }
    expect(greatestPower(gridded)).toEqual(greatestPower(compact));
  });
});
