import type { Progress } from "../../run/simulate.ts";
import type { Simulation } from "../../run/simulation.ts";
import { distanceOf } from "../optimum/distance.ts";

/** How far a run is from the least fuel on the demand that it drove, at the charge at which it ended. */
export interface ComparedOptimum {
  /** least fuel, J */
  readonly energy_j: number;
  /** fuel of the run as driven over that, less 1 */
  readonly over: number;
  /** the same with the run's decisions counted by the optimum's own formulas */
  readonly over_quasi_static: number;
  /** stated error of the optimum's grid over its fuel */
  readonly grid_error: number;
}

/**
 * Distance of a run to the optimum (`distanceOf`), as figures of a row.
 * @returns null for a cold start, which the optimum does not know, and when cancelled
 */
export function comparedOptimum(
  run: Simulation,
  regeneration: boolean,
  progress: Progress = {},
): ComparedOptimum | null {
  if (run.settings.coldStart) return null;
  const distance = distanceOf(run, regeneration, undefined, progress);
  if (!distance) return null;
  return {
    energy_j: distance.forward.optimumEnergy,
    over: distance.forward.over,
    over_quasi_static: distance.quasiStatic.over,
    grid_error: distance.gridError,
  };
}
