import { expose, transfer } from "comlink";
import { consumption } from "../../sim/run/fuel.ts";
import { limitsRun } from "../../sim/run/limits-run.ts";
import { regimes } from "../../sim/run/regimes.ts";
import { simulate } from "../../sim/run/simulate.ts";
import { summarize } from "../../sim/run/summary.ts";
import { balance } from "../../sim/study/balance.ts";
import { boundSeries } from "../../sim/study/compare/bound-series.ts";
import { runJob } from "../../sim/study/compare/run-job.ts";
import { optimum } from "../../sim/study/optimum/optimum.ts";
import { regenerationCell } from "../../sim/study/regeneration/study.ts";
import { runSweepJob } from "../../sim/study/sweep/run-sweep-job.ts";
import type { BoundReply, RunRequest, RunWorker } from "./contract.ts";
import { lessonWork } from "./lesson-work.ts";
import { tryOwn } from "./own-trial.ts";
import { chosenIn, withStrategy } from "./strategy.ts";

/** The least fuel on a cycle at equal charge, as plain data. */
function boundOf(
  { vehicle, cycle, options }: Omit<RunRequest, "strategy" | "own">,
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
    soc: path.soc,
    ...boundSeries(found),
  };
}

const worker: RunWorker = {
  ...lessonWork,
  run: (request, report) =>
    withStrategy(chosenIn(request), (strategy) => {
      const { vehicle, cycle, options } = request;
      const run = simulate(vehicle, cycle, strategy, options, { report });
      const regime = regimes(run.log, run.p);
      const summary = summarize(run, vehicle, cycle, request.strategy, regime);
      const log = run.log.parts();
      const buffers = [log.columns, log.modes, log.masks, log.flows, regime].map((array) => array.buffer);
      return transfer({ log, regime, summary }, buffers);
    }),
  balance: (request, report) =>
    withStrategy(chosenIn(request), (strategy) => {
      const { vehicle, cycle, options } = request;
      const found = balance(vehicle, cycle, strategy, options, undefined, { report });
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
    }),
  compare: (job, report) => withStrategy(job.strategy, (strategy) => runJob(job, { report }, strategy)),
  sweep: (job, report) =>
    job.job
      ? withStrategy(job.job.strategy, (strategy) => runSweepJob(job, { report }, strategy))
      : Promise.resolve(runSweepJob(job)),
  brake: ({ plan, strategy, speed, rate, charge }) =>
    withStrategy(strategy, (ready) => regenerationCell(plan, ready, speed, rate, charge)),
  tryOwn,
  bound: boundOf,
  limits: (request) =>
    withStrategy(chosenIn(request), (strategy) => limitsRun(request.vehicle, strategy, request.options)),
};

expose(worker);
