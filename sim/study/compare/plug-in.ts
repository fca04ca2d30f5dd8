import { at } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { CycleDriver } from "../../control/driver.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { consumption, kwhPer100Km } from "../../run/fuel.ts";
import { checkClosure, type Progress } from "../../run/simulate.ts";
import { Simulation } from "../../run/simulation.ts";
import { CONTROL_PERIOD } from "../../settings.ts";

/** What a vehicle charged from the mains uses from a full battery on: fuel and electricity apart. */
export interface PlugIn {
  /** state of charge at the start of the first cycle and at its end */
  readonly soc_start: number;
  readonly soc_end: number;
  /** of the first cycle driven */
  readonly litres_per_100km: number;
  /** out of the battery's open-circuit source; what the charger loses comes on top */
  readonly kwh_per_100km: number;
  /** m driven, the cycle again and again, until the engine is first started; null where it never is */
  readonly electric_range_m: number | null;
}

/** A start charge above the target by more than this is that of a vehicle charged from the mains. */
const CHARGED_ABOVE = 0.05;

/** Most times that a cycle is driven one after the other. */
const MOST_CYCLES = 100;

/** True for a vehicle whose battery is fuller at the start than its control keeps it. */
export const isPlugIn = ({ battery }: Vehicle): boolean =>
  battery.socStart > battery.socTarget + CHARGED_ABOVE;

/**
 * Drives a cycle again and again from the vehicle's own start charge until the engine is started.
 * @returns null for a vehicle that is not charged from the mains, or when cancelled
 */
export function plugIn(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions,
  progress: Progress = {},
): PlugIn | null {
  if (!isPlugIn(vehicle)) return null;
  let soc = vehicle.battery.socStart;
  let driven = 0;
  let first: Omit<PlugIn, "electric_range_m"> | null = null;
  for (let i = 0; i < MOST_CYCLES; i += 1) {
    if (progress.cancelled?.()) return null;
    const { run, beforeStart } = drive(vehicle, cycle, strategy, { ...options, startSoc: soc }, i === 0);
    first ??= figures(vehicle, run);
    if (beforeStart !== null) return { ...first, electric_range_m: driven + beforeStart };
    driven += run.b.travelled;
    // A battery that does not empty never has the engine started.
    if (!(run.s.soc < soc)) break;
    soc = run.s.soc;
  }
  return first && { ...first, electric_range_m: null };
}

function figures(vehicle: Vehicle, { p, s, b }: Simulation): Omit<PlugIn, "electric_range_m"> {
  return {
    soc_start: p.socStart,
    soc_end: s.soc,
    litres_per_100km: consumption(vehicle.fuel, b.runningFuel + b.startFuel, b.travelled).litresPer100Km,
    kwh_per_100km: kwhPer100Km(b.source, b.travelled),
  };
}

/** One cycle, to its end or only to the first start. @returns the way driven before the first start, m */
function drive(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions,
  toTheEnd: boolean,
): { readonly run: Simulation; readonly beforeStart: number | null } {
  const ticks = Math.ceil(at(cycle.time, cycle.time.length - 1) / CONTROL_PERIOD - 1e-6);
  const run = new Simulation(vehicle, new CycleDriver(cycle), strategy, options, ticks + 1);
  let beforeStart: number | null = null;
  for (let i = 0; i < ticks; i += 1) {
    run.tick();
    if (run.c.starts === 0 || beforeStart !== null) continue;
    beforeStart = run.b.travelled;
    if (!toTheEnd) break;
  }
  checkClosure(run);
  return { run, beforeStart };
}
