import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { lookUp } from "../drivetrain/table.ts";
import {
  BRAKING_EFFICIENCY,
  CHARGE_PLAN,
  CONTROL_PERIOD,
  EMPTIED_BATTERY_SHARE,
  ENGINE_BRAKING_PATIENCE,
  ENGINE_BRAKING_POWER,
  ENGINE_BRAKING_RELEASE,
  ENGINE_BRAKING_SPEED,
  FULL_BATTERY_SHARE,
} from "../settings.ts";
import { type ControlState, ENGINE } from "./state.ts";
import type { StrategyInput } from "./strategy.ts";

/**
 * A long descent with a full battery: the engine, turned without fuel, takes what the battery cannot. It comes in when
 * a full battery has been braking for a while, and goes when the foot has been off for as long, when the engine is to
 * drive, or when the battery has clearly room again.
 * @param wanted whether the strategy asks for the engine
 * @returns whether the engine is to hold the vehicle back for this period
 */
export function holdsBack(
  p: Prepared,
  s: PlantState,
  c: ControlState,
  now: StrategyInput,
  wanted: boolean,
): boolean {
  const braking = -now.wheelPower;
  const room = s.currentIn / p.currentMostIn;
  const holding = c.holdBack === 1;
  const change = holding
    ? braking < ENGINE_BRAKING_RELEASE
    : braking > ENGINE_BRAKING_POWER && room < FULL_BATTERY_SHARE;
  c.holdBackTime = change ? c.holdBackTime + CONTROL_PERIOD : 0;
  const lasted = c.holdBackTime > ENGINE_BRAKING_PATIENCE;
  if (holding) return !(lasted || (wanted && braking <= 0) || room > EMPTIED_BATTERY_SHARE);
  const stands = c.engineMode === ENGINE.off || c.engineMode === ENGINE.stopping;
  return lasted && !(stands && c.modeTime < p.control.minOffTime);
}

/**
 * Speed at which the engine's friction takes all that the driven axle's braking gives beyond auxiliaries and battery:
 * then the battery charges as it may and nothing is taken out of it to turn the engine. What friction cannot take up to
 * the greatest speed is left to the brakes.
 * @returns rad/s
 */
export function holdBackSpeed(p: Prepared, c: ControlState, s: PlantState, now: StrategyInput): number {
  const axle = -now.wheelPower * c.regenShare * BRAKING_EFFICIENCY;
  const surplus = axle - s.auxiliaryPower - CHARGE_PLAN * now.batteryIn;
  const speed = lookUp(p.motored, surplus / s.coldFactor);
  return Math.min(ENGINE_BRAKING_SPEED * p.engineTop, Math.max(p.idleSpeed, speed));
}
