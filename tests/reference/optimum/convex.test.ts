import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundOf } from "../../../sim/study/optimum/bound.ts";
import type { Problem } from "../../../sim/study/optimum/problem.ts";
import { even } from "../../sim/drivetrain/even.ts";
import { idealSource, problemFrom } from "./problems.ts";

const SEED = 5005;

/** Fuel of an engine, W: α + β P + γ P². */
const ALPHA = 4000;
const BETA = 2.2;
const GAMMA = 2e-5;
const fuelOf = (made: number): number => ALPHA + BETA * made + GAMMA * made * made;

/** A drive with the engine always on, a battery without loss, and the charge to be kept. */
function drive(demand: readonly number[], points: number, more: Partial<Problem> = {}): Problem {
  const stages = demand.map((wanted) => ({
    points: Array.from({ length: points + 1 }, (_, i) => {
      const made = (40_000 * i) / points;
      return { power: wanted - made, fuel: fuelOf(made) };
    }),
    rest: Number.NaN,
  }));
  return problemFrom(stages, { source: idealSource(2e6), startSoc: 0.5, endSoc: 0.5, ...more });
}

const bound = (problem: Problem, steps = 200) => {
  const found = boundOf(problem, steps);
  if (!found) throw new Error("not cancelled");
  return found;
};

const demands = fc.array(even(0, 30_000), { minLength: 20, maxLength: 60 });

describe(`a convex fuel curve and a battery without loss (seed ${SEED})`, () => {
  it("Q3 is served best by constant power, whatever the demand (Jensen's inequality; derived)", () => {
    fc.assert(
      fc.property(demands, (demand) => {
        const mean = demand.reduce((sum, wanted) => sum + wanted, 0) / demand.length;
        const least = demand.length * fuelOf(mean);
        const found = bound(drive(demand, 80));
        expect(found.path.fuelEnergy).toBeGreaterThan(least * (1 - 1e-9));
        expect(found.path.fuelEnergy - least).toBeLessThan(found.gridError + 1e-4 * least);
        expect(found.path.fuelEnergy / least - 1).toBeLessThan(1e-3);
        expect(Math.abs((found.path.soc[demand.length] ?? 0) - 0.5)).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 8, endOnFailure: true },
    );
  });

  it("Q3 the price of battery energy is β + 2 γ P̄ (derived)", () => {
    const demand = Array.from({ length: 60 }, (_, i) => (i % 10 < 4 ? 26_000 : 8_000));
    const mean = demand.reduce((sum, wanted) => sum + wanted, 0) / demand.length;
    const { path } = bound(drive(demand, 160), 400);
    expect(Math.abs((path.factor[10] ?? 0) / (BETA + 2 * GAMMA * mean) - 1)).toBeLessThan(0.01);
  });

  it("Q5 more points and more room never cost more; a start cost never less (Bellman)", () => {
    fc.assert(
      fc.property(demands, even(0, 9000), (demand, startFuel) => {
        const free = drive(demand, 40);
        const few = drive(demand, 10);
        const resting = { restPower: Float64Array.from(demand), startOn: false };
        const room = bound(free);
        expect(room.path.fuelEnergy).toBeLessThan(bound(few).path.fuelEnergy + room.gridError);
        const starts = bound({ ...few, ...resting, startFuel });
        const gratis = bound({ ...few, ...resting });
        expect(gratis.path.fuelEnergy).toBeLessThan(starts.path.fuelEnergy + gratis.gridError);
        const narrow = { ...free.source, socFloor: 0.48, socCeiling: 0.52 };
        const pinched = bound({ ...free, source: narrow });
        if (pinched.path.feasible) {
          expect(room.path.fuelEnergy).toBeLessThan(pinched.path.fuelEnergy + room.gridError);
        }
      }),
      { seed: SEED, numRuns: 4, endOnFailure: true },
    );
  });

  it("the infeasible edge does not leak: a demand that needs all power all the time is still found exactly", () => {
    // 30 s in which the greatest power just covers the demand: only one way of driving is possible.
    const demand = Array.from({ length: 30 }, () => 40_000);
    const found = bound(drive(demand, 20));
    expect(found.path.feasible).toBe(true);
    expect(Math.abs(found.path.fuelEnergy / (30 * fuelOf(40_000)) - 1)).toBeLessThan(1e-9);
    expect(bound(drive(demand, 20, { endSoc: 0.501 })).path.feasible).toBe(false);
  });
});
