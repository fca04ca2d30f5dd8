import { fuelPower, fullLoadTorque } from "../../drivetrain/engine.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { lookUp } from "../../drivetrain/table.ts";

/** Engine powers looked at, from the least to the greatest, and speeds for each as multiples of the best line's. */
const POWERS = 36;
const SPEEDS = [1, 0.9, 1.1, 1.25];

/** Shares of full load and of the greatest speed that are kept free for control. */
const LOAD_SHARE = 0.99;
const TOP_SHARE = 0.98;

/** Engine points that a decision chooses from, in flat arrays. */
export interface EnginePoints {
  readonly count: number;
  /** W at the crankshaft */
  readonly power: Float64Array;
  /** rad/s */
  readonly speed: Float64Array;
  /** N·m */
  readonly torque: Float64Array;
  /** fuel power of the warm engine, W */
  readonly fuel: Float64Array;
}

const known = new WeakMap<Prepared["engine"], EnginePoints>();

/**
 * Points on the best line and at speeds beside it, which cost more fuel but load the machines otherwise; made once for
 * each engine.
 */
export function enginePoints(p: Prepared): EnginePoints {
  const kept = known.get(p.engine);
  if (kept) return kept;
  const list: { power: number; speed: number; fuel: number }[] = [];
  for (let i = 1; i <= POWERS; i += 1) {
    const power = (p.enginePower * i) / POWERS;
    for (const factor of SPEEDS) {
      const speed = Math.min(p.engineTop * TOP_SHARE, Math.max(p.idleSpeed, lookUp(p.line, power) * factor));
      if (power / speed > LOAD_SHARE * fullLoadTorque(p.engine, speed)) continue;
      list.push({ power, speed, fuel: fuelPower(p.engine, p.map, speed, power / speed) });
    }
  }
  const points = {
    count: list.length,
    power: Float64Array.from(list, (point) => point.power),
    speed: Float64Array.from(list, (point) => point.speed),
    torque: Float64Array.from(list, (point) => point.power / point.speed),
    fuel: Float64Array.from(list, (point) => point.fuel),
  };
  known.set(p.engine, points);
  return points;
}
