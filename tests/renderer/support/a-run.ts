import { cycleById } from "../../../cycles/catalogue.ts";
import type { Run } from "../../../renderer/state/run.ts";
import { strategyById } from "../../../sim/control/strategies/registry.ts";
import type { RunOptions } from "../../../sim/options.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { summarize } from "../../../sim/run/summary.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** A run as Road keeps it, made without a worker. */
export function aRun(
  cycleId: string,
  vehicleId = "compact",
  strategy = "rules",
  options: RunOptions = {},
): Run {
  const vehicle = vehicleById(vehicleId);
  const cycle = cycleById(cycleId);
  const made = simulate(vehicle, cycle, strategyById(strategy), options);
  const regime = regimes(made.log, made.p);
  return {
    id: 1,
    name: cycleId,
    request: { vehicle, cycle, strategy, options },
    log: made.log,
    regime,
    summary: summarize(made, vehicle, cycle, strategy, regime),
    bytes: made.log.bytes,
  };
}
