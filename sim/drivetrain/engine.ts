import { at } from "../../shared/at.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { interpolate, tabulate, type UniformTable } from "./table.ts";

type EngineParameters = Vehicle["engine"];

/** A gridded map, flat and ready for bilinear reading. Rows by speed, columns by brake torque. */
export interface EngineMap {
  readonly speed: Float64Array;
  readonly torque: Float64Array;
  /** fuel power, W, at speed i and torque j: fuelPower[i · columns + j] */
  readonly fuelPower: Float64Array;
}

/** Motored friction torque of the warm engine, N·m, ω in rad/s: f0 + f1 ω + f2 ω². */
export const frictionTorque = (e: EngineParameters, speed: number): number =>
  e.friction0 + e.friction1 * speed + e.friction2 * speed * speed;

/** Full-load brake torque, N·m, linear between the curve's points and held outside. */
export const fullLoadTorque = (e: EngineParameters, speed: number): number =>
  interpolate(e.fullLoadSpeed, e.fullLoadTorque, speed);

/** No efficiency falls below this, so that fuel stays finite at odd speeds. */
export const LEAST_EFFICIENCY = 0.02;

/**
 * Indicated efficiency of the Willans form: greatest at the best speed, falling with the speed's distance squared and
 * above the load knee.
 * @param load brake torque over full-load torque
 */
export function indicatedEfficiency(e: EngineParameters, speed: number, load: number): number {
  const off = (speed - e.bestSpeed) / e.bestSpeed;
  const over = Math.max(0, load - e.loadKnee);
  return Math.max(
    LEAST_EFFICIENCY,
    e.indicatedEfficiency * (1 - e.speedFall * off * off) * (1 - e.loadFall * over * over),
  );
}

/** Place in a rising list: index of the interval and share within it, held inside the list. */
function bracket(list: Float64Array, value: number): { index: number; share: number } {
  const last = list.length - 1;
  if (value <= at(list, 0)) return { index: 0, share: 0 };
  if (value >= at(list, last)) return { index: last - 1, share: 1 };
  let index = 0;
  for (let above = last; above - index > 1; ) {
    const middle = (index + above) >> 1;
    if (at(list, middle) < value) index = middle;
    else above = middle;
  }
  const low = at(list, index);
  return { index, share: (value - low) / (at(list, index + 1) - low) };
}

/** The vehicle's gridded map in flat arrays, or null when the engine uses the Willans form. */
export function engineMap(e: EngineParameters): EngineMap | null {
  if (!e.map) return null;
  return {
    speed: Float64Array.from(e.map.speed),
    torque: Float64Array.from(e.map.torque),
    fuelPower: Float64Array.from(e.map.fuelPower.flat()),
  };
}

/** Bilinear fuel power of a map, W, held at the map's edges. */
export function mapFuelPower(map: EngineMap, speed: number, torque: number): number {
  const s = bracket(map.speed, speed);
  const t = bracket(map.torque, torque);
  const base = s.index * map.torque.length + t.index;
  const below = at(map.fuelPower, base) * (1 - t.share) + at(map.fuelPower, base + 1) * t.share;
  const next = base + map.torque.length;
  const above = at(map.fuelPower, next) * (1 - t.share) + at(map.fuelPower, next + 1) * t.share;
  return below * (1 - s.share) + above * s.share;
}

/**
 * Fuel power of the warm, firing engine, W, at a speed (rad/s) and a brake torque (N·m). Zero when the indicated
 * torque (brake torque plus friction) is zero or less.
 */
export function fuelPower(e: EngineParameters, map: EngineMap | null, speed: number, torque: number): number {
  const friction = frictionTorque(e, speed);
  const indicated = torque + friction;
  if (indicated <= 0 || speed <= 0) return 0;
  if (map === null) {
    return (indicated * speed) / indicatedEfficiency(e, speed, torque / fullLoadTorque(e, speed));
  }
  const least = at(map.torque, 0);
  if (torque >= least) return mapFuelPower(map, speed, torque);
  return (mapFuelPower(map, speed, least) * indicated) / (least + friction);
}

/** Brake efficiency (0–1) of the warm engine; 0 where no fuel or no work. */
export function brakeEfficiency(
  e: EngineParameters,
  map: EngineMap | null,
  speed: number,
  torque: number,
): number {
  const fuel = fuelPower(e, map, speed, torque);
  return fuel > 0 && torque > 0 ? (torque * speed) / fuel : 0;
}

/** Greatest engine power, W, and the speed where it is reached, rad/s. */
export function greatestPower(e: EngineParameters): { power: number; speed: number } {
  let best = { power: 0, speed: e.idleSpeed };
  for (let i = 0; i <= 400; i += 1) {
    const speed = e.idleSpeed + ((e.maxSpeed - e.idleSpeed) * i) / 400;
    const power = fullLoadTorque(e, speed) * speed;
    if (power > best.power) best = { power, speed };
  }
  return best;
}

/** Load at most used on the best-efficiency line: a little torque is kept for control. */
const LINE_LOAD = 0.97;

/**
 * Speed, rad/s, at which the warm engine makes a power (W) with the least fuel; idle speed at zero power, the speed of
 * greatest power where nothing else can make it.
 */
export function bestSpeedFor(e: EngineParameters, map: EngineMap | null, power: number): number {
  if (power <= 0) return e.idleSpeed;
  let best = { fuel: Number.POSITIVE_INFINITY, speed: 0 };
  const steps = 300;
  for (let i = 0; i <= steps; i += 1) {
    const speed = e.idleSpeed + ((e.maxSpeed - e.idleSpeed) * i) / steps;
    const torque = power / speed;
    if (torque > LINE_LOAD * fullLoadTorque(e, speed)) continue;
    const fuel = fuelPower(e, map, speed, torque);
    if (fuel < best.fuel) best = { fuel, speed };
  }
  return best.speed > 0 ? best.speed : greatestPower(e).speed;
}

/** The best-efficiency line: speed over power, never falling with power. */
export function bestLine(e: EngineParameters, map: EngineMap | null): UniformTable {
  const top = greatestPower(e).power;
  const table = tabulate(0, top, 160, (power) => bestSpeedFor(e, map, power));
  let floor = e.idleSpeed;
  for (let i = 0; i < table.values.length; i += 1) {
    floor = Math.max(floor, at(table.values, i));
    table.values[i] = floor;
  }
  return table;
}

/** Full-load torque on an equally spaced grid, for the time loop. */
export const fullLoadTable = (e: EngineParameters): UniformTable =>
  tabulate(0, e.maxSpeed * 1.15, 512, (speed) => fullLoadTorque(e, speed));

/** Speed at which the warm engine, turned without fuel, takes a power (W) by its friction, up to its greatest speed. */
function motoredLine(e: EngineParameters): UniformTable {
  const power = (speed: number): number => frictionTorque(e, speed) * speed;
  return tabulate(0, Math.max(1, power(e.maxSpeed)), 160, (wanted) => {
    let low = 0;
    let high = e.maxSpeed;
    for (let i = 0; i < 40; i += 1) {
      const middle = 0.5 * (low + high);
      if (power(middle) < wanted) low = middle;
      else high = middle;
    }
    return high;
  });
}

/** What the time loop needs of an engine, made once for each set of parameters. */
export interface EngineTables {
  readonly map: EngineMap | null;
  readonly line: UniformTable;
  /** speed over motored power */
  readonly motored: UniformTable;
  readonly full: UniformTable;
  readonly top: { readonly power: number; readonly speed: number };
}

const tables = new WeakMap<EngineParameters, EngineTables>();

/** The engine's tables; kept for as long as the parameters live, so that repeated runs do not make them again. */
export function engineTables(e: EngineParameters): EngineTables {
  const known = tables.get(e);
  if (known) return known;
  const map = engineMap(e);
  const made = {
    map,
    line: bestLine(e, map),
    motored: motoredLine(e),
    full: fullLoadTable(e),
    top: greatestPower(e),
  };
  tables.set(e, made);
  return made;
}
