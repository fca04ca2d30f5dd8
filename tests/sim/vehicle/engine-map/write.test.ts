import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../../shared/at.ts";
import { bestPoint } from "../../../../sim/vehicle/engine-best.ts";
import { withEngineMap } from "../../../../sim/vehicle/engine-map/fit.ts";
import { FIGURE_UNITS } from "../../../../sim/vehicle/engine-map/measures.ts";
import { readEngineMap } from "../../../../sim/vehicle/engine-map/read.ts";
import type { EngineMapParameters } from "../../../../sim/vehicle/engine-map/reading.ts";
import { engineMapCsv, presentEngineMap } from "../../../../sim/vehicle/engine-map/write.ts";
import { PRESETS, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const HEAT = 42.98e6;

/** Greatest difference of two maps, relative. */
function farthest(a: EngineMapParameters, b: EngineMapParameters): number {
  const flat = ({ speed, torque, fuelPower }: EngineMapParameters) => [
    ...speed,
    ...torque,
    ...fuelPower.flat(),
  ];
  const [left, right] = [flat(a), flat(b)];
  expect(left.length).toBe(right.length);
  return Math.max(
    ...left.map((value, i) => Math.abs(value - at(right, i)) / Math.max(1e-9, Math.abs(value))),
  );
}

/** Rising maps whose efficiency stays between 15 and 45 %. */
const maps = fc
  .record({
    speeds: fc.uniqueArray(fc.integer({ min: 500, max: 9000 }), { minLength: 2, maxLength: 8 }),
    torques: fc.uniqueArray(fc.integer({ min: 1, max: 400 }), { minLength: 2, maxLength: 8 }),
    offset: fc.double({ min: 1, max: 30, noNaN: true }),
    efficiency: fc.double({ min: 0.2, max: 0.45, noNaN: true }),
  })
  .map(({ speeds, torques, offset, efficiency }): EngineMapParameters => {
    const speed = speeds.sort((a, b) => a - b).map((rpm) => (rpm * Math.PI) / 30);
    const torque = torques.sort((a, b) => a - b);
    return { speed, torque, fuelPower: speed.map((w) => torque.map((m) => (w * (m + offset)) / efficiency)) };
  });

describe("a map written and read back", () => {
  it("is the same in both layouts and in every unit, and so is its text", () => {
    const units = fc.constantFrom(...FIGURE_UNITS.map(({ id }) => id));
    fc.assert(
      fc.property(maps, units, fc.constantFrom("long", "grid"), (map, unit, layout) => {
        const text = engineMapCsv(map, HEAT, layout, unit);
        const reading = readEngineMap(text, "map.csv", HEAT);
        expect(reading.faults).toEqual([]);
        expect(reading.layout).toBe(layout);
        expect(reading.roles.figure).toMatchObject({ unit, unitHow: "from the header" });
        if (!reading.map) throw new Error("no map");
        expect(farthest(map, reading.map)).toBeLessThan(1e-9);
        expect(engineMapCsv(reading.map, HEAT, layout, unit)).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  it.each(PRESETS.map(({ id }) => id))("is a template for %s that it takes as it is", (id) => {
    const vehicle = vehicleById(id);
    const { lowerHeat } = vehicle.fuel;
    const map = presentEngineMap(vehicle.engine);
    const reading = readEngineMap(engineMapCsv(map, lowerHeat), "map.csv", lowerHeat);
    const fitted = withEngineMap(vehicle, reading, "map.csv");
    expect(fitted.faults).toEqual([]);
    if (!fitted.vehicle?.engine.map) throw new Error("no map");
    expect(farthest(map, fitted.vehicle.engine.map)).toBeLessThan(1e-9);
    // The map in linear steps is the Willans form but for their bend.
    expect(bestPoint(fitted.vehicle.engine).efficiency).toBeCloseTo(bestPoint(vehicle.engine).efficiency, 2);
    expect(presentEngineMap(fitted.vehicle.engine)).toBe(fitted.vehicle.engine.map);
  });
});

describe("whether a map suits the vehicle", () => {
  const compact = vehicleById("compact");
  const suit = (text: string) => withEngineMap(compact, readEngineMap(text, "map.csv", HEAT), "map.csv");
  const grid = (speeds: readonly number[], torques: readonly number[], unit = "rpm"): string =>
    [
      `N·m \\ ${unit} \\ bsfc (g/kWh)`,
      ...speeds,
      ...torques.flatMap((m) => [`\n${m}`, ...speeds.map(() => 250)]),
    ]
      .join(",")
      .replaceAll(",\n", "\n");

  it("is told in the file's units", () => {
    expect(suit(grid([1500, 5000], [20, 200])).faults[0]).toMatchObject({
      what: "the map covers 1500 … 5000 rev/min only",
      where: "map.csv, speeds",
      value: "1500 … 5000 rev/min",
      accepted: "from at most 1003 (idle) to at least 5000 rev/min",
    });
    expect(suit(grid([105, 400], [20, 200], "rad/s")).faults[0]).toMatchObject({
      what: "the map covers 105 … 400 rad/s only",
      accepted: "from at most 105 (idle) to at least 523.6 rad/s",
    });
    const torque = suit(grid([1000, 5000], [20, 100])).faults[0];
    expect(torque).toMatchObject({ where: "map.csv, torques", value: "20 … 100 N·m" });
    expect(torque?.accepted).toContain("at least 131 N·m");
  });

  it("leaves the vehicle alone and gives another", () => {
    const fitted = suit(grid([1000, 5000], [20, 200])).vehicle;
    expect(fitted?.engine.map?.torque).toEqual([20, 200]);
    expect(compact.engine.map).toBeUndefined();
  });

  it("passes on why a file was not read", () => {
    const reading = readEngineMap("", "map.csv", HEAT);
    expect(withEngineMap(compact, reading, "map.csv")).toEqual({ vehicle: null, faults: reading.faults });
  });
});
