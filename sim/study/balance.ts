import type { CycleTrace } from "../../shared/cycle.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import { brakeEfficiency, engineTables } from "../drivetrain/engine.ts";
import { lookUp } from "../drivetrain/table.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { type Progress, simulate } from "../run/simulate.ts";
import type { Simulation } from "../run/simulation.ts";

/** Charge-balanced fuel: what the drive costs when the battery ends as full as it began. */
export interface Balance {
  /** the run nearest to balance, from which everything else is read */
  readonly run: Simulation;
  readonly runs: number;
  /** net battery energy over fuel energy of that run, before the correction; positive when the battery gave */
  readonly netShare: number;
  /** fuel energy that stands for one unit of battery energy */
  readonly slope: number;
  /** "measured" over neighbouring start charges, or "marginal" from the engine's best point where those do not tell */
  readonly slopeSource: "measured" | "marginal";
  /** J, corrected for the rest; not a number when the drive cannot be balanced */
  readonly fuelEnergy: number;
  /** false when the drive cannot be balanced (no fuel used, or the charge runs away) */
  readonly balanced: boolean;
  /** why not, one sentence; empty when balanced */
  readonly reason: string;
}

/** Net battery energy over fuel energy that ends the search: SAE J1711 allows 1 %. */
export const BALANCE_WINDOW = 0.01;

/** Range in which a measured slope is believed: about three, SAE 2026-01-0422 (abstract). */
const SLOPE_RANGE = [2, 4] as const;

/** Start charges either side of the balanced one for the slope, and most runs of the search. */
const SLOPE_OFFSETS = [-0.02, -0.01, 0.01, 0.02];
const MOST_RUNS = 14;

const fuelOf = (run: Simulation): number => run.b.runningFuel + run.b.startFuel;
const shareOf = (run: Simulation): number => run.b.source / Math.max(1, fuelOf(run));

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

/**
 * Repeats a run over start charges until the net battery energy is within the window of the fuel energy, measures the
 * slope of fuel over battery energy around it, and corrects the rest by it.
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
  const { socFloor, socCeiling, socTarget } = vehicle.battery;
  const keep = (soc: number): number => Math.min(socCeiling - 0.005, Math.max(socFloor + 0.005, soc));
  const points: { soc: number; net: number; fuel: number; drift: number; run: Simulation }[] = [];
  const tryAt = (soc: number) => {
    const run = simulate(
      vehicle,
      cycle,
      strategy,
      { ...options, startSoc: soc },
      { cancelled: progress.cancelled ?? (() => false) },
    );
    const point = { soc, net: run.b.source, fuel: fuelOf(run), drift: run.s.soc - soc, run };
    points.push(point);
    progress.report?.(Math.min(0.95, points.length / (MOST_RUNS + SLOPE_OFFSETS.length)));
    return point;
  };
  let point = tryAt(
    keep(options.startSoc !== undefined && options.startSoc < socTarget ? options.startSoc : socTarget),
  );
  let best = point;
  for (let i = 1; i < MOST_RUNS && Math.abs(shareOf(best.run)) > window; i += 1) {
    if (progress.cancelled?.()) break;
    point = tryAt(keep(nextSoc(points)));
    if (Math.abs(point.net) < Math.abs(best.net)) best = point;
  }
  return conclude(vehicle, best, points, (soc) => tryAt(keep(soc)), window);
}

interface Point {
  readonly soc: number;
  readonly net: number;
  readonly fuel: number;
  readonly drift: number;
  readonly run: Simulation;
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

function conclude(
  vehicle: Vehicle,
  best: Point,
  points: Point[],
  tryAt: (soc: number) => Point,
  window: number,
): Balance {
  const share = shareOf(best.run);
  const result = { run: best.run, netShare: share };
  if (best.fuel <= 0) {
    const reason = "no fuel was used, so there is nothing to balance: see the electric consumption";
    return {
      ...result,
      runs: points.length,
      slope: Number.NaN,
      slopeSource: "marginal",
      fuelEnergy: Number.NaN,
      balanced: false,
      reason,
    };
  }
  for (const offset of SLOPE_OFFSETS) tryAt(best.soc + offset);
  const measured = fuelSlope(points.filter((p) => Math.abs(p.soc - best.soc) < 0.06 && p.fuel > 0));
  const believed = measured >= SLOPE_RANGE[0] && measured <= SLOPE_RANGE[1];
  const slope = believed ? measured : marginalSlope(vehicle);
  const balanced = Math.abs(share) <= Math.max(window, BALANCE_WINDOW);
  return {
    ...result,
    runs: points.length,
    slope,
    slopeSource: believed ? "measured" : "marginal",
    fuelEnergy: balanced ? best.fuel + slope * best.net : Number.NaN,
    balanced,
    reason: balanced
      ? ""
      : `the battery still gives ${(100 * share).toFixed(1)} % of the fuel energy at the nearest start charge`,
  };
}
