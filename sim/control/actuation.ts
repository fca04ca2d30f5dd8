import { at } from "../../shared/at.ts";
import { drawCurrent, move, openBattery, release } from "../drivetrain/plant.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { LIMIT_BIT } from "../limits.ts";
import { STOP_DECELERATION } from "../settings.ts";
import { cutToBattery, overBattery } from "./dc-limits.ts";
import { type ControlState, ENGINE } from "./state.ts";

const SUN_TORQUE = LIMIT_BIT["sun-torque"];
const SUN_SPEED = LIMIT_BIT["sun-speed"];
const OUTPUT_TORQUE = LIMIT_BIT["output-torque"];
const OUTPUT_SPEED = LIMIT_BIT["output-speed"];
const FULL_LOAD = LIMIT_BIT["engine-full-load"];
const ENGINE_SPEED = LIMIT_BIT["engine-speed"];
const TORQUE_CUT = LIMIT_BIT["engine-torque-cut"];
const UNMET = LIMIT_BIT["demand-unmet"];
const AXLE_SHARE = LIMIT_BIT["axle-share"];

/**
 * The torques of one step, every limit resolved here and logged: engine torque, then the sun machine (it holds the
 * carrier at its target), then the output machine (it supplies what the ring lacks), then the friction brakes; then
 * the plant moves, and where the battery's limits are passed, torques are cut and it moves again.
 */
export function actuate(p: Prepared, s: PlantState, c: ControlState): void {
  engineTorque(p, s, c);
  s.brakeForce = 0;
  release(p, s);
  sunTorque(p, s, c);
  outputTorque(p, s, c);
  s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
  move(p, s);
  openBattery(p, s);
  drawCurrent(p, s);
  if (overBattery(p, s)) cutToBattery(p, s, c);
  c.within += p.h;
}

/** Indicated torque: follows what is asked with a first-order lag; nothing while the engine does not fire. */
function engineTorque(p: Prepared, s: PlantState, c: ControlState): void {
  if (c.engineMode !== ENGINE.running) {
    s.indicatedTorque = 0;
    c.laggedTorque = 0;
    return;
  }
  // Speed expected half way through the step: second order in the step.
  const w = Math.max(0, s.carrierSpeed + p.halfH * s.carrierAcceleration);
  const place = w * p.fullPerStep;
  const i = place >= p.fullLast ? p.fullLast - 1 : Math.floor(place);
  const low = at(p.fullLoad, i);
  const full = low + (at(p.fullLoad, i + 1) - low) * (place - i);
  const friction = (p.friction0 + (p.friction1 + p.friction2 * w) * w) * s.coldFactor;
  let brake = c.enginePower / Math.max(w, p.idleSpeed);
  if (brake > full) {
    brake = full;
    s.limits |= FULL_LOAD;
  }
  // The sun machine must bear 1/(1 + k) of the torque, and keep a little for control.
  const sun = Math.abs(p.k1 * w - p.k * s.ringSpeed);
  const most = p.sunPeakTorque * sun > p.sunPeakPower ? p.sunPeakPower / sun : p.sunPeakTorque;
  const bearable = 0.97 * p.k1 * most;
  if (brake > bearable) {
    brake = bearable;
    s.limits |= TORQUE_CUT;
  }
  if (w > p.engineTop) {
    brake = -friction;
    s.limits |= ENGINE_SPEED;
  }
  // The step is driven by the mean of the lagging torque over it, so that the lag does not depend on the step.
  const change = Math.max(0, brake + friction) - c.laggedTorque;
  s.indicatedTorque = c.laggedTorque + p.lagMean * change;
  c.laggedTorque += p.lag * change;
}

/** Acceleration of the carrier that the sun machine is to give, rad/s². */
function carrierAcceleration(p: Prepared, s: PlantState, c: ControlState): number {
  const w = s.carrierSpeed;
  if (c.engineMode === ENGINE.stopping) return -Math.min(STOP_DECELERATION, w * p.perH);
  const target = c.carrierTarget + c.carrierTargetRate * c.within;
  return c.carrierTargetRate + (target - w) * p.speedGain;
}

/** The sun machine holds the engine at its target speed: inverse dynamics plus feedback, within its limits. */
function sunTorque(p: Prepared, s: PlantState, c: ControlState): void {
  const sun = p.k1 * s.carrierSpeed - p.k * s.ringSpeed;
  let torque: number;
  if (c.engineMode === ENGINE.off) {
    // Carries its own inertia, so that the standing engine is not turned by the speeding ring.
    torque = s.carrierSpeed > 0 ? 0 : -p.sunInertia * p.k * s.ringAcceleration - c.clutchTorque;
  } else {
    const acceleration = carrierAcceleration(p, s, c);
    const moving = s.carrierSpeed > 0 || s.firing === 1;
    const engine = s.indicatedTorque - (moving ? s.frictionBound : p.breakaway * s.coldFactor);
    const mesh = -(engine - p.carrierInertia * acceleration + s.meshLossTorque) / p.k1;
    torque = mesh + s.meshLossTorque + p.sunInertia * (p.k1 * acceleration - p.k * s.ringAcceleration);
  }
  const w = Math.abs(sun);
  const most = p.sunPeakTorque * w > p.sunPeakPower ? p.sunPeakPower / w : p.sunPeakTorque;
  if (torque > most) {
    torque = most;
    s.limits |= SUN_TORQUE;
  } else if (torque < -most) {
    torque = -most;
    s.limits |= SUN_TORQUE;
  }
  if (w >= p.sunTop && torque * sun > 0) {
    torque = 0;
    s.limits |= SUN_SPEED;
  }
  s.sunTorque = torque;
}

/** The output machine gives the ring what it lacks; the friction brakes give the rest of a braking demand. */
function outputTorque(p: Prepared, s: PlantState, c: ControlState): void {
  const wr = s.ringSpeed;
  const ask = c.wheelForceAsk;
  const braking = c.braking === 1;
  const wanted = braking ? ask * c.regenShare : ask;
  // Mesh torque acting on the ring, from the carrier acceleration that the sun torque found will bring about.
  let carrier = 0;
  if (s.carrierSpeed > 0 || c.engineMode !== ENGINE.off) {
    const sunSide = s.sunTorque - s.meshLossTorque + p.sunInertia * p.k * s.ringAcceleration;
    const pull = s.indicatedTorque - s.frictionBound + p.k1 * sunSide + s.meshLossTorque;
    carrier = s.carrierSpeed === 0 && pull < 0 ? 0 : pull / (p.carrierInertia + p.k1 * p.k1 * p.sunInertia);
  }
  const mesh = s.sunTorque - s.meshLossTorque - p.sunInertia * (p.k1 * carrier - p.k * s.ringAcceleration);
  const other = p.k * mesh + s.driveLossTorque + p.ringSideInertia * s.ringAcceleration;
  const fade = s.gearFade;
  const need = wanted * p.metresPerRing + other;
  // Torque T with i T − loss(|T|) = need: the reduction's loss is known by sign.
  let torque = need / (p.reduction - (need > 0 ? p.reductionLoss * fade : -p.reductionLoss * fade));
  const out = p.reduction * wr;
  const w = Math.abs(out);
  const most = p.outPeakTorque * w > p.outPeakPower ? p.outPeakPower / w : p.outPeakTorque;
  if (torque > most || torque < -most) {
    torque = torque > most ? most : -most;
    s.limits |= OUTPUT_TORQUE;
    if (!braking) s.limits |= UNMET;
  }
  if (w >= p.outTop && torque * out > 0) {
    torque = 0;
    s.limits |= OUTPUT_SPEED;
  }
  s.outputTorque = torque;
  if (braking) {
    const axle = p.reduction * torque - p.reductionLoss * Math.abs(torque) * fade - other;
    const force = axle / p.metresPerRing;
    const rest = ask < 0 ? force - ask : ask - force;
    if (rest > 0) s.limits |= AXLE_SHARE;
    s.brakeForce = Math.min(p.brakeMost, Math.max(0, rest));
  }
  s.brakeForce += c.holdForce;
}
