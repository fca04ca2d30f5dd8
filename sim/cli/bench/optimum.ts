import { cycleById } from "../../../cycles/catalogue.ts";
import { equivalent } from "../../control/strategies/equivalent.ts";
import { consumption } from "../../run/fuel.ts";
import { simulate } from "../../run/simulate.ts";
import { optimum } from "../../study/optimum/optimum.ts";
import { vehicleById } from "../../vehicle/presets/registry.ts";
import type { Around } from "../around.ts";
import { measure, type Times } from "./measure.ts";

/** What is asked of the times: an optimum, ms, and an equivalent-consumption run over a rules run. */
export const OPTIMUM_TARGETS = { optimum: 600, equivalent: 5 } as const;

/** Times of the least fuel and of least equivalent consumption, compact on the urban schedule. */
export interface OptimumTimes {
  /** 201 charges × 60 points × on/off, with its rough look and its coarser grid */
  readonly optimum_ms: Times;
  readonly equivalent_ms: Times;
  /** equivalent-consumption run over rules run, by their medians */
  readonly equivalent_over_rules: number;
  /** so that a fast wrong answer is seen */
  readonly l_per_100km: number;
  readonly grid_error_share: number;
}

/** @param rules times of a rules run */
export function measureOptimum(runs: number, rules: Times, around: Around): OptimumTimes {
  const compact = vehicleById("compact");
  const udds = cycleById("udds");
  const find = () => optimum(compact, udds);
  const optimum_ms = measure("an optimum", runs, find, around);
  const equivalent_ms = measure(
    "least equivalent consumption",
    runs,
    () => simulate(compact, udds, equivalent),
    around,
  );
  const found = find();
  const fuel = found?.fuelEnergy ?? Number.NaN;
  return {
    optimum_ms,
    equivalent_ms,
    equivalent_over_rules: equivalent_ms.median / rules.median,
    l_per_100km: consumption(compact.fuel, fuel, found?.demand.distance ?? 0).litresPer100Km,
    grid_error_share: (found?.gridError ?? Number.NaN) / fuel,
  };
}
