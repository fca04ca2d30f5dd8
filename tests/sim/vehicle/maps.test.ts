import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { brakeEfficiency, engineTables, fullLoadTorque } from "../../../sim/drivetrain/engine.ts";
import { machineEfficiency, torqueLimit } from "../../../sim/drivetrain/machine.ts";
import { lookUp } from "../../../sim/drivetrain/table.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { bestPoint } from "../../../sim/vehicle/engine-best.ts";
import {
  bestEfficiencyCurve,
  engineEfficiencyMap,
  fullLoadCurve,
  type MapGrid,
  machineEfficiencyMap,
  machineLimitCurve,
  sampleAt,
} from "../../../sim/vehicle/maps.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { anyVehicle } from "../../support/random.ts";

const value = ({ x, values }: MapGrid, i: number, j: number): number => at(values, j * x.count + i);

/** A vehicle whose engine has a gridded map instead of the Willans form. */
const gridded = vehicleSchema.parse({
  engine: {
    map: {
      speed: [100, 300, 530],
      torque: [0, 60, 140],
      fuelPower: [
        [4000, 22000, 48000],
        [14000, 62000, 130000],
        [34000, 120000, 235000],
      ],
    },
  },
});

describe("the engine's efficiency map", () => {
  for (const [name, { engine }] of [
    ...PRESETS.map(({ id }) => [id, vehicleById(id)] as const),
    ["a gridded map", gridded] as const,
  ]) {
    it(`is the engine's own function at every sample: ${name}`, () => {
      const grid = engineEfficiencyMap(engine, 9, 7);
      const { map } = engineTables(engine);
      for (let j = 0; j < grid.y.count; j += 1) {
        for (let i = 0; i < grid.x.count; i += 1) {
          const own = brakeEfficiency(engine, map, sampleAt(grid.x, i), sampleAt(grid.y, j));
          expect(value(grid, i, j)).toBe(own);
        }
      }
      expect(sampleAt(grid.x, 0)).toBe(engine.idleSpeed);
      expect(sampleAt(grid.x, 8)).toBe(engine.maxSpeed);
    });
  }

  it("has its greatest value by the engine's best point", () => {
    for (const { id } of PRESETS) {
      const { engine } = vehicleById(id);
      const grid = engineEfficiencyMap(engine);
      const most = grid.values.reduce((a, b) => Math.max(a, b), 0);
      expect(Math.abs(most - bestPoint(engine).efficiency)).toBeLessThan(0.002);
    }
  });

  it("is nothing without torque", () => {
    const grid = engineEfficiencyMap(vehicleById("compact").engine);
    for (let i = 0; i < grid.x.count; i += 1) expect(value(grid, i, 0)).toBe(0);
  });

  it("has the full-load curve and the best line of the run", () => {
    const { engine } = vehicleById("compact");
    const { line } = engineTables(engine);
    const full = fullLoadCurve(engine);
    full.x.forEach((speed, i) => {
      expect(at(full.y, i)).toBe(fullLoadTorque(engine, speed));
    });
    const best = bestEfficiencyCurve(engine);
    best.x.forEach((speed, i) => {
      const power = speed * at(best.y, i);
      expect(lookUp(line, power)).toBeCloseTo(speed, 6);
      expect(at(best.y, i)).toBeLessThanOrEqual(fullLoadTorque(engine, speed) + 0.5);
      if (i > 0) expect(speed).toBeGreaterThanOrEqual(at(best.x, i - 1));
    });
  });
});

describe("a machine's efficiency map", () => {
  it("is the machine's own function, the same where both signs are turned", () => {
    fc.assert(
      fc.property(anyVehicle, ({ sunMachine, outputMachine }) => {
        for (const m of [sunMachine, outputMachine]) {
          const grid = machineEfficiencyMap(m, 11, 9);
          for (let j = 0; j < 9; j += 1) {
            for (let i = 0; i < 11; i += 1) {
              const own = machineEfficiency(m, sampleAt(grid.y, j), sampleAt(grid.x, i));
              expect(value(grid, i, j)).toBe(own);
              expect(value(grid, 10 - i, 8 - j)).toBeCloseTo(own, 12);
            }
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it("generating returns less than motoring at the same torque and speed", () => {
    // Both lose the same; out of the smaller electrical power the loss is the larger share.
    const m = vehicleById("compact").outputMachine;
    const grid = machineEfficiencyMap(m, 21, 21);
    expect(value(grid, 15, 15)).toBeGreaterThan(value(grid, 15, 5));
  });

  it("has its limits alike on both sides, within peak torque and peak power", () => {
    for (const { id } of PRESETS) {
      for (const m of [vehicleById(id).sunMachine, vehicleById(id).outputMachine]) {
        const { x, y } = machineLimitCurve(m);
        x.forEach((speed, i) => {
          expect(at(y, i)).toBe(torqueLimit(m, speed));
          expect(at(y, i)).toBeCloseTo(at(y, x.length - 1 - i), 9);
          expect(at(y, i)).toBeLessThanOrEqual(m.peakTorque);
          expect(at(y, i) * Math.abs(speed)).toBeLessThanOrEqual(m.peakPower * (1 + 1e-12));
        });
      }
    }
  });
});
