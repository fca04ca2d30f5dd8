import { realAt } from "../../../shared/at.ts";
import type { Progress } from "../../run/simulate.ts";
import { openAt } from "./battery.ts";
import { thinned } from "./make-problem.ts";
import { followPolicy, type Path } from "./path.ts";
import type { Problem, Window } from "./problem.ts";
import { read, solve, type Values } from "./solve.ts";

/** The least fuel of a problem on a grid, with its error. */
export interface Bound {
  readonly values: Values;
  readonly path: Path;
  /** J, by the values, which interpolate */
  readonly valueEnergy: number;
  /** J, of the path on a grid twice as coarse in charge and points */
  readonly coarseEnergy: number;
  /**
   * J: twice the greatest of three differences: path against the coarser grid's, value against the coarser grid's, and
   * value against path. Twice, because on/off makes the values kinked, so that the error may fall more slowly than in
   * proportion to the grid: a safety factor between the 1.25 and 3 of Roache, J. Fluids Eng. 116, 1994 (from memory).
   */
  readonly gridError: number;
}

/** Factor from the difference of two grids to the error that is stated. */
const SAFETY = 2;

/** Grid of the first look, which finds where the charge goes. */
const LOOK = { steps: 60, every: 3 };

/** Room on either side of the first look's charges: share of their span, and J of battery energy at least. */
const ROOM = { share: 0.35, energy: 250_000 };

/** Grid intervals next to an edge of the window that the path may not come into, unless it is the battery's own. */
const CLEAR = 2;

/** Most times that the window is widened. */
const WIDENINGS = 4;

/** Progress of a part of the work. */
const part = (progress: Progress, from: number, to: number): Progress => ({
  ...progress,
  report: (share) => progress.report?.(from + (to - from) * share),
});

/** The battery's whole window. */
const wholeWindow = ({ source }: Problem): Window => ({ low: source.socFloor, high: source.socCeiling });

/** Span of a path's charges with room on both sides, inside the battery's window. */
function around(problem: Problem, path: Path, times: number): Window {
  const { source } = problem;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < path.soc.length; k += 1) {
    low = Math.min(low, realAt(path.soc, k));
    high = Math.max(high, realAt(path.soc, k));
  }
  const least = ROOM.energy / (openAt(source, 0.5 * (low + high)) * source.charge);
  const room = times * (ROOM.share * (high - low) + least);
  return { low: Math.max(source.socFloor, low - room), high: Math.min(source.socCeiling, high + room) };
}

/** True when a path comes near an edge of its window that is not the battery's own. */
function touches({ source }: Problem, path: Path, window: Window, steps: number): boolean {
  const clear = (CLEAR * (window.high - window.low)) / steps;
  const low = window.low > source.socFloor ? window.low + clear : Number.NEGATIVE_INFINITY;
  const high = window.high < source.socCeiling ? window.high - clear : Number.POSITIVE_INFINITY;
  return path.soc.some((soc) => soc < low || soc > high);
}

interface Solved {
  readonly values: Values;
  readonly path: Path;
}

function attempt(problem: Problem, steps: number, window: Window, progress: Progress): Solved | null {
  const values = solve(problem, steps, window, progress);
  return values && { values, path: followPolicy(values) };
}

/** Least fuel by the values from a charge at the problem's start, J; not a number off the grid. */
export function valueAt({ problem, lowOn, lowOff, on, off, high, steps }: Values, soc: number): number {
  const low = realAt(problem.startOn ? lowOn : lowOff, 0);
  if (soc > high) return Number.NaN;
  return read(problem.startOn ? on : off, 0, steps, ((soc - low) * steps) / (high - low));
}

/**
 * Least fuel of a problem: a rough look over the battery's whole window finds where the charge goes, the grid is laid
 * there, and laid wider when the path comes near its edge; then once more on a grid twice as coarse, for the error.
 * @param steps grid intervals of charge
 * @returns null when cancelled
 */
export function boundOf(problem: Problem, steps: number, progress: Progress = {}): Bound | null {
  const whole = wholeWindow(problem);
  const rough = thinned(problem, LOOK.every);
  const look = attempt(rough, Math.min(LOOK.steps, steps), whole, part(progress, 0, 0.1));
  if (!look) return null;
  let window = look.path.feasible ? around(problem, look.path, 1) : whole;
  let fine = attempt(problem, steps, window, part(progress, 0.1, 0.8));
  for (let i = 1; fine && i <= WIDENINGS; i += 1) {
    if (fine.path.feasible && !touches(problem, fine.path, window, steps)) break;
    window = fine.path.feasible ? around(problem, fine.path, 2 ** i) : whole;
    fine = attempt(problem, steps, window, part(progress, 0.1, 0.8));
  }
  if (!fine) return null;
  const coarse = attempt(thinned(problem, 2), Math.floor(steps / 2), window, part(progress, 0.8, 1));
  return coarse && compare(fine, coarse);
}

function compare(fine: Solved, coarse: Solved): Bound {
  const { startSoc } = fine.values.problem;
  const valueEnergy = valueAt(fine.values, startSoc);
  const { fuelEnergy } = fine.path;
  const coarseEnergy = coarse.path.fuelEnergy;
  const difference = Math.max(
    Math.abs(coarseEnergy - fuelEnergy),
    Math.abs(valueAt(coarse.values, startSoc) - valueEnergy),
    Math.abs(valueEnergy - fuelEnergy),
  );
  // A coarser grid that finds no way says nothing of the error, so that no error is known.
  const gridError = Number.isNaN(difference) ? Number.POSITIVE_INFINITY : SAFETY * difference;
  return { values: fine.values, path: fine.path, valueEnergy, coarseEnergy, gridError };
}
