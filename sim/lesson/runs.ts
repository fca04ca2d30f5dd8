import { cycleById } from "../../cycles/catalogue.ts";
import { strategyById } from "../control/strategies/registry.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import type { LogParts, LogReader } from "../run/log.ts";
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
  /** the same log as buffers, to be copied to another thread */
  readonly parts: () => LogParts;
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
    parts: () => run.log.parts(),
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

/**
 * Makes runs with the engine and keeps the ones last asked for, so that a long class or an evening of writing fills no
 * memory.
 * @param most runs kept, at least 1
 * @param onRun hears of each run before it is made
 */
export function recentRuns(most: number, onRun: (spec: RunSpec) => void = () => undefined): RunSource {
  const kept = new Map<string, RunFigures>();
  return (spec) => {
    const name = JSON.stringify(spec);
    const found = kept.get(name);
    if (!found) onRun(spec);
    const figures = found ?? drive(spec);
    // The newest stands last.
    kept.delete(name);
    kept.set(name, figures);
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break;
      kept.delete(oldest);
    }
    return figures;
  };
}
