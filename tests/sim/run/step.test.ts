import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { simulate } from "../../../sim/run/simulate.ts";

const compact = vehicleSchema.parse({});

describe("halving the step", () => {
  for (const id of ["udds", "us06"]) {
    it(`moves fuel by less than 0.1 % and final charge by less than 0.1 points on ${id}`, () => {
      const whole = simulate(compact, cycleById(id), rules, { step: 0.01 });
      const half = simulate(compact, cycleById(id), rules, { step: 0.005 });
      const fuel = (run: typeof whole): number => run.b.runningFuel + run.b.startFuel;
      expect(Math.abs(fuel(whole) / fuel(half) - 1)).toBeLessThan(0.001);
      expect(Math.abs(whole.s.soc - half.s.soc)).toBeLessThan(0.001);
    });
  }
});
