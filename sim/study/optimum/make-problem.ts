import { realAt } from "../../../shared/at.ts";
import { startCost } from "../../control/start-cost.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Actions } from "./actions.ts";
import { sourceOf } from "./battery.ts";
import type { Demand } from "./demand.ts";
import type { Problem } from "./problem.ts";

/** The problem of a vehicle's actions: its battery and start cost, engine off at the start. */
export function makeProblem(
  p: Prepared,
  demand: Demand,
  actions: Actions,
  startSoc: number,
  endSoc: number,
): Problem {
  const cost = startCost(p);
  return {
    stages: demand.stages,
    stage: demand.stage,
    first: actions.first,
    count: actions.count,
    power: actions.power,
    fuel: actions.fuel,
    restPower: actions.restPower,
    shed: actions.shed,
    overdraw: actions.overdraw,
    startFuel: cost.fuel,
    startEnergy: cost.energy,
    source: sourceOf(p),
    startSoc,
    endSoc,
    startOn: false,
  };
}

/** The same problem with every n-th point of each stage, the first and the last always kept. */
export function thinned(problem: Problem, every: number): Problem {
  const { stages } = problem;
  const first = new Int32Array(stages);
  const count = new Int32Array(stages);
  const kept: number[] = [];
  /** stages that share their points go on sharing them */
  const seen = new Map<number, number>();
  for (let k = 0; k < stages; k += 1) {
    const from = problem.first[k] ?? 0;
    const size = problem.count[k] ?? 0;
    const known = size > 0 ? seen.get(from) : undefined;
    if (known !== undefined) {
      first[k] = first[known] ?? 0;
      count[k] = count[known] ?? 0;
      continue;
    }
    seen.set(from, k);
    first[k] = kept.length;
    for (let i = 0; i < size; i += 1) {
      if (i % every === 0 || i === size - 1) kept.push(from + i);
    }
    count[k] = kept.length - (first[k] ?? 0);
  }
  const pick = (list: Float64Array): Float64Array => Float64Array.from(kept, (i) => realAt(list, i));
  return { ...problem, first, count, power: pick(problem.power), fuel: pick(problem.fuel) };
}
