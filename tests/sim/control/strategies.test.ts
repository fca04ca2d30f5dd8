import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { STRATEGIES, strategyById } from "../../../sim/control/strategies/registry.ts";
import { StrategyAnswer, StrategyInput } from "../../../sim/control/strategy.ts";
import { prepare } from "../../../sim/drivetrain/prepared.ts";
import { runSettings } from "../../../sim/options.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { even } from "../drivetrain/even.ts";

const SEED = 1010;
const p = prepare(vehicleById("compact"), runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));

const seen = fc.record({
  soc: even(0, 1),
  wheelPower: even(-120e3, 150e3),
  batteryOut: even(0, 40e3),
  batteryIn: even(0, 40e3),
  engineOn: fc.constantFrom(0, 1),
  engineTime: even(0, 1000),
  engineSpeed: even(0, 520),
  speed: even(-10, 45),
  coolant: even(250, 365),
});

/** Asks a fresh strategy through a list of periods; one answer a period, copied. */
function answers(id: string, periods: readonly Partial<StrategyInput>[]) {
  const strategy = strategyById(id).create(p);
  const now = new StrategyInput();
  const answer = new StrategyAnswer();
  return periods.map((period, i) => {
    const wheels = period.wheelPower ?? 0;
    Object.assign(now, { soc: 0.58, batteryOut: 25e3, batteryIn: 25e3, speed: 15, coolant: 363 }, period);
    now.time = i * 0.1;
    now.wheelPower = wheels;
    now.demand = period.demand ?? Math.max(0, wheels / 0.93) + 320;
    answer.engineOn = false;
    answer.enginePower = 0;
    answer.engineSpeed = 0;
    strategy.decide(now, answer);
    return { ...answer };
  });
}

describe(`every strategy over random periods (seed ${SEED})`, () => {
  it.each(STRATEGIES.map(({ id }) => id))(
    "%s answers within the engine's range, and the same again",
    (id) => {
      fc.assert(
        fc.property(fc.array(seen, { minLength: 1, maxLength: 60 }), (periods) => {
          const given = answers(id, periods);
          for (const answer of given) {
            expect(typeof answer.engineOn).toBe("boolean");
            expect(answer.enginePower).toBeGreaterThanOrEqual(-p.enginePower);
            expect(answer.enginePower).toBeLessThanOrEqual(p.enginePower);
            if (answer.engineSpeed !== 0) {
              expect(answer.engineSpeed).toBeGreaterThanOrEqual(p.idleSpeed);
              expect(answer.engineSpeed).toBeLessThanOrEqual(p.engineTop);
            }
          }
          expect(answers(id, periods)).toEqual(given);
        }),
        { seed: SEED, numRuns: 60, endOnFailure: true },
      );
    },
  );
});

describe("rules", () => {
  const on = (periods: readonly Partial<StrategyInput>[], id = "rules") =>
    answers(id, periods).map(({ engineOn }) => engineOn);
  const many = (count: number, period: Partial<StrategyInput>) => Array.from({ length: count }, () => period);

  it("start above the start power and not below", () => {
    expect(on([{ demand: 6_900 }])).toEqual([false]);
    expect(on([{ demand: 7_100 }])).toEqual([true]);
  });

  it("once on stay on down to the stop power, and then for the stop delay of 1.5 s", () => {
    const run = on([{ demand: 8_000 }, ...many(20, { demand: 4_000 }), ...many(30, { demand: 2_000 })]);
    expect(run.slice(0, 21).every(Boolean)).toBe(true);
    const off = run.indexOf(false);
    expect(off - 21).toBeGreaterThanOrEqual(14);
    expect(off - 21).toBeLessThanOrEqual(15);
    expect(run.slice(off).some(Boolean)).toBe(false);
  });

  it("firm braking ends it at once", () => {
    expect(on([{ demand: 8_000 }, { demand: 320, wheelPower: -8_000 }])).toEqual([true, false]);
  });

  it("low charge starts the engine and a fifth of the way back does not stop it: hysteresis of 2 points", () => {
    const run = on([
      { soc: 0.51 },
      { soc: 0.495 },
      { soc: 0.51 },
      { soc: 0.519 },
      { soc: 0.53 },
      ...many(20, { soc: 0.53 }),
    ]);
    expect(run.slice(0, 4)).toEqual([false, true, true, true]);
    expect(run[run.length - 1]).toBe(false);
  });

  it("make the demand and 60 kW a unit of missing charge besides", () => {
    const [lack] = answers("rules", [{ demand: 12_000, soc: 0.55, wheelPower: 11_000 }]);
    expect(Math.abs((lack?.enginePower ?? 0) - (12_000 + 0.03 * 60_000))).toBeLessThan(1e-6);
    const [full] = answers("rules", [{ demand: 12_000, soc: 0.67, wheelPower: 11_000 }]);
    expect(full?.enginePower).toBeLessThanOrEqual(12_000);
  });

  it("the baseline keeps the engine on with nothing asked", () => {
    expect(on(many(50, { demand: 0 }), "engine-always-on").every(Boolean)).toBe(true);
    expect(STRATEGIES.filter(({ regeneration }) => !regeneration).map(({ id }) => id)).toEqual([
      "no-regeneration",
    ]);
  });
});

describe("thermostat and electric first", () => {
  it("thermostat: on below its band, off above it, unchanged inside it", () => {
    const run = answers("thermostat", [
      { soc: 0.58 },
      { soc: 0.559 },
      { soc: 0.58 },
      { soc: 0.601 },
      { soc: 0.58 },
    ]);
    expect(run.map(({ engineOn }) => engineOn)).toEqual([false, true, true, false, false]);
    expect(run[1]?.enginePower).toBe(p.control.thermostatPower);
  });

  it("thermostat: helps when the battery alone cannot", () => {
    const [answer] = answers("thermostat", [{ soc: 0.6, demand: 40_000, batteryOut: 20_000 }]);
    expect(answer?.engineOn).toBe(true);
    expect(Math.abs((answer?.enginePower ?? 0) - 22_000)).toBeLessThan(1e-6);
  });

  it("electric first: no engine while charge is left, unless the battery alone is too weak; rules afterwards", () => {
    const run = answers("electric-first", [
      { soc: 0.75, demand: 15_000 },
      { soc: 0.7, demand: 30_000 },
      { soc: 0.7, demand: 15_000 },
      { soc: 0.7, demand: 10_000 },
      { soc: 0.58, demand: 8_000 },
      { soc: 0.7, demand: 8_000 },
    ]);
    expect(run.map(({ engineOn }) => engineOn)).toEqual([false, true, true, false, true, true]);
  });
});
