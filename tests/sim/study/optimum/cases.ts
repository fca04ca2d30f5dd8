import { cycleById } from "../../../../cycles/catalogue.ts";
import type { Progress } from "../../../../sim/run/simulate.ts";
import { type Optimum, type OptimumOptions, optimum } from "../../../../sim/study/optimum/optimum.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

/** The optimum of a preset on a cycle at the charge to be kept, which nobody cancels. */
export function optimumFor(id: string, cycle: string, options: OptimumOptions = {}): Optimum {
  const vehicle = vehicleById(id);
  const run = { startSoc: vehicle.battery.socTarget, ...options.run };
  return notCancelled(optimum(vehicle, cycleById(cycle), { ...options, run }));
}

/** What only a cancelled work leaves out. */
export function notCancelled<T>(value: T | null): T {
  if (value === null) throw new Error("cancelled");
  return value;
}

/** Progress that cancels after so many looks. */
export function cancelAfter(looks: number): Progress {
  let seen = 0;
  return {
    cancelled: () => {
      seen += 1;
      return seen > looks;
    },
  };
}
