import type { CycleTrace } from "../../shared/cycle.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { type Progress, simulate } from "../run/simulate.ts";
import type { Simulation } from "../run/simulation.ts";
import { BALANCE_WINDOW, type Balance, whyNotBalanced } from "./balanced.ts";

/** A charge balance found by the price of battery energy. */
export interface FactorBalance extends Balance {
  /** fuel for battery energy, 1, of the run nearest to balance */
  readonly factor: number;
}

/** Prices between which the balancing one is looked for: the parameter's own range. */
const RANGE = [0.5, 8] as const;

/** First step away from the vehicle's own price. */
const FIRST_STEP = 0.1;

/** Most runs; and the width of prices at which the charge jumps instead of being balanced. */
const MOST_RUNS = 18;
const NARROW = 1e-5;

/** What one run tells the search. */
interface Point {
  readonly factor: number;
  /** J, positive when the battery gave; and fuel, J */
  readonly net: number;
  readonly fuel: number;
}

/** The runs of one search; only the one nearest to balance is kept whole. */
class Search {
  readonly points: Point[] = [];
  run: Simulation;
  best: Point;
  /** greatest price that still discharges, least that charges */
  low = Number.NEGATIVE_INFINITY;
  high = Number.POSITIVE_INFINITY;

  constructor(
    private readonly drive: (factor: number) => Simulation,
    first: number,
  ) {
    this.run = drive(first);
    this.best = this.note(first, this.run);
  }

  private note(factor: number, run: Simulation): Point {
    const point = { factor, net: run.b.source, fuel: run.b.runningFuel + run.b.startFuel };
    this.points.push(point);
    if (point.net > 0) this.low = Math.max(this.low, factor);
    else this.high = Math.min(this.high, factor);
    return point;
  }

  attempt(factor: number): void {
    const run = this.drive(factor);
    const point = this.note(factor, run);
    if (Math.abs(point.net) >= Math.abs(this.best.net)) return;
    this.best = point;
    this.run = run;
  }

  /** Net battery energy over fuel energy of the best run. */
  get share(): number {
    return this.best.net / Math.max(1, this.best.fuel);
  }

  /** Next price: outward in growing steps until two prices straddle the balance, then between them. */
  next(): number {
    const { low, high, points } = this;
    if (low === Number.NEGATIVE_INFINITY) return high - FIRST_STEP * 2 ** (points.length - 1);
    if (high === Number.POSITIVE_INFINITY) return low + FIRST_STEP * 2 ** (points.length - 1);
    const below = points.find((point) => point.factor === low);
    const above = points.find((point) => point.factor === high);
    if (!below || !above || points.length % 3 === 0) return 0.5 * (low + high);
    // Regula falsi, kept away from the ends; every third time bisection.
    const share = below.net / (below.net - above.net);
    return low + (high - low) * Math.min(0.9, Math.max(0.1, share));
  }

  /** True when nothing is left to try. */
  get done(): boolean {
    return this.high - this.low < NARROW || this.next() < RANGE[0] || this.next() > RANGE[1];
  }
}

/**
 * The price of battery energy with which a fixed-price strategy ends a drive as full as it began, from the vehicle's
 * target charge. The net battery energy falls as the price rises, in small jumps, since starts come and go: what is left
 * is corrected by the price.
 * @param strategy one with `withFactor`
 * @param window largest net share of the fuel energy that ends the search; comparisons use 0.001
 * @throws InputError for bad options
 */
export function balanceByFactor(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition & Required<Pick<StrategyDefinition, "withFactor">>,
  options: RunOptions = {},
  window = BALANCE_WINDOW,
  progress: Progress = {},
): FactorBalance {
  const cancelled = progress.cancelled ?? (() => false);
  let runs = 0;
  const { socTarget } = vehicle.battery;
  const startSoc = Math.min(socTarget, options.startSoc ?? socTarget);
  const drive = (factor: number): Simulation => {
    runs += 1;
    progress.report?.(Math.min(0.95, runs / MOST_RUNS));
    return simulate(vehicle, cycle, strategy.withFactor(factor), { ...options, startSoc }, { cancelled });
  };
  const search = new Search(drive, vehicle.control.equivalenceFactor);
  while (runs < MOST_RUNS && Math.abs(search.share) > window && !search.done && !cancelled()) {
    search.attempt(search.next());
  }
  return conclude(search, window, cancelled());
}

function conclude(search: Search, window: number, cancelled: boolean): FactorBalance {
  const { best, run, points } = search;
  const reason = whyNotBalanced(search.share, best.fuel, window, cancelled, "price of battery energy");
  return {
    factor: best.factor,
    run,
    runs: points.length,
    netShare: search.share,
    // The price itself is what one unit of battery energy is worth at the margin.
    slope: best.factor,
    slopeSource: "marginal",
    fuelEnergy: reason === "" ? best.fuel + best.factor * best.net : Number.NaN,
    balanced: reason === "",
    reason,
  };
}

/** True for a strategy whose charge is balanced by its price. */
export const hasFactor = (
  strategy: StrategyDefinition,
): strategy is StrategyDefinition & Required<Pick<StrategyDefinition, "withFactor">> =>
  strategy.withFactor !== undefined;
