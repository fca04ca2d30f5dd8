import { ampHoursToCoulombs } from "../../shared/units.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { lookUp, monotoneCubic, tabulate, type UniformTable } from "./table.ts";

type BatteryParameters = Vehicle["battery"];

/** Intervals of the open-circuit table over 0–1 charge: fine enough that the line between two is the curve. */
const INTERVALS = 1000;

/** Open-circuit voltage of the pack over state of charge, V. */
export function openCircuitTable(b: BatteryParameters): UniformTable {
  const cell = monotoneCubic(b.cellSoc, b.cellVoltage);
  return tabulate(0, 1, INTERVALS, (soc) => b.cells * cell(soc));
}

const tables = new WeakMap<BatteryParameters, UniformTable>();

/** The same table, kept for as long as the parameters live. */
export function openCircuit(b: BatteryParameters): UniformTable {
  const known = tables.get(b);
  if (known) return known;
  const made = openCircuitTable(b);
  tables.set(b, made);
  return made;
}

/** Energy stored between two states of charge, J: the integral of the open-circuit voltage over charge. */
export function storedEnergy(b: BatteryParameters, from: number, to: number): number {
  const table = openCircuit(b);
  const charge = ampHoursToCoulombs(b.capacityAh);
  const area = (low: number, high: number): number => {
    const pieces = Math.max(1, Math.ceil((high - low) * INTERVALS * 8));
    let sum = 0;
    for (let i = 0; i < pieces; i += 1) {
      sum += lookUp(table, low + ((i + 0.5) * (high - low)) / pieces);
    }
    return (sum * (high - low)) / pieces;
  };
  return charge * (to >= from ? area(from, to) : -area(to, from));
}

/**
 * Current, A, that a power (W, positive on discharge) draws from a source voltage E behind a resistance R: the small
 * root of P = E I − R I² (Larminie and Lowry, eq. 2.20). Not a number beyond the greatest power E²/4R.
 */
export const currentForPower = (voltage: number, resistance: number, power: number): number =>
  (2 * power) / (voltage + Math.sqrt(voltage * voltage - 4 * resistance * power));

/** Greatest discharge power of a source behind a resistance, W: E²/4R. */
export const greatestDischargePower = (voltage: number, resistance: number): number =>
  (voltage * voltage) / (4 * resistance);
