import { cycleById } from "../../../cycles/catalogue.ts";
import { InputError, type InputFault } from "../../../shared/errors.ts";
import { kmhToMps } from "../../../shared/units.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import type { LimitId } from "../../limits.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { Progress } from "../../run/simulate.ts";
import { driveStop, type LimitShare, type Stop } from "./stop.ts";

/** Brake stops to be driven: every speed at every rate from every charge. */
export interface RegenerationPlan {
  readonly vehicle: Vehicle;
  /** m/s to brake from, m/s² to brake at, state of charge when the brake is asked for */
  readonly speeds: readonly number[];
  readonly rates: readonly number[];
  readonly charges: readonly number[];
  readonly options: RunOptions;
}

/** One stop of the map, against the same stop with the friction brakes alone. Energies in J. */
export interface RegenerationCell {
  /** as asked for */
  readonly speed: number;
  readonly rate: number;
  readonly charge: number;
  /** state of charge that was reached when the brake was asked for */
  readonly soc: number;
  readonly soc_after: number;
  /** m/s, less than asked for where the vehicle cannot reach it */
  readonly speed_reached: number;
  readonly asked_at_wheels_j: number;
  readonly at_machine_shaft_j: number;
  readonly into_battery_j: number;
  readonly friction_brakes_j: number;
  /** into battery over asked: the map */
  readonly recovered_share: number;
  /** what the battery holds more than after the same stop without regeneration, and that over what was asked */
  readonly kept_j: number;
  readonly kept_share: number;
  /** fuel that the stop without regeneration took more */
  readonly fuel_saved_j: number;
  /** what left most to the friction brakes; null where they did nothing */
  readonly limit: LimitId | null;
  readonly limits: readonly LimitShare[];
}

/** The map: cells in the order charge, speed, rate, the last changing first. */
export interface RegenerationMap {
  readonly plan: RegenerationPlan;
  readonly strategy: string;
  readonly cells: readonly RegenerationCell[];
  /** false when it was stopped before the end: the cells are those done */
  readonly complete: boolean;
}

/** Ranges of the plan, SI. The brake stop is our own manoeuvre and takes no more. */
const RANGES = {
  speeds: [kmhToMps(5), kmhToMps(250), "m/s"],
  rates: [0.2, 10, "m/s²"],
  charges: [0.01, 0.99, "share of full charge"],
} as const;

/** Most cells of one map. */
const MOST_CELLS = 5000;

/** The drive before the stop changes the charge: runs in which it is aimed at, and how near is near enough. */
const AIMS = 5;
const NEAR = 0.001;

/** How far from the ends of the charge window a run may start. */
const EDGE = 0.005;

function checkPlan(plan: RegenerationPlan): void {
  const faults: InputFault[] = [];
  for (const name of ["speeds", "rates", "charges"] as const) {
    const [least, most, unit] = RANGES[name];
    const accepted = `${Number(least.toFixed(2))} … ${Number(most.toFixed(2))} ${unit}`;
    if (plan[name].length === 0) faults.push({ what: "no values", where: name, value: "", accepted });
    for (const value of plan[name]) {
      if (!(value >= least - 1e-9 && value <= most + 1e-9)) {
        faults.push({ what: "out of range", where: name, value: String(value), accepted });
      }
    }
  }
  const count = plan.speeds.length * plan.rates.length * plan.charges.length;
  if (count > MOST_CELLS) {
    const accepted = `at most ${MOST_CELLS} stops`;
    faults.push({ what: "too many stops", where: "regeneration", value: String(count), accepted });
  }
  if (faults.length > 0) throw new InputError(faults);
}

/** Drives a stop from the start charge from which the brake is asked for at the charge wanted, as near as can be. */
function aim(
  plan: RegenerationPlan,
  cycle: ReturnType<typeof cycleById>,
  strategy: StrategyDefinition,
  charge: number,
) {
  const { socFloor, socCeiling } = plan.vehicle.battery;
  const inWindow = (soc: number): number => Math.min(socCeiling - EDGE, Math.max(socFloor + EDGE, soc));
  let start = inWindow(charge);
  let best: { start: number; stop: Stop } | null = null;
  for (let i = 0; i < AIMS; i += 1) {
    const stop = driveStop(plan.vehicle, cycle, strategy, { ...plan.options, startSoc: start });
    if (!best || Math.abs(stop.soc - charge) < Math.abs(best.stop.soc - charge)) best = { start, stop };
    const next = inWindow(start + charge - stop.soc);
    if (Math.abs(stop.soc - charge) <= NEAR || next === start) break;
    start = next;
  }
  if (!best) throw new Error("no stop was driven");
  return best;
}

/**
 * One cell of the map.
 * @param speed m/s @param rate m/s² @param charge when the brake is asked for
 */
export function regenerationCell(
  plan: RegenerationPlan,
  strategy: StrategyDefinition,
  speed: number,
  rate: number,
  charge: number,
): RegenerationCell {
  const cycle = cycleById(`brake-stop:speed=${speed}m/s,rate=${rate}m/s2`);
  const { start, stop } = aim(plan, cycle, { ...strategy, regeneration: true }, charge);
  const without = { ...strategy, regeneration: false };
  const baseline = driveStop(plan.vehicle, cycle, without, { ...plan.options, startSoc: start });
  const kept = baseline.source - stop.source;
  const worst = stop.limits.reduce<LimitShare | null>(
    (most, one) => (most && most.friction >= one.friction ? most : one),
    null,
  );
  return {
    speed,
    rate,
    charge,
    soc: stop.soc,
    soc_after: stop.socAfter,
    speed_reached: stop.speed,
    asked_at_wheels_j: stop.asked,
    at_machine_shaft_j: stop.shaft,
    into_battery_j: stop.intoBattery,
    friction_brakes_j: stop.friction,
    recovered_share: stop.intoBattery / stop.asked,
    kept_j: kept,
    kept_share: kept / stop.asked,
    fuel_saved_j: baseline.fuel - stop.fuel,
    limit: worst?.id ?? null,
    limits: stop.limits,
  };
}

/**
 * Brake stops over start speed × rate × charge, each against the same stop with the friction brakes alone: which share
 * comes back, and which limit left the rest to the brakes. Deterministic.
 * @param strategy how the engine is run; its own regeneration does not matter
 * @throws InputError for values out of range
 */
export function regenerationMap(
  plan: RegenerationPlan,
  strategy: StrategyDefinition,
  progress: Progress = {},
): RegenerationMap {
  checkPlan(plan);
  const cells: RegenerationCell[] = [];
  const count = plan.speeds.length * plan.rates.length * plan.charges.length;
  for (const charge of plan.charges) {
    for (const speed of plan.speeds) {
      for (const rate of plan.rates) {
        if (progress.cancelled?.()) return { plan, strategy: strategy.id, cells, complete: false };
        cells.push(regenerationCell(plan, strategy, speed, rate, charge));
        progress.report?.(cells.length / count);
      }
    }
  }
  return { plan, strategy: strategy.id, cells, complete: true };
}
