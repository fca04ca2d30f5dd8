import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { lookUp } from "../drivetrain/table.ts";
import { LIMIT_BIT } from "../limits.ts";
import {
  CHARGE_PLAN,
  CONTROL_PERIOD,
  CRANK_ACCELERATION,
  ENGINE_BRAKING_RATE,
  FIRING_SHARE,
  POWER_FALL,
  SOC_FORCED_START,
  SOC_NO_CHARGE,
  START_FUEL_TIME,
  SUN_SPEED_SHARE,
} from "../settings.ts";
import { holdBackSpeed, holdsBack } from "./hold-back.ts";
import { type ControlState, ENGINE } from "./state.ts";
import type { StrategyAnswer, StrategyInput } from "./strategy.ts";

/**
 * Between strategy and actuation: keeps charge, speeds and the power for a start whatever the strategy says, runs the
 * engine's start and stop, and turns the power asked into a target speed. Every override is logged.
 */
export function supervise(
  p: Prepared,
  s: PlantState,
  c: ControlState,
  now: StrategyInput,
  answer: StrategyAnswer,
): void {
  checkAnswer(p, s, answer);
  const on = decideOn(p, s, c, now, answer.engineOn && c.electricOnly === 0);
  c.modeTime += CONTROL_PERIOD;
  runEngine(p, s, c, on);
  if (c.engineMode === ENGINE.running) {
    c.enginePower = nextPower(p, s, c, now, answer.enginePower);
    steerSpeed(p, s, c, now, answer.engineSpeed);
  } else if (c.engineMode === ENGINE.off || c.engineMode === ENGINE.stopping) {
    c.enginePower = 0;
  }
}

function checkAnswer(p: Prepared, s: PlantState, answer: StrategyAnswer): void {
  const power = Number.isFinite(answer.enginePower) ? answer.enginePower : 0;
  const speed = Number.isFinite(answer.engineSpeed) ? answer.engineSpeed : 0;
  const kept = Math.min(p.enginePower, Math.max(-p.enginePower, power));
  const keptSpeed = speed <= 0 ? 0 : Math.min(p.engineTop, Math.max(p.idleSpeed, speed));
  if (kept !== answer.enginePower || (keptSpeed !== answer.engineSpeed && answer.engineSpeed !== 0)) {
    s.limits |= LIMIT_BIT["strategy-answer"];
  }
  answer.enginePower = kept;
  answer.engineSpeed = keptSpeed;
}

/** Whether the engine is to be on, overrides included. */
function decideOn(p: Prepared, s: PlantState, c: ControlState, now: StrategyInput, wanted: boolean): boolean {
  const sunAtRest = Math.abs(p.k * s.ringSpeed);
  const running = c.engineMode === ENGINE.running || c.engineMode === ENGINE.cranking;
  const ease = running ? 0.97 : 1;
  const fast =
    sunAtRest > SUN_SPEED_SHARE * p.sunTop * ease || Math.abs(now.speed) > p.control.electricTopSpeed * ease;
  const low = now.soc < p.socFloor + SOC_FORCED_START * (c.forced === 1 ? 1.5 : 1);
  const unsure = now.batteryOut < p.control.crankReserve;
  c.holdBack = holdsBack(p, s, c, now, wanted) ? 1 : 0;
  if (c.holdBack === 1) {
    if (!wanted) s.limits |= LIMIT_BIT["engine-holds-back"];
    return true;
  }
  c.forced = low ? 1 : 0;
  if (running) return wanted || !mayStop(p, s, c, fast, low);
  if (low) s.limits |= wanted ? 0 : LIMIT_BIT["start-charge"];
  if (fast) s.limits |= wanted ? 0 : LIMIT_BIT["start-sun-speed"];
  if (unsure) s.limits |= wanted ? 0 : LIMIT_BIT["start-crank-reserve"];
  if (low || fast || unsure) return true;
  if (wanted && c.modeTime < p.control.minOffTime) {
    s.limits |= LIMIT_BIT["start-refused-time"];
    return false;
  }
  return wanted;
}

function mayStop(p: Prepared, s: PlantState, c: ControlState, fast: boolean, low: boolean): boolean {
  if (fast) s.limits |= LIMIT_BIT["stop-refused-speed"];
  if (low) s.limits |= LIMIT_BIT["start-charge"];
  const cold = s.coolant < p.thermal.noStopBelow;
  if (cold) s.limits |= LIMIT_BIT["stop-refused-cold"];
  const young = c.modeTime < p.control.minOnTime;
  if (young) s.limits |= LIMIT_BIT["stop-refused-time"];
  return !(fast || low || cold || young);
}

/** Off, cranking, running, stopping: at most one change a period. */
function runEngine(p: Prepared, s: PlantState, c: ControlState, on: boolean): void {
  const w = s.carrierSpeed;
  // Less than half a period left is rounding, not fuel.
  c.startFuelLeft = c.startFuelLeft < 1.5 * CONTROL_PERIOD ? 0 : c.startFuelLeft - CONTROL_PERIOD;
  switch (c.engineMode) {
    case ENGINE.off:
      if (on) crank(s, c);
      break;
    case ENGINE.cranking:
      if (!on) change(c, ENGINE.stopping);
      else if (w >= FIRING_SHARE * p.idleSpeed) fire(p, s, c);
      else {
        c.carrierTarget += c.carrierTargetRate * CONTROL_PERIOD;
        c.carrierTargetRate = c.carrierTarget < 1.1 * p.idleSpeed ? CRANK_ACCELERATION : 0;
      }
      break;
    case ENGINE.running:
      if (!on) change(c, ENGINE.stopping);
      else if (c.unlit === 1 && c.holdBack === 0) light(c);
      break;
    case ENGINE.stopping:
      if (on) crank(s, c);
      // The time off counts from the stop.
      else if (w === 0) c.engineMode = ENGINE.off;
      break;
  }
  s.firing = c.engineMode === ENGINE.running ? 1 : 0;
  s.startFuelPower = c.startFuelLeft > 0 && s.firing === 1 ? p.startFuel / START_FUEL_TIME : 0;
}

function change(c: ControlState, mode: 0 | 1 | 2 | 3): void {
  c.engineMode = mode;
  c.modeTime = 0;
}

function crank(s: PlantState, c: ControlState): void {
  change(c, ENGINE.cranking);
  c.carrierTarget = s.carrierSpeed;
  c.carrierTargetRate = CRANK_ACCELERATION;
}

function fire(p: Prepared, s: PlantState, c: ControlState): void {
  change(c, ENGINE.running);
  c.unlit = 1;
  c.enginePower = c.holdBack === 1 ? -p.enginePower : 0;
  if (c.holdBack === 0) light(c);
  c.carrierTarget = s.carrierSpeed;
  c.carrierTargetRate = 0;
}

/** The first fuel since the engine stood: later than its turning when that was to hold the vehicle back. */
function light(c: ControlState): void {
  c.unlit = 0;
  c.starts += 1;
  c.startFuelLeft = START_FUEL_TIME;
}

/** Engine power for this period: the strategy's, within what battery and rise allow. */
function nextPower(p: Prepared, s: PlantState, c: ControlState, now: StrategyInput, wanted: number): number {
  const wheels = now.wheelPower >= 0 ? now.demand : now.wheelPower * c.regenShare + p.auxiliaryPower;
  const full = now.soc > p.socCeiling - SOC_NO_CHARGE;
  const most = Math.max(0, wheels + (full ? 0 : CHARGE_PLAN * now.batteryIn));
  const rise = p.control.enginePowerRise * CONTROL_PERIOD;
  if (c.holdBack === 1) return Math.max(c.enginePower - POWER_FALL * rise, -p.enginePower);
  let power = wanted;
  // Near the floor the engine carries the load and charges, whatever the strategy says: the auxiliaries never rest.
  const least = c.forced === 1 ? Math.min(most, wheels + p.control.leastEnginePower) : 0;
  if (power < least) {
    power = least;
    s.limits |= LIMIT_BIT["charge-low"];
  }
  if (power > most) {
    power = most;
    s.limits |= full ? LIMIT_BIT["charge-high"] : LIMIT_BIT["engine-power-cut"];
  }
  // Below motored power the fuel is cut already: a rise begins there.
  const from = Math.max(c.enginePower, -s.frictionBound * s.carrierSpeed);
  return Math.min(from + rise, Math.max(from - POWER_FALL * rise, power));
}

/** Target speed of the carrier at the end of the period: the best line's or the strategy's, inside the sun's window. */
function steerSpeed(p: Prepared, s: PlantState, c: ControlState, now: StrategyInput, wanted: number): void {
  const sun = SUN_SPEED_SHARE * p.sunTop;
  const low = Math.max(p.idleSpeed, (p.k * s.ringSpeed - sun) / p.k1);
  const high = Math.min(p.engineTop * 0.99, (p.k * s.ringSpeed + sun) / p.k1);
  let free = wanted > 0 ? wanted : lookUp(p.line, c.enginePower);
  if (c.holdBack === 1) free = holdBackSpeed(p, c, s, now);
  const target = Math.max(low, Math.min(high, free));
  if (target !== free) s.limits |= LIMIT_BIT["engine-speed"];
  c.carrierTarget += c.carrierTargetRate * CONTROL_PERIOD;
  const most =
    c.holdBack === 1 ? Math.min(ENGINE_BRAKING_RATE, p.control.engineSpeedRate) : p.control.engineSpeedRate;
  const rate = (target - c.carrierTarget) / CONTROL_PERIOD;
  c.carrierTargetRate = Math.min(most, Math.max(-most, rate));
}
