import { realAt } from "../../../shared/at.ts";
import { kineticEnergy } from "../../run/ledger.ts";
import type { Progress } from "../../run/simulate.ts";
import type { Simulation } from "../../run/simulation.ts";
import { valueAt } from "./bound.ts";
import { drivenDecisions } from "./decisions.ts";
import { drivenDemand } from "./demand.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import { type Grid, type Optimum, optimumOf, STANDARD_GRID } from "./optimum.ts";

/** One line of the difference between a run and its quasi-static evaluation. */
export interface DistanceItem {
  readonly id: string;
  /** what it is, a few words */
  readonly title: string;
  /** J in the run, and by the quasi-static evaluation of the same decisions */
  readonly run: number;
  readonly quasiStatic: number;
}

/** Fuel of one way of counting, beside the least that was possible at the same charge. */
export interface Beside {
  /** J */
  readonly fuelEnergy: number;
  /** charge at the end */
  readonly endSoc: number;
  /** J, least fuel on the demand driven that ends at that charge */
  readonly optimumEnergy: number;
  /** fuel over the optimum's, less 1; zero when neither needs any */
  readonly over: number;
}

/** How far a run is from the least fuel on the demand that it actually drove. */
export interface Distance {
  /** the run as it was driven */
  readonly forward: Beside;
  /** its decisions counted by the optimum's own formulas */
  readonly quasiStatic: Beside;
  /** grid error of the optimum over its fuel */
  readonly gridError: number;
  /** the optimum that ends where the quasi-static evaluation does */
  readonly optimum: Optimum;
  readonly evaluation: Evaluation;
  /** where the run and its quasi-static evaluation differ */
  readonly items: readonly DistanceItem[];
}

/** Room between a charge asked and the ends of the window, so that a grid fits between. */
const ROOM = 1e-4;

const beside = (fuelEnergy: number, endSoc: number, optimumEnergy: number): Beside => ({
  fuelEnergy,
  endSoc,
  optimumEnergy,
  over: optimumEnergy > 0 ? fuelEnergy / optimumEnergy - 1 : fuelEnergy > 0 ? Number.POSITIVE_INFINITY : 0,
});

/** Line by line: the same energies by the run's books and by the evaluation. */
function itemsOf(run: Simulation, evaluation: Evaluation): DistanceItem[] {
  const { b, p, s } = run;
  const q = evaluation.lines;
  const kinetic = kineticEnergy(p, s) - run.stored.kinetic;
  const rows: readonly (readonly [string, string, number, number])[] = [
    ["running_fuel", "fuel, running", b.runningFuel, q.runningFuel],
    ["start_fuel", "fuel, starts", b.startFuel, q.startFuel],
    ["battery", "out of the battery's charge", b.source, q.source],
    ["engine", "engine heat and friction", b.engineHeat - b.startFuel + b.engineFriction, q.engineLoss],
    ["starts", "turning the engine up and down", b.engineMotoring, q.startEnergy],
    ["sun_machine", "sun machine and inverter", b.sunMachine, q.sunMachine],
    ["output_machine", "output machine and inverter", b.outputMachine, q.outputMachine],
    [
      "gears",
      "meshes, final drive, reduction",
      b.mesh + b.finalDrive + b.reduction,
      q.mesh + q.finalDrive + q.reduction,
    ],
    ["ohmic", "battery, ohmic", b.ohmic, q.ohmic],
    ["polarisation", "battery, RC pair", b.polarisation, 0],
    ["auxiliary", "auxiliaries", b.auxiliary, q.auxiliary],
    ["brake", "friction brakes", b.brake + b.contacts, q.brake],
    [
      "wheels",
      "road, height and motion",
      b.rolling + b.air + p.weight * b.height + kinetic,
      q.wheels + q.rotating,
    ],
  ];
  return rows.map(([id, title, driven, quasiStatic]) => ({ id, title, run: driven, quasiStatic }));
}

/**
 * Distance of a run to the least fuel: on the demand that it actually drove, at the charge at which it ended, as driven
 * and quasi-statically. The two ways of counting end at slightly different charges: the least fuel for the one is read
 * from the values of the other, from a start as much fuller as the end is emptier.
 * @param run a finished run of a warm vehicle
 * @param regeneration what its strategy's definition says
 * @param grid a coarser one is quicker, and its stated error larger
 * @returns null when cancelled
 */
export function distanceOf(
  run: Simulation,
  regeneration: boolean,
  grid: Grid = STANDARD_GRID,
  progress: Progress = {},
): Distance | null {
  const { p } = run;
  const demand = drivenDemand(p, run.log, grid.stage);
  const evaluation = evaluate(p, demand, drivenDecisions(run.log, demand, regeneration), p.socStart);
  const { beyond, soc } = evaluation;
  const within = (charge: number): number =>
    Math.min(p.socCeiling - ROOM, Math.max(p.socFloor + ROOM, charge));
  const quasiEnd = within(realAt(soc, demand.stages));
  const drivenEnd = within(run.s.soc);
  const same = optimumOf(p, demand, grid, p.socStart, quasiEnd, progress, beyond);
  if (!same) return null;
  const { values } = same;
  const shifted = valueAt(values, p.socStart + quasiEnd - drivenEnd);
  let driven = Math.max(0, same.fuelEnergy + shifted - valueAt(values, p.socStart));
  if (Number.isNaN(driven)) {
    const other = optimumOf(p, demand, grid, p.socStart, drivenEnd, progress, beyond);
    if (!other) return null;
    driven = other.fuelEnergy;
  }
  return {
    forward: beside(run.b.runningFuel + run.b.startFuel, run.s.soc, driven),
    quasiStatic: beside(evaluation.fuelEnergy, quasiEnd, same.fuelEnergy),
    gridError: same.fuelEnergy > 0 ? same.gridError / same.fuelEnergy : 0,
    optimum: same,
    evaluation,
    items: itemsOf(run, evaluation),
  };
}
