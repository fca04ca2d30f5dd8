import type { CycleTrace } from "../../shared/cycle.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import { brakeEfficiency, engineTables } from "../drivetrain/engine.ts";
import { lookUp } from "../drivetrain/table.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { type Progress, simulate } from "../run/simulate.ts";
import type { Simulation } from "../run/simulation.ts";
import { BALANCE_WINDOW, type Balance, whyNotBalanced } from "./balanced.ts";
import { balanceByFactor, hasFactor } from "./factor.ts";

export { BALANCE_WINDOW, type Balance } from "./balanced.ts";

/** Range in which a measured slope is believed: about three, SAE 2026-01-0422 (abstract). */
const SLOPE_RANGE = [2, 4] as const;

/** Start charges either side of the balanced one for the slope, and most runs of the search. */
const SLOPE_OFFSETS = [-0.02, -0.01, 0.01, 0.02];
const MOST_RUNS = 14;

/** Start charges within this of the balanced one count for the slope. */
const SLOPE_REACH = 0.06;

/** How far from the ends of the charge window a run may start. */
const EDGE = 0.005;

const fuelOf = (run: Simulation): number => run.b.runningFuel + run.b.startFuel;

/** Fuel for battery energy at the margin: engine at its best point, both machines' and battery's way at 0.85. */
function marginalSlope(vehicle: Vehicle): number {
  const { line, map, top } = engineTables(vehicle.engine);
  let best = 0;
  for (let i = 1; i <= 50; i += 1) {
    const power = (top.power * i) / 50;
    const speed = lookUp(line, power);
    best = Math.max(best, brakeEfficiency(vehicle.engine, map, speed, power / speed));
  }
  return 1 / (0.85 * best);
}

/** Least-squares slope of fuel over net battery energy of several runs (SAE J1711, UN GTR 15 form; from memory). */
export function fuelSlope(points: readonly { readonly net: number; readonly fuel: number }[]): number {
  const n = points.length;
  const meanNet = points.reduce((sum, p) => sum + p.net, 0) / n;
  const meanFuel = points.reduce((sum, p) => sum + p.fuel, 0) / n;
  let top = 0;
  let bottom = 0;
  for (const p of points) {
    top += (p.net - meanNet) * (p.fuel - meanFuel);
    bottom += (p.net - meanNet) * (p.net - meanNet);
  }
  return bottom > 0 ? -top / bottom : Number.NaN;
}

/** What one run tells the search: start charge, net battery energy and fuel, J, and how far the charge moved. */
interface Point {
  readonly soc: number;
  readonly net: number;
  readonly fuel: number;
  readonly drift: number;
}

/** The runs of one search: all their figures, but only the run nearest to balance itself (logs are large). */
class Search {
  readonly points: Point[] = [];
  best: { readonly point: Point; readonly run: Simulation };

  constructor(
    private readonly vehicle: Vehicle,
    private readonly drive: (soc: number) => Simulation,
    firstSoc: number,
  ) {
    const first = this.make(firstSoc);
    this.best = first;
  }

  private make(asked: number): { point: Point; run: Simulation } {
    const { socFloor, socCeiling } = this.vehicle.battery;
    const soc = Math.min(socCeiling - EDGE, Math.max(socFloor + EDGE, asked));
    const run = this.drive(soc);
    const point = { soc, net: run.b.source, fuel: fuelOf(run), drift: run.s.soc - soc };
    this.points.push(point);
    return { point, run };
  }

  /** Drives once more from a start charge. */
  attempt(soc: number): void {
    const made = this.make(soc);
    if (Math.abs(made.point.net) < Math.abs(this.best.point.net)) this.best = made;
  }

  /** Net battery energy over fuel energy of the best run. */
  get share(): number {
    return this.best.point.net / Math.max(1, this.best.point.fuel);
  }
}

/**
 * Charge balance in the way that fits the strategy: by its price of battery energy if it has one (`balanceByFactor`),
 * else over the charge at the start.
 * @param window largest net share that ends the search; comparisons use 0.001
 */
export function balance(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions = {},
  window = BALANCE_WINDOW,
  progress: Progress = {},
): Balance {
  return hasFactor(strategy)
    ? balanceByFactor(vehicle, cycle, strategy, options, window, progress)
    : balanceByCharge(vehicle, cycle, strategy, options, window, progress);
}

/**
 * Repeats a run over start charges until the net battery energy is within the window of the fuel energy, measures the
 * slope of fuel over battery energy around it, and corrects the rest by it.
 */
function balanceByCharge(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions,
  window: number,
  progress: Progress,
): Balance {
  const cancelled = progress.cancelled ?? (() => false);
  let runs = 0;
  const drive = (startSoc: number): Simulation => {
    runs += 1;
    progress.report?.(Math.min(0.95, runs / (MOST_RUNS + SLOPE_OFFSETS.length)));
    return simulate(vehicle, cycle, strategy, { ...options, startSoc }, { cancelled });
  };
  const { socTarget } = vehicle.battery;
  const search = new Search(vehicle, drive, Math.min(socTarget, options.startSoc ?? socTarget));
  while (runs < MOST_RUNS && Math.abs(search.share) > window && !cancelled()) {
    search.attempt(nextSoc(search.points));
  }
  return conclude(vehicle, search, window, cancelled);
}

/** Next start charge: between two of opposite drift, nearest first (regula falsi, bisected); else follow the drift. */
function nextSoc(points: readonly Point[]): number {
  const gaining = points.filter((p) => p.drift > 0).sort((a, b) => b.soc - a.soc)[0];
  const losing = points.filter((p) => p.drift <= 0).sort((a, b) => a.soc - b.soc)[0];
  if (gaining && losing && losing.soc > gaining.soc) {
    const share = gaining.drift / (gaining.drift - losing.drift);
    const held = points.length % 2 === 0 ? share : 0.5;
    return gaining.soc + (losing.soc - gaining.soc) * Math.min(0.9, Math.max(0.1, held));
  }
  const last = points[points.length - 1];
  return last ? last.soc + last.drift : 0.5;
}

function conclude(vehicle: Vehicle, search: Search, window: number, cancelled: () => boolean): Balance {
  const { point, run } = search.best;
  const netShare = search.share;
  const reason = whyNotBalanced(netShare, point.fuel, window, cancelled(), "start charge");
  for (const offset of SLOPE_OFFSETS) {
    if (point.fuel > 0 && !cancelled()) search.attempt(point.soc + offset);
  }
  const near = search.points.filter((p) => Math.abs(p.soc - point.soc) < SLOPE_REACH && p.fuel > 0);
  const measured = fuelSlope(near);
  const believed = measured >= SLOPE_RANGE[0] && measured <= SLOPE_RANGE[1];
  const slope = believed ? measured : marginalSlope(vehicle);
  return {
    run,
    runs: search.points.length,
    netShare,
    slope,
    slopeSource: believed ? "measured" : "marginal",
    fuelEnergy: reason === "" ? point.fuel + slope * point.net : Number.NaN,
    balanced: reason === "",
    reason,
  };
}
