import { type Prepared, prepare } from "../../sim/drivetrain/prepared.ts";
import { type RunSettings, runSettings } from "../../sim/options.ts";
import type { RunRequest } from "../workers/contract.ts";

/** Options of a run filled in, and the numbers that its time loop read. */
export interface PreparedRun {
  readonly settings: RunSettings;
  readonly p: Prepared;
}

const known = new WeakMap<RunRequest, PreparedRun>();

/** The engine's own numbers of a run, made once for each request. */
export function preparedRun(request: RunRequest): PreparedRun {
  const kept = known.get(request);
  if (kept) return kept;
  const { vehicle, options } = request;
  const settings = runSettings(options, {
    startSoc: vehicle.battery.socStart,
    auxiliaryPower: vehicle.auxiliary.power,
  });
  const made = { settings, p: prepare(vehicle, settings) };
  known.set(request, made);
  return made;
}
