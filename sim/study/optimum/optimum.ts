import { realAt } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import { type Prepared, prepare } from "../../drivetrain/prepared.ts";
import { type RunOptions, runSettings } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { Progress } from "../../run/simulate.ts";
import { type Actions, stageActions } from "./actions.ts";
import { sourceOf } from "./battery.ts";
import { cycleDemand, type Demand } from "./demand.ts";
import type { Beyond } from "./evaluate.ts";
import { followPolicy, type Path } from "./path.ts";
import type { Problem, Window } from "./problem.ts";
import { solve, type Values } from "./solve.ts";
import { startCost } from "../../control/start-cost.ts";

/** How finely the optimum is computed. */
export interface Grid {
  /** length of a stage, s */
  readonly stage: number;
  /** grid points of charge less one */
  readonly socSteps: number;
  /** most engine points a stage, of the Pareto set of fuel against battery power */
  readonly points: number;
  /** multiplies the engine speeds that the Pareto set is found from */
  readonly speeds: number;
}

/** The grid unless something else is asked: a second, 201 charges, 60 points. */
export const STANDARD_GRID: Grid = { stage: 1, socSteps: 200, points: 60, speeds: 1 };

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
  /** J: difference from the same on a grid twice as coarse in charge and points, or from the values' own figure if that is more */
  readonly gridError: number;
  /** J: least fuel by the values themselves, which interpolate */
  readonly valueEnergy: number;
  /** J: the same path's fuel on the coarser grid */
  readonly coarseEnergy: number;
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

/** Grid of the first look, which finds where the charge goes. */
const LOOK = { steps: 60, every: 3 };

/** Room on either side of the first look's charges: share of their span, and J of battery energy at least. */
const ROOM = { share: 0.35, energy: 250_000 };

/** Grid intervals next to an edge of the window that the path may not come into, unless it is the battery's own. */
const CLEAR = 2;

/** Most times that the window is widened. */
const WIDENINGS = 4;

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

/** A whole number of a grid within its range. @throws InputError */
function checked(name: string, value: number, least: number, most: number): number {
  if (Number.isFinite(value) && value >= least && value <= most) return value;
  throw new InputError({
    what: "out of range",
    where: `optimum ${name}`,
    value: String(value),
    accepted: `${least} … ${most}`,
  });
}

function checkGrid(grid: Partial<Grid>): Grid {
  const full = { ...STANDARD_GRID, ...grid };
  return {
    stage: checked("stage", full.stage, 0.1, 10),
    socSteps: Math.round(checked("socSteps", full.socSteps, 8, 4000)),
    points: Math.round(checked("points", full.points, 4, 1000)),
    speeds: Math.round(checked("speeds", full.speeds, 1, 8)),
  };
}

/** Every n-th point of each stage, the first and the last always kept: a coarser set of actions. */
export function thin(actions: Actions, every: number): Actions {
  const stages = actions.first.length;
  const first = new Int32Array(stages);
  const count = new Int32Array(stages);
  const kept: number[] = [];
  for (let k = 0; k < stages; k += 1) {
    const from = actions.first[k] ?? 0;
    const size = actions.count[k] ?? 0;
    if (k > 0 && from <= (actions.first[k - 1] ?? 0) && size > 0) {
      const same = actions.first.indexOf(from);
      if (same < k) {
        first[k] = first[same] ?? 0;
        count[k] = count[same] ?? 0;
        continue;
      }
    }
    first[k] = kept.length;
    for (let i = 0; i < size; i += 1) {
      if (i % every === 0 || i === size - 1) kept.push(from + i);
    }
    count[k] = kept.length - (first[k] ?? 0);
  }
  const pick = (list: Float64Array): Float64Array => Float64Array.from(kept, (i) => realAt(list, i));
  return {
    ...actions,
    first,
    count,
    power: pick(actions.power),
    fuel: pick(actions.fuel),
    speed: pick(actions.speed),
    torque: pick(actions.torque),
  };
}

/** The problem of a vehicle's actions. */
export function problemOf(
  p: Prepared,
  demand: Demand,
  actions: Actions,
  startSoc: number,
  endSoc: number,
): Problem {
  const cost = startCost(p);
  return {
    stages: demand.stages,
    stage: demand.stage,
    first: actions.first,
    count: actions.count,
    power: actions.power,
    fuel: actions.fuel,
    restPower: actions.restPower,
    shed: actions.shed,
    overdraw: actions.overdraw,
    startFuel: cost.fuel,
    startEnergy: cost.energy,
    source: sourceOf(p),
    startSoc,
    endSoc,
    startOn: false,
  };
}

/** Span of charges that a first look went through, with room, inside the battery's window. */
function roomAround(p: Prepared, path: Path, share: number): Window {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < path.soc.length; k += 1) {
    low = Math.min(low, realAt(path.soc, k));
    high = Math.max(high, realAt(path.soc, k));
  }
  const volts = realAt(p.openCircuit, Math.floor(0.5 * p.socSteps));
  const room = share * (high - low) + ((share / ROOM.share) * ROOM.energy) / (volts * p.charge);
  return { low: Math.max(p.socFloor, low - room), high: Math.min(p.socCeiling, high + room) };
}

/** True when a path comes near an edge of its window that is not the battery's own. */
function touches(p: Prepared, path: Path, window: Window, steps: number): boolean {
  const clear = (CLEAR * (window.high - window.low)) / steps;
  const low = window.low > p.socFloor ? window.low + clear : Number.NEGATIVE_INFINITY;
  const high = window.high < p.socCeiling ? window.high - clear : Number.POSITIVE_INFINITY;
  return path.soc.some((soc) => soc < low || soc > high);
}

/** A solution on one grid. */
interface Solved {
  readonly values: Values;
  readonly path: Path;
}

function attempt(problem: Problem, steps: number, window: Window, progress: Progress): Solved | null {
  const values = solve(problem, steps, window, progress);
  return values && { values, path: followPolicy(values) };
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
  const whole = { low: p.socFloor, high: p.socCeiling };
  const problem = problemOf(p, demand, actions, startSoc, endSoc);
  const rough = problemOf(p, demand, thin(actions, LOOK.every), startSoc, endSoc);
  const part = (from: number, to: number): Progress => ({
    ...progress,
    report: (share) => progress.report?.(from + (to - from) * share),
  });
  const look = attempt(rough, Math.min(LOOK.steps, grid.socSteps), whole, part(0.05, 0.15));
  if (!look) return null;
  let window = look.path.feasible ? roomAround(p, look.path, ROOM.share) : whole;
  let fine = attempt(problem, grid.socSteps, window, part(0.15, 0.8));
  for (let i = 1; fine && i <= WIDENINGS; i += 1) {
    if (fine.path.feasible && !touches(p, fine.path, window, grid.socSteps)) break;
    window = fine.path.feasible ? roomAround(p, fine.path, ROOM.share * 2 ** i) : whole;
    fine = attempt(problem, grid.socSteps, window, part(0.15, 0.8));
  }
  if (!fine) return null;
  const half = problemOf(p, demand, thin(actions, 2), startSoc, endSoc);
  const coarse = attempt(half, Math.floor(grid.socSteps / 2), window, part(0.8, 1));
  if (!coarse) return null;
  return conclude(demand, grid, actions, fine, coarse, startSoc, endSoc);
}

/** Least fuel by the values at the start. */
function valueAtStart({ problem, lowOn, lowOff, on, off, high, steps }: Values): number {
  const low = realAt(problem.startOn ? lowOn : lowOff, 0);
  const values = problem.startOn ? on : off;
  const place = ((problem.startSoc - low) * steps) / (high - low);
  const cell = Math.min(steps - 1, Math.max(0, Math.floor(place)));
  const left = realAt(values, cell);
  return left + (realAt(values, cell + 1) - left) * (place - cell);
}

function conclude(
  demand: Demand,
  grid: Grid,
  actions: Actions,
  fine: Solved,
  coarse: Solved,
  startSoc: number,
  endSoc: number,
): Optimum {
  const { values, path } = fine;
  const n = demand.stages;
  const engineSpeed = new Float64Array(n);
  const engineTorque = new Float64Array(n);
  const unmet: Unmet[] = [];
  for (let k = 0; k < n; k += 1) {
    const missing = realAt(actions.unmet, k);
    if (missing > 0) unmet.push({ time: k * demand.stage, power: missing });
    const a = path.point[k] ?? -1;
    if (a < 0) continue;
    const s = realAt(path.share, k);
    const mixed = (list: Float64Array): number =>
      realAt(list, a) * (1 - s) + (s > 0 ? realAt(list, a - 1) * s : 0);
    engineSpeed[k] = mixed(actions.speed);
    engineTorque[k] = mixed(actions.torque);
  }
  const valueEnergy = valueAtStart(values);
  const coarseEnergy = coarse.path.fuelEnergy;
  const error = Math.max(
    Math.abs(coarseEnergy - path.fuelEnergy),
    Math.abs(valueEnergy - path.fuelEnergy),
    Math.abs(valueAtStart(coarse.values) - valueEnergy),
  );
  return {
    demand,
    grid,
    startSoc,
    endSoc,
    fuelEnergy: path.fuelEnergy,
    gridError: error,
    valueEnergy,
    coarseEnergy,
    starts: path.starts,
    path,
    engineSpeed,
    engineTorque,
    actions,
    values,
    unmet,
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
  const grid = checkGrid(options.grid ?? {});
  const p = prepareFor(vehicle, options.run ?? {});
  const demand = "phases" in what ? cycleDemand(p, what, grid.stage) : what;
  const endSoc = checked("endSoc", options.endSoc ?? p.socStart, p.socFloor, p.socCeiling);
  checked("startSoc", p.socStart, p.socFloor, p.socCeiling);
  return optimumOf(p, demand, grid, p.socStart, endSoc, progress);
}
