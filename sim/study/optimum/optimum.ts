import { realAt } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import { type Prepared, prepare } from "../../drivetrain/prepared.ts";
import { type RunOptions, runSettings } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { Progress } from "../../run/simulate.ts";
import { type Actions, stageActions } from "./actions.ts";
import { type Bound, boundOf } from "./bound.ts";
import { cycleDemand, type Demand } from "./demand.ts";
import type { Beyond } from "./evaluate.ts";
import { checkRange, fillGrid, type Grid } from "./grid.ts";
import { makeProblem } from "./make-problem.ts";
import type { Path } from "./path.ts";
import type { Values } from "./solve.ts";

export { type Grid, STANDARD_GRID } from "./grid.ts";

/** What may be asked of an optimum. */
export interface OptimumOptions {
  /** circumstances of the drive; a cold start is refused: the optimum's engine is warm */
  readonly run?: RunOptions;
  /** charge at the end; default the charge at the start */
  readonly endSoc?: number;
  readonly grid?: Partial<Grid>;
}

/** A second that the vehicle cannot do: it is taken at its limit. */
export interface Unmet {
  /** s, start of the stage */
  readonly time: number;
  /** wheel power that is missing, W */
  readonly power: number;
}

/** The least fuel with which a demand can be driven, and how. */
export interface Optimum {
  readonly demand: Demand;
  readonly grid: Grid;
  readonly startSoc: number;
  readonly endSoc: number;
  /** J, starts included: what the path takes, which ends at the charge asked */
  readonly fuelEnergy: number;
  /** J: stated error of the grid (`Bound.gridError`) */
  readonly gridError: number;
  readonly starts: number;
  readonly path: Path;
  /** engine speed, rad/s, and brake torque, N·m, a stage; zero at rest */
  readonly engineSpeed: Float64Array;
  readonly engineTorque: Float64Array;
  readonly actions: Actions;
  readonly values: Values;
  readonly unmet: readonly Unmet[];
  /** false when no way of driving ends at the charge asked */
  readonly feasible: boolean;
  /** why not; empty when feasible */
  readonly reason: string;
}

/** Numbers of a vehicle and run options for quasi-static work. @throws InputError for bad options or a cold start */
export function prepareFor(vehicle: Vehicle, options: RunOptions): Prepared {
  if (options.coldStart) {
    throw new InputError({
      what: "the optimum is computed for a warm engine",
      where: "run option coldStart",
      value: "true",
      accepted: "no cold start",
    });
  }
  const settings = runSettings(options, {
    startSoc: vehicle.battery.socStart,
    auxiliaryPower: vehicle.auxiliary.power,
  });
  return prepare(vehicle, settings);
}

/**
 * The least fuel on a demand, by dynamic programming: see `optimum`.
 * @param allowed stages in which decisions to be compared with pass the battery's limit: the optimum may do so too
 * @returns null when cancelled
 */
export function optimumOf(
  p: Prepared,
  demand: Demand,
  grid: Grid,
  startSoc: number,
  endSoc: number,
  progress: Progress = {},
  allowed: readonly Beyond[] = [],
): Optimum | null {
  const actions = stageActions(p, demand, grid.points, Math.min(startSoc, p.socTarget), grid.speeds);
  for (const { time, what, power } of allowed) {
    const k = Math.round(time / demand.stage);
    if (what === "battery-discharge") actions.overdraw[k] = Math.max(power, realAt(actions.overdraw, k));
  }
  const bound = boundOf(makeProblem(p, demand, actions, startSoc, endSoc), grid.socSteps, progress);
  return bound && conclude(demand, grid, actions, bound, startSoc, endSoc);
}

/** Engine speed or torque of each stage on a path, zero at rest. */
function alongPath(path: Path, list: Float64Array): Float64Array {
  return Float64Array.from(path.point, (a, k) => {
    if (a < 0) return 0;
    const s = realAt(path.share, k);
    return realAt(list, a) * (1 - s) + (s > 0 ? realAt(list, a - 1) * s : 0);
  });
}

function conclude(
  demand: Demand,
  grid: Grid,
  actions: Actions,
  { values, path, gridError }: Bound,
  startSoc: number,
  endSoc: number,
): Optimum {
  const unmet = Array.from(actions.unmet, (power, k) => ({ time: k * demand.stage, power }));
  return {
    demand,
    grid,
    startSoc,
    endSoc,
    fuelEnergy: path.fuelEnergy,
    gridError,
    starts: path.starts,
    path,
    engineSpeed: alongPath(path, actions.speed),
    engineTorque: alongPath(path, actions.torque),
    actions,
    values,
    unmet: unmet.filter(({ power }) => power > 0),
    feasible: path.feasible,
    reason: path.feasible ? "" : "no way of driving this demand ends at the charge asked",
  };
}

/**
 * The least fuel with which a vehicle can drive a demand and end at a charge, by dynamic programming over charge ×
 * engine on/off in equal stages: a bound that no strategy passes on the same demand, quasi-statically, by more than the
 * grid error. Counted: engine map, machines, gears, battery's ohmic loss, auxiliaries, start cost, and every limit of
 * engine, machines, battery and axle. Left out: engine inertia and lags within the running engine, the RC pair, least
 * on and off times.
 * @param what a cycle, followed exactly, or a demand (such as `drivenDemand` of a run)
 * @returns null when cancelled
 * @throws InputError for options or a grid out of range
 */
export function optimum(
  vehicle: Vehicle,
  what: CycleTrace | Demand,
  options: OptimumOptions = {},
  progress: Progress = {},
): Optimum | null {
  const grid = fillGrid(options.grid ?? {});
  const p = prepareFor(vehicle, options.run ?? {});
  const demand = "phases" in what ? cycleDemand(p, what, grid.stage) : what;
  checkRange("startSoc", p.socStart, p.socFloor, p.socCeiling);
  const endSoc = checkRange("endSoc", options.endSoc ?? p.socStart, p.socFloor, p.socCeiling);
  return optimumOf(p, demand, grid, p.socStart, endSoc, progress);
}
