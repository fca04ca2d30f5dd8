import { drawCurrent, move } from "../drivetrain/plant.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { LIMIT_BIT } from "../limits.ts";
import { DC_MARGIN, DC_ROUNDS } from "../settings.ts";
import { type ControlState, ENGINE } from "./state.ts";

const DISCHARGE = LIMIT_BIT["battery-discharge"];
const CHARGE = LIMIT_BIT["battery-charge"];
const UNMET = LIMIT_BIT["demand-unmet"];
const POWER_CUT = LIMIT_BIT["engine-power-cut"];
const SUN_CUT = LIMIT_BIT["sun-machine-cut"];

/** True when the step's battery power passes a limit of current or voltage. */
export const overBattery = (p: Prepared, s: PlantState): boolean =>
  s.current > s.currentOut || s.current < -s.currentIn || s.voltage < p.packLeast || s.voltage > p.packMost;

/** Battery power at its discharge limit (current or least voltage), W; a hair inside it. */
function mostOut(p: Prepared, s: PlantState): number {
  const r = s.sourceResistance + p.resistanceDischarge;
  const byVoltage = (s.sourceVoltage - p.packLeast) / r;
  const current = Math.max(0, Math.min(s.currentOut, byVoltage)) * (1 - DC_MARGIN);
  return (s.sourceVoltage - r * current) * current;
}

/** Battery power at its charge limit (current or greatest voltage), W, ≤ 0; a hair inside it. */
function mostIn(p: Prepared, s: PlantState): number {
  const r = s.sourceResistance + p.resistanceCharge;
  const byVoltage = (p.packMost - s.sourceVoltage) / r;
  const current = Math.max(0, Math.min(s.currentIn, byVoltage)) * (1 - DC_MARGIN);
  return -(s.sourceVoltage + r * current) * current;
}

/** Slope of a machine's electrical power over its torque, W/(N·m). */
const slope = (c1: number, c4: number, torque: number, speed: number): number =>
  speed + 2 * c1 * torque + (torque >= 0 ? c4 : -c4) * Math.abs(speed);

/** A torque moved towards zero (never past it) so that the power changes by `change`. */
function towardsZero(torque: number, perTorque: number, change: number): number {
  const next = perTorque === 0 ? 0 : torque + change / perTorque;
  if (torque >= 0) return next < torque ? Math.max(0, next) : torque;
  return next > torque ? Math.min(0, next) : torque;
}

/** Cuts the output machine; on braking the friction brakes take over what it gives up. True if it changed. */
function cutOutput(p: Prepared, s: PlantState, c: ControlState, change: number): boolean {
  const before = s.outputTorque;
  const perTorque = slope(p.out1, p.out4, before, s.outputMean) * s.awake;
  const after = towardsZero(before, perTorque, change);
  if (after === before) return false;
  s.outputTorque = after;
  if (c.braking === 1) {
    const force = (Math.abs(before - after) * p.reduction) / p.metresPerRing;
    s.brakeForce = Math.min(p.brakeMost, s.brakeForce + force);
    s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
  } else {
    s.limits |= UNMET;
  }
  return true;
}

/** Cuts the sun machine; the engine's power is cut with it from the next step on. True if it changed. */
function cutSun(p: Prepared, s: PlantState, c: ControlState, change: number): boolean {
  const before = s.sunTorque;
  const after = towardsZero(before, slope(p.sun1, p.sun4, before, s.sunMean) * s.awake, change);
  if (after === before) return false;
  s.sunTorque = after;
  s.limits |= SUN_CUT;
  if (change > 0 && c.engineMode === ENGINE.running && c.enginePower > 0) {
    c.enginePower = Math.max(0, c.enginePower - change);
    s.limits |= POWER_CUT;
  }
  return true;
}

/**
 * Cuts torques until the battery is within its limits: the output machine first, then the sun machine (and with it
 * the engine's power). The plant moves again after each cut, so the limit holds for the power actually drawn.
 */
export function cutToBattery(p: Prepared, s: PlantState, c: ControlState): void {
  const discharging = s.batteryPower > 0;
  s.limits |= discharging ? DISCHARGE : CHARGE;
  const target = discharging ? mostOut(p, s) : mostIn(p, s);
  let output = true;
  for (let round = 0; round < DC_ROUNDS; round += 1) {
    const change = target - s.batteryPower;
    if (discharging ? change >= 0 : change <= 0) break;
    if (output) output = cutOutput(p, s, c, change);
    if (!output && !cutSun(p, s, c, change)) break;
    move(p, s);
  }
  drawCurrent(p, s);
}
