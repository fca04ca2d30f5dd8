import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { CycleDriver } from "../../../sim/control/driver.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { Simulation } from "../../../sim/run/simulation.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** Control periods in one window, and windows looked at. */
const WINDOW = 400;
const WINDOWS = 25;

describe("the time loop", () => {
  it("allocates next to nothing a step beyond the log (median of windows without a collection)", () => {
    const udds = cycleById("udds");
    const compact = vehicleById("compact");
    for (let i = 0; i < 4; i += 1) simulate(compact, udds, rules);
    const run = new Simulation(compact, new CycleDriver(udds), rules, {}, WINDOW * WINDOWS + 10);
    const growth: number[] = [];
    for (let window = 0; window < WINDOWS; window += 1) {
      const before = process.memoryUsage().heapUsed;
      for (let i = 0; i < WINDOW; i += 1) run.tick();
      const grown = process.memoryUsage().heapUsed - before;
      if (grown >= 0) growth.push(grown / (WINDOW * run.p.stepsPerTick));
    }
    growth.sort((a, b) => a - b);
    // One object a step would be at least 16 bytes, and a step has some hundred numbers.
    expect(growth.length).toBeGreaterThan(5);
    expect(growth[Math.floor(growth.length / 2)]).toBeLessThan(64);
  });
});
