import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { CycleDriver } from "../../../sim/control/driver.ts";
import { PedalDriver } from "../../../sim/control/pedals.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { CHANNELS } from "../../../sim/run/channels.ts";
import { checkClosure, simulate } from "../../../sim/run/simulate.ts";
import { Simulation } from "../../../sim/run/simulation.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");

describe("advancing by steps", () => {
  it("makes the very rows that whole periods make", () => {
    const cycle = cycleById("us06");
    const whole = simulate(compact, cycle, rules);
    const run = new Simulation(compact, new CycleDriver(cycle), rules, {});
    while (run.log.rows < whole.log.rows) run.step();
    for (const { id } of CHANNELS) expect(run.log.view(id)).toEqual(whole.log.view(id));
    expect(run.time).toBe(whole.time);
  });

  it("lets a pedal act in the very next step", () => {
    const driver = new PedalDriver();
    const run = new Simulation(compact, driver, rules, {});
    for (let i = 0; i < 20; i += 1) run.step();
    driver.accelerator = 0.6;
    run.step(true);
    expect(run.s.outputTorque).toBeGreaterThan(0);
    for (let i = 0; i < 500; i += 1) run.step();
    expect(run.s.ringSpeed).toBeGreaterThan(0);
    expect(checkClosure(run)).toBeLessThan(1e-9);
  });
});
