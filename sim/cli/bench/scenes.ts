import { spawnSync } from "node:child_process";
import { cycleById } from "../../../cycles/catalogue.ts";
import { rules } from "../../control/strategies/rules.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { consumption } from "../../run/fuel.ts";
import { limitsRun } from "../../run/limits-run.ts";
import { checkClosure, simulate } from "../../run/simulate.ts";
import { balance } from "../../study/balance.ts";
import { vehicleById } from "../../vehicle/presets/registry.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { withGriddedEngine } from "./gridded.ts";
import { measure, type Times, timesOf } from "./measure.ts";
import { bytesPerStep } from "./memory.ts";
import { measureOptimum, type OptimumTimes } from "./optimum.ts";
import { measureStudies, type StudyTimes } from "./studies.ts";

/** What the benchmark found. */
export interface BenchResult {
  readonly steps: number;
  readonly run_ms: Times;
  readonly run_ns_per_step: number;
  readonly gridded_ms: Times;
  readonly gridded_ns_per_step: number;
  readonly balance_ms: Times;
  readonly balance_runs: number;
  readonly limits_ms: Times;
  readonly start_ms: Times;
  readonly optimum: OptimumTimes;
  readonly studies: StudyTimes;
  readonly log_bytes_wltc: number;
  readonly heap_bytes_per_step: number;
  /** closure of the ledger and charge-balanced fuel, so that a fast wrong answer is seen */
  readonly check: {
    readonly closure_relative: number;
    readonly l_per_100km_balanced: number;
    readonly gridded_difference: number;
    readonly good: boolean;
  };
}

/** Charge-balanced L/100 km of the compact on the urban schedule between which the result is believed. */
const EXPECTED = [3.0, 3.8] as const;
/** Largest share by which the gridded engine's fuel may differ. */
const MOST_DIFFERENCE = 0.01;
/** Starts of the command line that are measured. */
const STARTS = 5;

/** The fixed scene: compact, rules, urban schedule. @param runs measured runs of each */
export async function measureScenes(runs: number, around: Around): Promise<BenchResult> {
  const compact = vehicleById("compact");
  const gridded = withGriddedEngine(compact);
  const udds = cycleById("udds");
  const once = (vehicle: Vehicle) => simulate(vehicle, udds, rules);
  const run_ms = measure("a run", runs, () => once(compact), around);
  const gridded_ms = measure("a run with an engine map", runs, () => once(gridded), around);
  const balance_ms = measure("a balance", runs, () => balance(compact, udds, rules), around);
  const limits_ms = measure("the limits", runs, () => limitsRun(compact, rules), around);
  const { ticks, p } = once(compact);
  const steps = ticks * p.stepsPerTick;
  return {
    steps,
    run_ms,
    run_ns_per_step: nanoseconds(run_ms, steps),
    gridded_ms,
    gridded_ns_per_step: nanoseconds(gridded_ms, steps),
    balance_ms,
    balance_runs: balance(compact, udds, rules).runs,
    limits_ms,
    start_ms: measureStart(around),
    optimum: measureOptimum(runs, run_ms, around),
    studies: await measureStudies(runs, run_ms, around),
    log_bytes_wltc: simulate(compact, cycleById("wltc-class3b"), rules).log.bytes,
    heap_bytes_per_step: await bytesPerStep(compact, udds, rules),
    check: checkResult(compact, gridded),
  };
}

const nanoseconds = (times: Times, steps: number): number => (times.median / steps) * 1e6;

function checkResult(compact: Vehicle, gridded: Vehicle): BenchResult["check"] {
  const udds = cycleById("udds");
  const { run, fuelEnergy } = balance(compact, udds, rules);
  const closure = checkClosure(run);
  const litres = consumption(compact.fuel, fuelEnergy, run.b.travelled).litresPer100Km;
  const other = balance(gridded, udds, rules).fuelEnergy;
  const difference = Math.abs(other / fuelEnergy - 1);
  const good = litres >= EXPECTED[0] && litres <= EXPECTED[1] && difference <= MOST_DIFFERENCE;
  return { closure_relative: closure, l_per_100km_balanced: litres, gridded_difference: difference, good };
}

function measureStart(around: Around): Times {
  const times: number[] = [];
  for (let i = -1; i < STARTS; i += 1) {
    stopIfCancelled(around);
    const began = performance.now();
    const done = spawnSync(process.execPath, [around.start, "--version"], { encoding: "utf8" });
    if (done.status !== 0) throw new Error(`the command line does not start: ${done.stderr}`);
    if (i >= 0) times.push(performance.now() - began);
  }
  return timesOf(times);
}
