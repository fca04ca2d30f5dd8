import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { stageActions } from "../../../sim/study/optimum/actions.ts";
import { mostIn, mostOut } from "../../../sim/study/optimum/battery.ts";
import { boundOf } from "../../../sim/study/optimum/bound.ts";
import { cycleDemand, type Demand } from "../../../sim/study/optimum/demand.ts";
import { makeProblem } from "../../../sim/study/optimum/make-problem.ts";
import { prepareFor } from "../../../sim/study/optimum/optimum.ts";
import type { Problem } from "../../../sim/study/optimum/problem.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** Part of a demand, in stages. */
function cut(demand: Demand, from: number, to: number): Demand {
  const part = (list: Float64Array): Float64Array => list.slice(from, to);
  return {
    ...demand,
    stages: to - from,
    ringSpeed: part(demand.ringSpeed),
    ringAcceleration: part(demand.ringAcceleration),
    wheelTorque: part(demand.wheelTorque),
    brakingShare: part(demand.brakingShare),
    awake: part(demand.awake),
  };
}

/**
 * A piece of a cycle for a vehicle whose open-circuit voltage does not depend on charge: every choice then takes a fixed
 * amount of charge, its losses included, and the problem is a mixed-integer linear programme.
 */
function instance(id: string, cycle: string, from: number, to: number, points: number): Problem {
  const p = prepareFor(vehicleById(id), {});
  const demand = cut(cycleDemand(p, cycleById(cycle)), from, to);
  const soc = 0.6;
  const problem = makeProblem(p, demand, stageActions(p, demand, points, soc), soc, soc);
  const source = { ...problem.source, openCircuit: Float64Array.of(210, 210), socSteps: 1 };
  return { ...problem, source, startSoc: soc };
}

/** Charge that a power takes in a stage. */
function takes({ source, stage }: Problem, power: number): number {
  const open = 210;
  const r = power >= 0 ? source.resistanceDischarge : source.resistanceCharge;
  return (((open - Math.sqrt(open * open - 4 * r * power)) / (2 * r)) * stage) / source.charge;
}

/** A power within the battery's limits, which do not bind on charge here; not a number where it cannot be. */
function within(problem: Problem, k: number, power: number): number {
  const into = -mostIn(problem.source, problem.startSoc, 210);
  if (!(power <= mostOut(problem.source, problem.startSoc, 210))) return Number.NaN;
  if (power >= into) return power;
  return power + (problem.shed[k] ?? 0) >= into ? into : Number.NaN;
}

/**
 * The same as text of a mixed-integer programme: one of rest and the points in each stage, a start where the engine was
 * off, least fuel, and no less charge at the end. Charge in thousandths, fuel in kJ.
 */
function programme(problem: Problem): string {
  const objective: string[] = [];
  const rows: string[] = [];
  const binaries: string[] = [];
  const charge: string[] = [];
  let before = "";
  for (let k = 0; k < problem.stages; k += 1) {
    const on: string[] = [];
    const first = problem.first[k] ?? 0;
    for (let j = first; j < first + (problem.count[k] ?? 0); j += 1) {
      const power = within(problem, k, problem.power[j] ?? 0);
      if (Number.isNaN(power)) continue;
      const name = `x${k}_${j - first}`;
      on.push(name);
      binaries.push(name);
      objective.push(`${((problem.fuel[j] ?? 0) * problem.stage) / 1000} ${name}`);
      charge.push(`${1000 * takes(problem, power)} ${name}`);
    }
    const rest = within(problem, k, problem.restPower[k] ?? Number.NaN);
    if (!Number.isNaN(rest)) {
      binaries.push(`r${k}`);
      charge.push(`${1000 * takes(problem, rest)} r${k}`);
    }
    rows.push(`one${k}: ${[...on, ...(Number.isNaN(rest) ? [] : [`r${k}`])].join(" + ")} = 1`);
    binaries.push(`s${k}`);
    objective.push(`${problem.startFuel / 1000} s${k}`);
    charge.push(`${(1000 * problem.startEnergy) / (210 * problem.source.charge)} s${k}`);
    rows.push(`start${k}: ${on.join(" + ")}${before} - s${k} <= 0`);
    before = on.map((name) => ` - ${name}`).join("");
  }
  rows.push(`charge: ${charge.join(" + ")} <= ${1000 * (problem.startSoc - problem.endSoc)}`);
  const sum = (terms: readonly string[]): string => terms.join("\n + ");
  const list = rows.map((row) => row.replaceAll("+ -", "- ").replaceAll(" + ", "\n + ")).join("\n");
  return `Minimize\n fuel: ${sum(objective)}\nSubject To\n${list}\nBinary\n${binaries.join("\n")}\nEnd\n`;
}

const INSTANCES = [
  { id: "compact", cycle: "udds", from: 20, to: 58, points: 8 },
  { id: "compact", cycle: "hwfet", from: 0, to: 30, points: 8 },
  { id: "van", cycle: "nycc", from: 145, to: 180, points: 8 },
] as const;

describe("dynamic programming against a mixed-integer programme solved by HiGHS", () => {
  it.each(INSTANCES)(
    "$id on $cycle from $from to $to s: equal within the stated grid error",
    async ({ id, cycle, from, to, points }) => {
      const problem = instance(id, cycle, from, to, points);
      const bound = boundOf(problem, 800);
      if (!bound) throw new Error("not cancelled");
      const highs = await loadHighs();
      const solved = highs.solve(programme(problem), { output_flag: false, mip_rel_gap: 1e-6 });
      expect(solved.Status).toBe("Optimal");
      const exact = solved.ObjectiveValue * 1000;
      expect(bound.path.starts).toBeGreaterThan(0);
      expect(Math.abs(bound.path.fuelEnergy - exact)).toBeLessThan(bound.gridError);
      expect(bound.gridError / exact).toBeLessThan(0.03);
      // Few points and a short drive leave a staircase of values, so that only a fine grid finds every step of it.
      const fine = boundOf(problem, 12_000);
      expect(Math.abs((fine?.path.fuelEnergy ?? 0) / exact - 1)).toBeLessThan(2e-3);
    },
  );
});
