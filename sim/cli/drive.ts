import type { CycleTrace } from "../../shared/cycle.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { simulate } from "../run/simulate.ts";
import type { Simulation } from "../run/simulation.ts";
import { type RunSummary, summarize } from "../run/summary.ts";
import { type Balance, balance } from "../study/balance.ts";
import { type Around, stopIfCancelled } from "./around.ts";
import { type Consumed, consumed } from "./consumed.ts";
import { cityTest, type PhaseFigures, phaseFigures } from "./phases.ts";
import type { Setup } from "./setup.ts";

/** The charge-balanced figures, as they stand in the summary file. */
export interface BalancedFigures extends Consumed {
  /** net battery energy over fuel energy of the run told, before the correction */
  readonly net_share: number;
  /** fuel energy for one unit of battery energy */
  readonly slope: number;
  readonly slope_source: Balance["slopeSource"];
  /** J, corrected */
  readonly fuel_energy_j: number;
  readonly balanced: boolean;
  /** why not; empty when balanced */
  readonly reason: string;
  readonly runs: number;
}

/** Figures of one drive as they stand in the summary file: the engine's summary and what was asked besides. */
export interface DriveSummary extends RunSummary {
  readonly balanced?: BalancedFigures;
  readonly phases?: readonly PhaseFigures[];
  /** the city test's weighted figure, raw and balanced */
  readonly city_test?: { readonly raw: Consumed; readonly balanced?: Consumed };
}

/** One drive, done. */
export interface Drive {
  readonly run: Simulation;
  readonly summary: DriveSummary;
}

/**
 * Drives a cycle, balanced if asked, and gathers the figures.
 * @param balanced repeat until the charge is balanced; the run kept is then the one nearest to balance
 * @throws InputError for bad options, Interrupted when the user stops it
 */
export function drive(setup: Setup, trace: CycleTrace, balanced: boolean, around: Around): Drive {
  const { vehicle, strategy, options } = setup;
  const what = `${balanced ? "balancing" : "driving"} ${trace.id}`;
  const progress = { report: (share: number) => around.progress(what, share), cancelled: around.cancelled };
  const done = balanced ? balance(vehicle, trace, strategy, options, undefined, progress) : null;
  const run = done?.run ?? simulate(vehicle, trace, strategy, options, progress);
  stopIfCancelled(around);
  const summary = summarize(run, vehicle, trace, strategy.id);
  const slope = done?.slope;
  const phases = phaseFigures(run.log, vehicle, trace.phases, slope);
  const city = cityTest(trace.id, vehicle, phases);
  return {
    run,
    summary: {
      ...summary,
      ...(done ? { balanced: balancedFigures(vehicle, done) } : {}),
      ...(phases.length > 0 ? { phases } : {}),
      ...(city ? { city_test: city } : {}),
    },
  };
}

function balancedFigures(vehicle: Vehicle, done: Balance): BalancedFigures {
  return {
    net_share: done.netShare,
    slope: done.slope,
    slope_source: done.slopeSource,
    fuel_energy_j: done.fuelEnergy,
    ...consumed(vehicle, done.fuelEnergy, done.run.b.travelled),
    balanced: done.balanced,
    reason: done.reason,
    runs: done.runs,
  };
}
