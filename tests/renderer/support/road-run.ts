import { cycleById } from "../../../cycles/catalogue.ts";
import type { Run } from "../../../renderer/state/run.ts";
import { strategyById } from "../../../sim/control/strategies/registry.ts";
import type { RunOptions } from "../../../sim/options.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { summarize } from "../../../sim/run/summary.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** A finished run as Road keeps it. */
export function roadRun(
  vehicleId: string,
  cycleId: string,
  options: RunOptions = {},
  strategy = "rules",
): Run {
  const vehicle = vehicleById(vehicleId);
  const cycle = cycleById(cycleId);
  const sim = simulate(vehicle, cycle, strategyById(strategy), options);
  const regime = regimes(sim.log, sim.p);
  return {
    id: 1,
    name: `${vehicleId} ${cycleId}`,
    request: { vehicle, cycle, strategy, options },
    log: sim.log,
    regime,
    summary: summarize(sim, vehicle, cycle, strategy, regime),
    bytes: 0,
  };
}
