import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { InputError } from "../../../shared/errors.ts";
import { TraceReader } from "../../../sim/control/driver.ts";
import { PedalDriver } from "../../../sim/control/pedals.ts";
import { ENGINE } from "../../../sim/control/state.ts";
import { STRATEGIES, strategyById } from "../../../sim/control/strategies/registry.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { StrategyAnswer, type StrategyDefinition, StrategyInput } from "../../../sim/control/strategy.ts";
import { prepare } from "../../../sim/drivetrain/prepared.ts";
import { interpolate } from "../../../sim/drivetrain/table.ts";
import { LIMIT_BIT, LIMITS, limitsIn } from "../../../sim/limits.ts";
import { runSettings } from "../../../sim/options.ts";
import { REGIMES, regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { Simulation } from "../../../sim/run/simulation.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { traceOf } from "../../support/random.ts";
import { even } from "../drivetrain/even.ts";

const compact = vehicleById("compact");

describe("trace reader", () => {
  it("agrees with plain interpolation at rising times", () => {
    const times = [0, 0.5, 2, 2.25, 9];
    const speeds = [0, 3, 1, 8, 2];
    const reader = new TraceReader(traceOf("t", times, speeds, [0, 0.1, 0, -0.1, 0]));
    for (let t = 0; t <= 10; t += 0.07) {
      reader.moveTo(t);
      expect(reader.speed).toBeCloseTo(interpolate(times, speeds, t), 12);
    }
  });
});

describe("limits", () => {
  it("have one bit each, and a mask reads back as its names", () => {
    expect(new Set(Object.values(LIMIT_BIT)).size).toBe(LIMITS.length);
    const all = LIMITS.reduce((mask, [id]) => mask | LIMIT_BIT[id], 0);
    expect(limitsIn(all)).toEqual(LIMITS.map(([id]) => id));
    expect(limitsIn(0)).toEqual([]);
  });
});

/** A strategy that always gives the same answer. */
const always = (engineOn: boolean, enginePower = 10000): StrategyDefinition => ({
  ...rules,
  id: "always",
  create: () => ({
    decide(_now, answer) {
      answer.engineOn = engineOn;
      answer.enginePower = enginePower;
    },
  }),
});

describe("supervisor", () => {
  it("starts the engine by itself when a strategy lets the charge run down, keeps the charge and logs why", () => {
    const run = simulate(compact, traceOf("long", [0, 10, 900], [0, 20, 20]), always(false), {
      startSoc: 0.45,
    });
    expect(run.c.starts).toBeGreaterThan(0);
    expect(Math.min(...run.log.view("soc"))).toBeGreaterThan(compact.battery.socFloor);
    const seen = run.log.limits.reduce((mask, bits) => mask | bits, 0);
    expect(limitsIn(seen)).toContain("start-charge");
  });

  it("starts the engine before the sun machine over-speeds, whatever the strategy says", () => {
    const run = simulate(
      compact,
      traceOf("fast", [0, 40, 90], [0, 42, 42], [-0.07, -0.07, -0.07]),
      always(false),
      {
        startSoc: 0.75,
      },
    );
    expect(Math.max(...run.log.view("sunMachineSpeed").map(Math.abs))).toBeLessThan(
      compact.sunMachine.maxSpeed,
    );
    const seen = run.log.limits.reduce((mask, bits) => mask | bits, 0);
    expect(limitsIn(seen)).toContain("start-sun-speed");
  });

  it("changes the engine's mode by one step a period, along off, cranking, running, stopping", () => {
    const next: Record<number, readonly number[]> = {
      [ENGINE.off]: [ENGINE.cranking],
      [ENGINE.cranking]: [ENGINE.running, ENGINE.stopping],
      [ENGINE.running]: [ENGINE.stopping],
      [ENGINE.stopping]: [ENGINE.off, ENGINE.cranking],
    };
    const flicker: StrategyDefinition = {
      ...rules,
      create: () => ({
        decide(now, answer) {
          answer.engineOn = Math.floor(now.time / 0.7) % 2 === 0;
          answer.enginePower = 8000;
        },
      }),
    };
    const run = simulate(compact, traceOf("town", [0, 8, 20, 30, 40], [0, 12, 12, 0, 0]), flicker);
    const modes = run.log.engineMode;
    for (let i = 1; i < modes.length; i += 1) {
      const [before = 0, after = 0] = [modes[i - 1], modes[i]];
      if (before !== after) expect(next[before]).toContain(after);
    }
  });

  it("the rules start a cold engine at once and keep it on", () => {
    const trace = traceOf("cold", [0, 6, 12, 20, 40], [0, 15, 15, 0, 0]);
    const run = simulate(compact, trace, rules, { coldStart: true, airTemperature: 263.15 });
    expect(run.log.view("engineOn").indexOf(1)).toBeLessThan(15);
    expect(run.s.firing).toBe(1);
  });

  it("does not stop a cold engine, and says so", () => {
    const once: StrategyDefinition = {
      ...rules,
      create: () => ({
        decide(now, answer) {
          answer.engineOn = now.time < 5;
          answer.enginePower = 8000;
        },
      }),
    };
    const trace = traceOf("cold", [0, 6, 30], [0, 15, 15]);
    const run = simulate(compact, trace, once, { coldStart: true, airTemperature: 263.15 });
    const seen = run.log.limits.reduce((mask, bits) => mask | bits, 0);
    expect(limitsIn(seen)).toContain("stop-refused-cold");
    expect(run.s.firing).toBe(1);
  });

  it("turns the engine without fuel on a long descent with a full battery", () => {
    const hill = traceOf("hill", [0, 15, 120], [0, 25, 25], [-0.12, -0.12, -0.12]);
    for (const id of ["compact", "family", "van"]) {
      const vehicle = vehicleById(id);
      const run = simulate(vehicle, hill, rules, { startSoc: vehicle.battery.socCeiling });
      const found = regimes(run.log, run.p).filter((index) => REGIMES[index]?.id === "engine-braking");
      expect(found.length, id).toBeGreaterThan(800);
      expect(run.b.engineMotoring, id).toBeGreaterThan(500_000);
      expect(Math.max(...run.log.view("sunMachineSpeed").map(Math.abs)), id).toBeLessThan(
        vehicle.sunMachine.maxSpeed,
      );
    }
  });

  it("brings the engine to rest within half a second, every time", () => {
    const run = simulate(compact, cycleById("udds"), rules);
    let stopping = 0;
    for (const mode of run.log.engineMode) {
      stopping = mode === ENGINE.stopping ? stopping + 1 : 0;
      expect(stopping).toBeLessThanOrEqual(5);
    }
  });

  it("a cold start uses more fuel than a warm one", () => {
    const trace = traceOf("trip", [0, 6, 200, 206, 220], [0, 15, 15, 0, 0]);
    const fuel = (coldStart: boolean): number => {
      const run = simulate(compact, trace, rules, { coldStart });
      return run.b.runningFuel + run.b.startFuel + 2.6 * run.b.source;
    };
    expect(fuel(true)).toBeGreaterThan(1.05 * fuel(false));
  });
});

describe("strategies", () => {
  const p = prepare(compact, runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));

  for (const definition of STRATEGIES) {
    it(`${definition.id} answers with finite power within the engine's whatever it sees`, () => {
      const strategy = definition.create(p);
      const now = new StrategyInput();
      const answer = new StrategyAnswer();
      fc.assert(
        fc.property(even(0.3, 0.85), even(-60000, 120000), even(0, 25000), (soc, power, battery) => {
          Object.assign(now, {
            time: now.time + 0.1,
            soc,
            wheelPower: power,
            demand: Math.max(0, power) + 320,
            batteryOut: battery,
          });
          answer.engineOn = false;
          answer.enginePower = 0;
          answer.engineSpeed = 0;
          strategy.decide(now, answer);
          expect(Number.isFinite(answer.enginePower)).toBe(true);
          expect(answer.enginePower).toBeLessThanOrEqual(p.enginePower);
        }),
        { seed: 7, numRuns: 500 },
      );
    });
  }

  it("an unknown one is refused with the known ones named", () => {
    expect(() => strategyById("rule")).toThrow(InputError);
    expect(() => strategyById("rule")).toThrow(/thermostat/);
  });
});

describe("pedals", () => {
  const driven = (set: (driver: PedalDriver) => void, seconds: number): Simulation => {
    const driver = new PedalDriver();
    set(driver);
    const run = new Simulation(compact, driver, rules, {});
    for (let i = 0; i < seconds * 10; i += 1) run.tick();
    return run;
  };

  it("pulls away forward and backward, and stands in park and under the brake", () => {
    expect(driven((d) => Object.assign(d, { accelerator: 0.4 }), 5).s.ringSpeed).toBeGreaterThan(20);
    expect(
      driven((d) => Object.assign(d, { accelerator: 0.4, gear: "reverse" }), 3).s.ringSpeed,
    ).toBeLessThan(-5);
    expect(driven((d) => Object.assign(d, { accelerator: 1, gear: "park", grade: 0.1 }), 3).s.ringSpeed).toBe(
      0,
    );
    expect(driven((d) => Object.assign(d, { brake: 0.5, grade: -0.1 }), 3).s.ringSpeed).toBe(0);
  });

  it("brakes to rest and recovers energy on the way", () => {
    const driver = new PedalDriver();
    driver.accelerator = 0.5;
    const run = new Simulation(compact, driver, rules, {});
    for (let i = 0; i < 80; i += 1) run.tick();
    driver.accelerator = 0;
    driver.brake = 0.2;
    for (let i = 0; i < 200; i += 1) run.tick();
    expect(run.s.ringSpeed).toBe(0);
    expect(run.b.recovered).toBeGreaterThan(0.4 * run.b.brakingAsked);
  });

  it("keeps the engine off while electric drive is held", () => {
    expect(driven((d) => Object.assign(d, { accelerator: 0.8, electricOnly: 1 }), 8).c.starts).toBe(0);
    expect(driven((d) => Object.assign(d, { accelerator: 0.8 }), 8).c.starts).toBe(1);
  });
});
