import { InputError } from "../../shared/errors.ts";
import { OwnStrategyError } from "../../sim/control/own/fault.ts";
import { loadOwnStrategies } from "../../sim/control/own/load.ts";
import { prepare } from "../../sim/drivetrain/prepared.ts";
import { runSettings } from "../../sim/options.ts";
import { regimes } from "../../sim/run/regimes.ts";
import { simulate } from "../../sim/run/simulate.ts";
import { type RunSummary, summarize } from "../../sim/run/summary.ts";
import type { OwnTrial, OwnTrialReply } from "./contract.ts";
import { OWN_SEED, withStrategy } from "./strategy.ts";

async function read({ own, vehicle, options }: OwnTrial): Promise<void> {
  const { socStart } = vehicle.battery;
  const settings = runSettings(options, { startSoc: socStart, auxiliaryPower: vehicle.auxiliary.power });
  const sandbox = await loadOwnStrategies();
  sandbox.check({ name: own.title, text: own.text, seed: OWN_SEED }, prepare(vehicle, settings));
}

function drive(
  { own, vehicle, cycle, options }: OwnTrial,
  report: (share: number) => void,
): Promise<RunSummary> | null {
  if (!cycle) return null;
  return withStrategy({ kind: "own", ...own }, (strategy) => {
    const run = simulate(vehicle, cycle, strategy, options, { report });
    return summarize(run, vehicle, cycle, own.title, regimes(run.log, run.p));
  });
}

/**
 * Reads an own text and, where there is a cycle, drives it once as it is. What is wrong with the text comes back as an
 * answer, for an error loses its place on the way between threads.
 */
export async function tryOwn(trial: OwnTrial, report: (share: number) => void): Promise<OwnTrialReply> {
  try {
    await read(trial);
    return { ok: true, summary: await drive(trial, report) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const fault = error instanceof OwnStrategyError ? error.fault : null;
    return { ok: false, fault, message: error.message };
  }
}
