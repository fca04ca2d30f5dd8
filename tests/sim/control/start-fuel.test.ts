import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

describe("the extra fuel of a start", () => {
  it.each([6000, 8000])("is engine.startFuel = %d J for each start of a run", (startFuel) => {
    const compact = vehicleById("compact");
    const vehicle = { ...compact, engine: { ...compact.engine, startFuel } };
    const run = simulate(vehicle, cycleById("nycc"), rules);
    expect(run.c.starts).toBeGreaterThan(5);
    expect(Math.abs(run.b.startFuel / (startFuel * run.c.starts) - 1)).toBeLessThan(1e-9);
  });
});
