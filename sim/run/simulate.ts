import { at } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { CycleDriver } from "../control/driver.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { CONTROL_PERIOD } from "../settings.ts";
import { turnedOver } from "./books.ts";
import { ledgerClosure, readLedger } from "./ledger.ts";
import { Simulation } from "./simulation.ts";

/** Seen by long work: how far it is, and whether to stop. */
export interface Progress {
  /** Called now and then with the share done, 0–1. */
  readonly report?: (share: number) => void;
  /** Asked now and then; true ends the run early with what there is so far. */
  readonly cancelled?: () => boolean;
}

/** Largest residual of the energy ledger over the energy turned over. */
export const CLOSURE_LIMIT = 1e-9;

/** Control periods between two calls of the progress. */
const REPORT_EVERY = 2000;

/**
 * Runs a vehicle over a cycle.
 * @returns the simulation at its end: log, books and state
 * @throws InputError for bad options; Error when the ledger does not close (a fault of the engine, never of the user)
 */
export function simulate(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions = {},
  progress: Progress = {},
): Simulation {
  const duration = at(cycle.time, cycle.time.length - 1);
  const ticks = Math.ceil(duration / CONTROL_PERIOD - 1e-6);
  const perTick = options.logEvery === "step" ? Math.round(CONTROL_PERIOD / (options.step ?? 0.01)) : 1;
  const run = new Simulation(vehicle, new CycleDriver(cycle), strategy, options, ticks * perTick + 1);
  for (let i = 0; i < ticks; i += 1) {
    if (i % REPORT_EVERY === 0 && i > 0) {
      progress.report?.(i / ticks);
      if (progress.cancelled?.()) break;
    }
    run.tick();
  }
  checkClosure(run);
  return run;
}

/** Fails loudly when a run's energy does not add up. */
export function checkClosure(run: Simulation): number {
  const values = readLedger(run.p, run.s, run.b, run.stored);
  const closure = ledgerClosure(values, turnedOver(run.b));
  if (!(closure <= CLOSURE_LIMIT)) {
    throw new Error(
      `the energy ledger does not close: ${closure} of the energy turned over, at most ${CLOSURE_LIMIT}`,
    );
  }
  return closure;
}
