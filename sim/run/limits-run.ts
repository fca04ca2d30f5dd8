import { kmhToMps } from "../../shared/units.ts";
import { PedalDriver } from "../control/pedals.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { CONTROL_PERIOD } from "../settings.ts";
import { checkClosure } from "./simulate.ts";
import { Simulation } from "./simulation.ts";

/** What the vehicle can do at most. Not a number where it cannot be reached. */
export interface LimitsResult {
  /** s from the pedal to 100 km/h */
  readonly zeroTo100: number;
  /** m/s, mean of the last ten seconds of three minutes at full throttle */
  readonly topSpeed: number;
  /** rise over run: the steepest road on which it pulls away from rest to 10 km/h */
  readonly steepestGrade: number;
  /** m/s: greatest speed reached on the level with the engine at rest */
  readonly topElectricSpeed: number;
}

const HUNDRED = kmhToMps(100);
const TEN = kmhToMps(10);
const TOP_SECONDS = 180;
const PULL_SECONDS = 20;
const STEEPEST_TRIED = 1.2;

function fullThrottle(
  vehicle: Vehicle,
  strategy: StrategyDefinition,
  options: RunOptions,
  grade: number,
): Simulation {
  const driver = new PedalDriver();
  driver.accelerator = 1;
  driver.grade = grade;
  return new Simulation(vehicle, driver, strategy, options);
}

const speedOf = (run: Simulation): number => run.s.ringSpeed * run.p.metresPerRing;

/** Seconds from the pedal to a speed, linear between two control periods; not a number if it takes over 90 s. */
function timeTo(run: Simulation, target: number): number {
  let before = 0;
  while (run.time < 90) {
    run.tick();
    const now = speedOf(run);
    if (now >= target) return run.time - CONTROL_PERIOD * ((now - target) / (now - before));
    before = now;
  }
  return Number.NaN;
}

function topSpeed(run: Simulation): number {
  while (run.time < TOP_SECONDS - 10) run.tick();
  const from = run.b.distance;
  while (run.time < TOP_SECONDS) run.tick();
  checkClosure(run);
  return (run.b.distance - from) / 10;
}

function pullsAway(
  vehicle: Vehicle,
  strategy: StrategyDefinition,
  options: RunOptions,
  grade: number,
): boolean {
  const run = fullThrottle(vehicle, strategy, options, grade);
  while (run.time < PULL_SECONDS) {
    run.tick();
    if (speedOf(run) >= TEN) return true;
  }
  return false;
}

function steepestGrade(vehicle: Vehicle, strategy: StrategyDefinition, options: RunOptions): number {
  if (!pullsAway(vehicle, strategy, options, 0)) return Number.NaN;
  let low = 0;
  let high = STEEPEST_TRIED;
  for (let i = 0; i < 14; i += 1) {
    const middle = (low + high) / 2;
    if (pullsAway(vehicle, strategy, options, middle)) low = middle;
    else high = middle;
  }
  return low;
}

function topElectric(vehicle: Vehicle, strategy: StrategyDefinition, options: RunOptions): number {
  const driver = new PedalDriver();
  driver.accelerator = 1;
  driver.electricOnly = 1;
  const start = Math.max(options.startSoc ?? 0, vehicle.battery.socCeiling - 0.02);
  const run = new Simulation(vehicle, driver, strategy, { ...options, startSoc: start });
  let top = 0;
  while (run.time < TOP_SECONDS) {
    run.tick();
    if (run.c.engineMode !== 0) break;
    top = Math.max(top, speedOf(run));
  }
  return top;
}

/**
 * Full throttle, top speed, steepest grade and top electric speed, all by simulation.
 * @param options as for a run; the start charge counts
 */
export function limitsRun(
  vehicle: Vehicle,
  strategy: StrategyDefinition,
  options: RunOptions = {},
): LimitsResult {
  return {
    zeroTo100: timeTo(fullThrottle(vehicle, strategy, options, 0), HUNDRED),
    topSpeed: topSpeed(fullThrottle(vehicle, strategy, options, 0)),
    steepestGrade: steepestGrade(vehicle, strategy, options),
    topElectricSpeed: topElectric(vehicle, strategy, options),
  };
}
