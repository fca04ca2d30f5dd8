import { at } from "../../../shared/at.ts";
import { brakeEfficiency, engineTables, fuelPower } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { Series } from "./series.ts";

/** What a place of the map weighs: the seconds spent there, or the fuel burnt there, J. */
export type CloudWeight = "time" | "fuel";

/** Points of the engine that lie close together. */
export interface CloudSpot {
  /** weighted means: rad/s and N·m */
  readonly speed: number;
  readonly torque: number;
  /** s or J */
  readonly weight: number;
}

/** Where a run's engine worked, once a second while it fired, on the warm engine's map. */
export interface EngineCloud {
  readonly spots: readonly CloudSpot[];
  /** s with the engine firing */
  readonly seconds: number;
  /** means over that time, rad/s and N·m; not a number when it never fired */
  readonly speed: number;
  readonly torque: number;
  /** brake work over the fuel that the map gives for the points; 1 */
  readonly efficiency: number;
  /** share of the time at an efficiency within `NEAR` of the map's best */
  readonly near: number;
}

/** Efficiency that counts as near the best. */
export const NEAR = 0.02;

/** Cells of the map over speed and over torque in which points are put together. */
const COLUMNS = 36;
const ROWS = 24;

/** Best efficiency of the engine along its best line. */
function bestEfficiency(engine: Vehicle["engine"]): number {
  const { map, line, top } = engineTables(engine);
  let best = 0;
  for (let i = 1; i <= line.last; i += 1) {
    const speed = at(line.values, i);
    best = Math.max(best, brakeEfficiency(engine, map, speed, (top.power * i) / line.last / speed));
  }
  return best;
}

/**
 * The cloud of a run's engine points.
 * @param series of the run: a point a second, zero while the engine does not fire
 * @param weigh what a spot's weight counts
 */
export function engineCloud(series: Series, engine: Vehicle["engine"], weigh: CloudWeight): EngineCloud {
  const { map } = engineTables(engine);
  const best = bestEfficiency(engine);
  const most = Math.max(...engine.fullLoadTorque);
  const cells = new Map<number, { speed: number; torque: number; weight: number }>();
  const sum = { seconds: 0, speed: 0, torque: 0, work: 0, fuel: 0, near: 0 };
  for (let i = 0; i + 1 < series.time.length; i += 1) {
    const speed = at(series.engineSpeed, i);
    if (speed <= 0) continue;
    const torque = at(series.engineTorque, i);
    const span = at(series.time, i + 1) - at(series.time, i);
    const fuel = fuelPower(engine, map, speed, torque) * span;
    sum.seconds += span;
    sum.speed += speed * span;
    sum.torque += torque * span;
    sum.work += speed * torque * span;
    sum.fuel += fuel;
    if (brakeEfficiency(engine, map, speed, torque) >= best - NEAR) sum.near += span;
    const weight = weigh === "time" ? span : fuel;
    if (weight <= 0) continue;
    const column = Math.floor((speed / engine.maxSpeed) * COLUMNS);
    const key = Math.floor((torque / most) * ROWS) * 1000 + column;
    const cell = cells.get(key) ?? { speed: 0, torque: 0, weight: 0 };
    cell.speed += speed * weight;
    cell.torque += torque * weight;
    cell.weight += weight;
    cells.set(key, cell);
  }
  return {
    spots: [...cells.values()].map(({ speed, torque, weight }) => ({
      speed: speed / weight,
      torque: torque / weight,
      weight,
    })),
    seconds: sum.seconds,
    speed: sum.speed / sum.seconds,
    torque: sum.torque / sum.seconds,
    efficiency: sum.work / sum.fuel,
    near: sum.near / sum.seconds,
  };
}
