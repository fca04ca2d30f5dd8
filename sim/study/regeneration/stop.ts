import { at } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { CycleDriver } from "../../control/driver.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import { LIMIT_BIT, type LimitId } from "../../limits.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { checkClosure } from "../../run/simulate.ts";
import { Simulation } from "../../run/simulation.ts";
import { CONTROL_PERIOD } from "../../settings.ts";

/** Braking of one stop. Energies in J, all from the second before the brake is asked for until the end at rest. */
export interface Stop {
  /** state of charge when the brake is asked for, and at rest */
  readonly soc: number;
  readonly socAfter: number;
  /** m/s when the brake is asked for */
  readonly speed: number;
  readonly asked: number;
  readonly shaft: number;
  readonly intoBattery: number;
  readonly friction: number;
  /** taken out of the open-circuit source; negative when the battery was charged */
  readonly source: number;
  readonly fuel: number;
  /** energy that the friction brakes took while each limit was the narrowest, and for how long, s */
  readonly limits: readonly LimitShare[];
}

/** What one limit cost. */
export interface LimitShare {
  readonly id: LimitId;
  readonly friction: number;
  readonly seconds: number;
}

/** The driver looks ahead, so that braking begins a little before it is asked for: figures begin this long before, s. */
const BEFORE = 1;

/**
 * Limits that leave braking to the friction brakes, the narrowest first: where several bind, the first is to blame. The
 * driven axle's share always binds when nothing else does.
 */
const ORDER: readonly LimitId[] = [
  "regeneration-off",
  "battery-charge",
  "output-torque",
  "output-speed",
  "tyre-grip",
  "low-speed-fade",
  "axle-share",
];

/** Running sums that a stop is read from. */
const sums = ({ b }: Simulation) => ({
  asked: b.brakingAsked,
  shaft: b.brakingShaft,
  intoBattery: b.recovered,
  friction: b.brakingFriction,
  source: b.source,
  fuel: b.runningFuel + b.startFuel,
});

/** Start of the part in which the manoeuvre brakes, s. @throws Error for a cycle that has none */
function brakeStart(cycle: CycleTrace): number {
  const phase = cycle.phases.find(({ id }) => id === "brake");
  if (!phase) throw new Error(`${cycle.id} has no braking`);
  return phase.start;
}

/**
 * Drives a brake stop and reads its braking.
 * @param cycle a manoeuvre with a part "brake" that ends at rest
 * @throws InputError for bad options
 */
export function driveStop(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
  options: RunOptions,
): Stop {
  const ticks = Math.ceil(at(cycle.time, cycle.time.length - 1) / CONTROL_PERIOD - 1e-6);
  const first = Math.max(0, Math.round((brakeStart(cycle) - BEFORE) / CONTROL_PERIOD));
  const run = new Simulation(vehicle, new CycleDriver(cycle), strategy, options, ticks + 1);
  for (let i = 0; i < first; i += 1) run.tick();
  const before = sums(run);
  const soc = run.s.soc;
  const speed = run.s.ringSpeed * run.p.metresPerRing;
  for (let i = first; i < ticks; i += 1) run.tick();
  checkClosure(run);
  const after = sums(run);
  return {
    soc,
    socAfter: run.s.soc,
    speed,
    asked: after.asked - before.asked,
    shaft: after.shaft - before.shaft,
    intoBattery: after.intoBattery - before.intoBattery,
    friction: after.friction - before.friction,
    source: after.source - before.source,
    fuel: after.fuel - before.fuel,
    limits: limitShares(run, first),
  };
}

/** Friction brake energy of each row by the narrowest limit of that row. */
function limitShares({ log }: Simulation, first: number): LimitShare[] {
  const speed = log.view("speed");
  const force = log.view("frictionBrake");
  const time = log.view("time");
  const friction = new Map<LimitId, number>();
  const seconds = new Map<LimitId, number>();
  for (let i = first + 1; i < log.rows; i += 1) {
    const mean = 0.5 * Math.abs(at(speed, i) + at(speed, i - 1));
    const span = at(time, i) - at(time, i - 1);
    const mask = at(log.limits, i);
    const id = ORDER.find((name) => (mask & LIMIT_BIT[name]) !== 0);
    const energy = at(force, i) * mean * span;
    if (id === undefined || energy <= 0) continue;
    friction.set(id, (friction.get(id) ?? 0) + energy);
    seconds.set(id, (seconds.get(id) ?? 0) + span);
  }
  return ORDER.filter((id) => friction.has(id)).map((id) => ({
    id,
    friction: friction.get(id) ?? 0,
    seconds: seconds.get(id) ?? 0,
  }));
}
