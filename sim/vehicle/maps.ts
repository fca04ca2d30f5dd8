import { at } from "../../shared/at.ts";
import { brakeEfficiency, engineTables, fullLoadTorque } from "../drivetrain/engine.ts";
import {
  type MachineLimits,
  type MachineLoss,
  machineEfficiency,
  torqueLimit,
} from "../drivetrain/machine.ts";
import type { Vehicle } from "../parameters/schema.ts";

/** Equally spaced samples, both ends included. */
export interface Samples {
  readonly from: number;
  readonly to: number;
  /** ≥ 2 */
  readonly count: number;
}

/** A quantity over two others: values[j · x.count + i] stands at sample i of x and sample j of y. */
export interface MapGrid {
  readonly x: Samples;
  readonly y: Samples;
  readonly values: Float64Array;
}

/** A line through points, x and y of the same length. */
export interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Value of one sample: exact at both ends. */
export const sampleAt = ({ from, to, count }: Samples, index: number): number =>
  index === count - 1 ? to : from + ((to - from) * index) / (count - 1);

function fill(x: Samples, y: Samples, value: (x: number, y: number) => number): MapGrid {
  const values = new Float64Array(x.count * y.count);
  for (let j = 0; j < y.count; j += 1) {
    for (let i = 0; i < x.count; i += 1) values[j * x.count + i] = value(sampleAt(x, i), sampleAt(y, j));
  }
  return { x, y, values };
}

function trace(x: Samples, value: (x: number) => number): Curve {
  const places = Float64Array.from({ length: x.count }, (_, i) => sampleAt(x, i));
  return { x: places, y: places.map(value) };
}

/**
 * Brake efficiency (0–1) of the warm engine over speed (rad/s, idle to greatest) and brake torque (N·m, 0 to the most
 * at full load), by the Willans form or the gridded map, whichever the engine has. Beyond full load it goes on by the
 * same formula: the full-load curve says where it ends.
 * @param columns samples over speed
 * @param rows samples over torque
 */
export function engineEfficiencyMap(engine: Vehicle["engine"], columns = 73, rows = 61): MapGrid {
  const { map } = engineTables(engine);
  return fill(
    { from: engine.idleSpeed, to: engine.maxSpeed, count: columns },
    { from: 0, to: Math.max(...engine.fullLoadTorque), count: rows },
    (speed, torque) => brakeEfficiency(engine, map, speed, torque),
  );
}

/** Full-load brake torque, N·m, over speed, rad/s, from idle to the greatest speed. */
export const fullLoadCurve = (engine: Vehicle["engine"], count = 49): Curve =>
  trace({ from: engine.idleSpeed, to: engine.maxSpeed, count }, (speed) => fullLoadTorque(engine, speed));

/** The best-efficiency line, torque (N·m) over speed (rad/s), by rising power; the run's own line. */
export function bestEfficiencyCurve(engine: Vehicle["engine"]): Curve {
  const { line, top } = engineTables(engine);
  const powers = Float64Array.from({ length: line.last }, (_, i) => (top.power * (i + 1)) / line.last);
  const speeds = Float64Array.from(powers, (_, i) => at(line.values, i + 1));
  return { x: speeds, y: powers.map((power, i) => power / at(speeds, i)) };
}

/**
 * Efficiency (0–1) of a machine with its inverter in all four quadrants, speed (rad/s) × torque (N·m), each from −limit
 * to limit: electricity to shaft where it motors, shaft to electricity where it generates, 0 where nothing useful
 * comes out. Odd counts put samples on the axes.
 */
export function machineEfficiencyMap(m: MachineLimits & MachineLoss, columns = 73, rows = 61): MapGrid {
  return fill(
    { from: -m.maxSpeed, to: m.maxSpeed, count: columns },
    { from: -m.peakTorque, to: m.peakTorque, count: rows },
    (speed, torque) => machineEfficiency(m, torque, speed),
  );
}

/** Greatest torque of a machine, N·m, over speed, rad/s, from −limit to limit; the same turned over holds below. */
export const machineLimitCurve = (m: MachineLimits, count = 97): Curve =>
  trace({ from: -m.maxSpeed, to: m.maxSpeed, count }, (speed) => torqueLimit(m, speed));
