import { realAt } from "../../../shared/at.ts";
import { frictionTorque, fuelPower, fullLoadTorque } from "../../drivetrain/engine.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";

/** Engine points in flat arrays: the whole map, not only its best line. */
export interface Candidates {
  readonly count: number;
  /** rad/s */
  readonly speed: Float64Array;
  /** brake torque, N·m */
  readonly torque: Float64Array;
  /** fuel power of the warm engine, W */
  readonly fuel: Float64Array;
}

/** Share of the greatest speed up to which the supervisor lets the engine run. */
const TOP_SHARE = 0.99;

/**
 * The engine's map as points: fuel cut, idling, and torques up to full load, at speeds from idle to the greatest.
 * @param speeds columns of the grid, ≥ 2
 * @param torques rows between zero and full load, ≥ 1
 */
export function engineCandidates(p: Prepared, speeds: number, torques: number): Candidates {
  const list: { speed: number; torque: number; fuel: number }[] = [];
  const top = TOP_SHARE * p.engineTop;
  for (let i = 0; i < speeds; i += 1) {
    const speed = p.idleSpeed + ((top - p.idleSpeed) * i) / (speeds - 1);
    const full = fullLoadTorque(p.engine, speed);
    list.push({ speed, torque: -frictionTorque(p.engine, speed), fuel: 0 });
    for (let j = 0; j <= torques; j += 1) {
      const torque = (full * j) / torques;
      list.push({ speed, torque, fuel: fuelPower(p.engine, p.map, speed, torque) });
    }
  }
  return {
    count: list.length,
    speed: Float64Array.from(list, (point) => point.speed),
    torque: Float64Array.from(list, (point) => point.torque),
    fuel: Float64Array.from(list, (point) => point.fuel),
  };
}

/** Fuel power of the warm engine at a point, W. */
export const fuelAt = (p: Prepared, speed: number, torque: number): number =>
  fuelPower(p.engine, p.map, speed, torque);

/** Scratch of `paretoBins`: reused from stage to stage. */
export class Bins {
  readonly best: Float64Array;
  readonly point: Int32Array;
  constructor(readonly count: number) {
    this.best = new Float64Array(count);
    this.point = new Int32Array(count);
  }
}

/**
 * The Pareto set of fuel against battery power, thinned to at most one point a bin of battery power. Within a bin the
 * point with the least fuel + price · battery power is kept; of the kept ones each must save fuel against all before it.
 * @param power battery power of each candidate, W; not a number where a limit is passed
 * @param price fuel for battery energy within a bin: about 1 over the mean efficiency of making it
 * @returns number of points; their candidates stand in `bins.point`, battery power rising
 */
export function paretoBins(candidates: Candidates, power: Float64Array, price: number, bins: Bins): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let strongest = 0;
  for (let i = 0; i < candidates.count; i += 1) {
    const value = realAt(power, i);
    if (value < least) {
      least = value;
      strongest = i;
    }
    if (value > most) most = value;
  }
  if (least > most) return 0;
  bins.best.fill(Number.POSITIVE_INFINITY);
  const perPower = (bins.count - 1e-6) / Math.max(1, most - least);
  for (let i = 0; i < candidates.count; i += 1) {
    const value = realAt(power, i);
    if (!(value >= least)) continue;
    const bin = Math.floor((value - least) * perPower);
    const cost = realAt(candidates.fuel, i) + price * value;
    if (cost < realAt(bins.best, bin)) {
      bins.best[bin] = cost;
      bins.point[bin] = i;
    }
  }
  // What charges most decides what can be done at all: it is always kept.
  bins.point[0] = strongest;
  let kept = 0;
  let fuel = Number.POSITIVE_INFINITY;
  for (let bin = 0; bin < bins.count; bin += 1) {
    if (realAt(bins.best, bin) === Number.POSITIVE_INFINITY) continue;
    const point = bins.point[bin] ?? 0;
    const used = realAt(candidates.fuel, point);
    if (used >= fuel) continue;
    fuel = used;
    bins.point[kept] = point;
    kept += 1;
  }
  return kept;
}
