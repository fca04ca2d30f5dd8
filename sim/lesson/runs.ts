import { cycleById } from "../../cycles/catalogue.ts";
import { strategyById } from "../control/strategies/registry.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import type { LogReader } from "../run/log.ts";
import { regimes } from "../run/regimes.ts";
import { simulate } from "../run/simulate.ts";
import { type RunSummary, summarize } from "../run/summary.ts";
import { type Balance, balance } from "../study/balance.ts";
import { type VehicleSpec, vehicleOf } from "./vehicle-spec.ts";

/** A run that a lesson asks for, all numbers settled. Plain data. */
export interface RunSpec {
  readonly vehicle: VehicleSpec;
  /** a cycle's id, or a manoeuvre's line */
  readonly cycle: string;
  readonly strategy: string;
  readonly options: RunOptions;
}

/** What a search for charge balance tells. */
export type BalanceFigures = Omit<Balance, "run"> & {
  /** m, of the run nearest to balance */
  readonly distance: number;
  /** J: fuel and net battery energy of that run */
  readonly fuel: number;
  readonly net: number;
};

/** What a lesson reads of a run. */
export interface RunFigures {
  readonly vehicle: Vehicle;
  readonly summary: RunSummary;
  readonly log: LogReader;
  /** index into REGIMES a row */
  readonly regime: Uint8Array;
  /** repeats the run until its charge is balanced; only when asked for */
  readonly balance: () => BalanceFigures;
}

/** Where runs come from: the engine, or a store that has them already. */
export type RunSource = (spec: RunSpec) => RunFigures;

/** Share of the fuel energy that comparisons leave unbalanced at most. */
const COMPARING_WINDOW = 0.001;

function drive(spec: RunSpec): RunFigures {
  const vehicle = vehicleOf(spec.vehicle);
  const cycle = cycleById(spec.cycle);
  const strategy = strategyById(spec.strategy);
  const run = simulate(vehicle, cycle, strategy, spec.options);
  const regime = regimes(run.log, run.p);
  let balanced: BalanceFigures | null = null;
  return {
    vehicle,
    summary: summarize(run, vehicle, cycle, strategy.id, regime),
    log: run.log,
    regime,
    balance: () => {
      if (balanced) return balanced;
      const { run: best, ...rest } = balance(vehicle, cycle, strategy, spec.options, COMPARING_WINDOW);
      const { b } = best;
      balanced = { ...rest, distance: b.travelled, fuel: b.runningFuel + b.startFuel, net: b.source };
      return balanced;
    },
  };
}

/** Makes runs with the engine, each only once. */
export function engineRuns(): RunSource {
  const known = new Map<string, RunFigures>();
  return (spec) => {
    const name = JSON.stringify(spec);
    const kept = known.get(name);
    if (kept) return kept;
    const made = drive(spec);
    known.set(name, made);
    return made;
  };
}
