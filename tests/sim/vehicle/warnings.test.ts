import { describe, expect, it } from "vitest";
import type { VehicleInput } from "../../../sim/parameters/schema.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";
import { vehicleWarnings } from "../../../sim/vehicle/warnings.ts";

describe("vehicleWarnings", () => {
  const rows: readonly (readonly [VehicleInput, RegExp])[] = [
    [{ engine: { indicatedEfficiency: 0.52 } }, /^engine: best efficiency 0\.4\d+ is above 0\.43/],
    [
      { engine: { fullLoadSpeed: [100, 530], fullLoadTorque: [100, 130] } },
      /^engine\.fullLoadSpeed: .*fewer than four/,
    ],
    [{ sunMachine: { peakTorque: 30 } }, /^sunMachine\.peakTorque: 30 N m hold only part/],
    [{ engine: { breakaway: 100 } }, /^sunMachine\.peakTorque: a cold engine needs 54\.29 N m/],
    [{ sunMachine: { peakPower: 60000 } }, /^sunMachine\.peakPower: never reached/],
    [{ outputMachine: { peakPower: 300000 } }, /^outputMachine\.peakPower: never reached/],
    [{ outputMachine: { maxSpeed: 800 } }, /^outputMachine\.maxSpeed: over-speeds above 106 km\/h/],
    [{ body: { frictionBrakeForce: 5000 } }, /^body\.frictionBrakeForce: /],
    [{ outputMachine: { peakTorque: 50 } }, /^outputMachine\.peakTorque: .*grade of 0\.09/],
    [{ battery: { socTarget: 0.37 } }, /^battery\.socTarget: so near the floor/],
    [{ battery: { socTarget: 0.79 } }, /^battery\.socTarget: so near the ceiling/],
    [{ control: { socLow: 0.3 } }, /^control\.socLow: /],
    [{ control: { thermostatBand: 0.3 } }, /^control\.thermostatBand: /],
    [{ control: { electricTopSpeed: 50 } }, /^control\.electricTopSpeed: .*139 km\/h/],
    [{ control: { startPower: 90000 } }, /^control\.startPower: /],
  ];
  it.each(rows)("%j", (input, sentence) => {
    expect(vehicleWarnings(readVehicle(input, ""))).toContainEqual(expect.stringMatching(sentence));
  });

  it("says nothing of a usual vehicle", () => {
    expect(vehicleWarnings(readVehicle({}, ""))).toEqual([]);
  });
});
