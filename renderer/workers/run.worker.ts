import { expose, transfer } from "comlink";
import { strategyById } from "../../sim/control/strategies/registry.ts";
import { consumption } from "../../sim/run/fuel.ts";
import { limitsRun } from "../../sim/run/limits-run.ts";
import { regimes } from "../../sim/run/regimes.ts";
import { simulate } from "../../sim/run/simulate.ts";
import { summarize } from "../../sim/run/summary.ts";
import { balance } from "../../sim/study/balance.ts";
import { runJob } from "../../sim/study/compare/run-job.ts";
import { optimum } from "../../sim/study/optimum/optimum.ts";
import type { BoundReply, RunRequest, RunWorker } from "./contract.ts";

/** The least fuel on a cycle at equal charge, as plain data. */
function boundOf(
  { vehicle, cycle, options }: Omit<RunRequest, "strategy">,
  report: (share: number) => void,
): BoundReply {
  const { socTarget } = vehicle.battery;
  const run = { ...options, startSoc: options.startSoc ?? socTarget };
  const found = optimum(vehicle, cycle, { run }, { report });
  if (!found) throw new Error("cancelled");
  const { path, demand } = found;
  const used = consumption(vehicle.fuel, found.fuelEnergy, demand.distance);
  return {
    feasible: found.feasible,
    reason: found.reason,
    fuelEnergy: found.fuelEnergy,
    gridError: found.gridError,
    litresPer100Km: used.litresPer100Km,
    starts: found.starts,
    socSteps: found.grid.socSteps,
    unmet: found.unmet.length,
    time: Float64Array.from(path.soc, (_, i) => i * demand.stage),
    soc: path.soc,
  };
}

const worker: RunWorker = {
  run({ vehicle, cycle, strategy, options }: RunRequest, report) {
    const run = simulate(vehicle, cycle, strategyById(strategy), options, { report });
    const regime = regimes(run.log, run.p);
    const summary = summarize(run, vehicle, cycle, strategy, regime);
    const log = run.log.parts();
    const buffers = [log.columns, log.modes, log.masks, log.flows, regime].map((array) => array.buffer);
    return transfer({ log, regime, summary }, buffers);
  },
  balance({ vehicle, cycle, strategy, options }, report) {
    const found = balance(vehicle, cycle, strategyById(strategy), options, undefined, { report });
    const used = consumption(vehicle.fuel, found.fuelEnergy, found.run.b.travelled);
    return {
      balanced: found.balanced,
      reason: found.reason,
      fuelEnergy: found.fuelEnergy,
      litresPer100Km: used.litresPer100Km,
      mpg: used.mpg,
      co2PerKm: used.co2PerKm,
      netShare: found.netShare,
      slope: found.slope,
      runs: found.runs,
    };
  },
  compare: (job, report) => runJob(job, { report }),
  bound: boundOf,
  limits: ({ vehicle, strategy, options }) => limitsRun(vehicle, strategyById(strategy), options),
};

expose(worker);
