import { type PhaseAmount, weightCityBags } from "../../cycles/composite/weighting.ts";
import { at } from "../../shared/at.ts";
import type { Phase } from "../../shared/cycle.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { LEDGER_LINES } from "../run/ledger.ts";
import type { RunLog } from "../run/log.ts";
import { type Consumed, consumed, perHundred } from "./consumed.ts";

/** One phase of a drive, as it stands in the summary file. */
export interface PhaseFigures {
  readonly id: string;
  readonly title: string;
  readonly start_s: number;
  readonly end_s: number;
  readonly distance_m: number;
  readonly fuel_j: number;
  /** taken out of the battery's open-circuit source; positive when the battery gave */
  readonly net_battery_j: number;
  readonly raw: Consumed;
  /** corrected by the slope of fuel over battery energy; absent when the run was not balanced */
  readonly balanced?: Consumed;
}

const BATTERY_LINE = LEDGER_LINES.findIndex((line) => line.id === "battery_change");

/** How far off a row's time may be from a phase's boundary, s: rounding only. */
const SAME_TIME = 1e-6;

function rowAt(time: Float64Array, seconds: number): number {
  const row = time.findIndex((t) => t >= seconds - SAME_TIME);
  return row < 0 ? time.length - 1 : row;
}

/**
 * What each phase used and how far it went, from the log's columns.
 * @param slope fuel energy for one unit of battery energy; without one there are no balanced figures
 */
export function phaseFigures(
  log: RunLog,
  vehicle: Vehicle,
  phases: readonly Phase[],
  slope: number | undefined,
): PhaseFigures[] {
  const time = log.view("time");
  return phases.map(({ id, title, start, end }) => {
    const from = rowAt(time, start);
    const until = rowAt(time, end);
    const change = (column: Float64Array): number => at(column, until) - at(column, from);
    const distance = change(log.view("distance"));
    const fuel = change(log.view("fuel"));
    const net = -change(log.ledgerLine(BATTERY_LINE));
    return {
      id,
      title,
      start_s: start,
      end_s: end,
      distance_m: distance,
      fuel_j: fuel,
      net_battery_j: net,
      raw: consumed(vehicle, fuel, distance),
      ...(slope === undefined ? {} : { balanced: consumed(vehicle, fuel + slope * net, distance) }),
    };
  });
}

/**
 * The city test's figure: its three bags weighted 0.43 cold and 0.57 hot, 40 CFR 86.144.
 * @returns null for every other cycle
 */
export function cityTest(
  cycleId: string,
  vehicle: Vehicle,
  phases: readonly PhaseFigures[],
): { readonly raw: Consumed; readonly balanced?: Consumed } | null {
  if (cycleId !== "ftp75") return null;
  const weigh = (of: (phase: PhaseFigures) => Consumed | undefined): Consumed => {
    const bag = (index: number): PhaseAmount => {
      const phase = at(phases, index);
      return {
        amount: (of(phase)?.l_per_100km ?? Number.NaN) * phase.distance_m,
        distance: phase.distance_m,
      };
    };
    const bags = { coldTransient: bag(0), stabilised: bag(1), hotTransient: bag(2) };
    return perHundred(vehicle, weightCityBags(bags));
  };
  const balanced = phases.every((phase) => phase.balanced);
  return { raw: weigh((p) => p.raw), ...(balanced ? { balanced: weigh((p) => p.balanced) } : {}) };
}
