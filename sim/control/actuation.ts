import { realAt } from "../../shared/at.ts";
import { drawCurrent, move, openBattery, release } from "../drivetrain/plant.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { LIMIT_BIT } from "../limits.ts";
import { LAST_OF_STOP, LAST_TORQUE, STOP_DECELERATION, SUN_CONTROL_SHARE } from "../settings.ts";
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
  release(p, s);
  engineTorque(p, s, c);
  sunTorque(p, s, c);
  outputTorque(p, s, c);
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
  let brake = c.enginePower / Math.max(w, p.idleSpeed);
  if (brake > p.easyTorque) brake = mostEngineTorque(p, s, w, brake);
  if (w > p.engineTop) {
    brake = -s.frictionBound;
    s.limits |= ENGINE_SPEED;
  }
  // The step is driven by the mean of the lagging torque over it, so that the lag does not depend on the step.
  const wanted = Math.max(0, brake + s.frictionBound);
  // Fuel cut: the last of the lag is not burnt on for ever.
  if (wanted === 0 && c.laggedTorque < LAST_TORQUE) c.laggedTorque = 0;
  const change = wanted - c.laggedTorque;
  s.indicatedTorque = c.laggedTorque + p.lagMean * change;
  c.laggedTorque += p.lag * change;
}

/** A brake torque within full load, and within what the sun machine can bear: it must hold 1/(1 + k) of it. */
function mostEngineTorque(p: Prepared, s: PlantState, w: number, asked: number): number {
  let brake = asked;
  const place = w * p.fullPerStep;
  const i = place >= p.fullLast ? p.fullLast - 1 : Math.floor(place);
  const low = realAt(p.fullLoad, i);
  const full = low + (realAt(p.fullLoad, i + 1) - low) * (place - i);
  if (brake > full) {
    brake = full;
    s.limits |= FULL_LOAD;
  }
  const sun = Math.abs(p.k1 * w - p.k * s.ringSpeed);
  const most = p.sunPeakTorque * sun > p.sunPeakPower ? p.sunPeakPower / sun : p.sunPeakTorque;
  const bearable = SUN_CONTROL_SHARE * p.k1 * most;
  if (brake > bearable) {
    brake = bearable;
    s.limits |= TORQUE_CUT;
  }
  return brake;
}

/** The sun machine holds the engine at its target speed: inverse dynamics plus feedback, within its limits. */
function sunTorque(p: Prepared, s: PlantState, c: ControlState): void {
  const wc = s.carrierSpeed;
  let torque: number;
  const ending = c.engineMode === ENGINE.stopping && wc < LAST_OF_STOP;
  if (c.engineMode === ENGINE.off || ending) {
    // Carries its own inertia, so that the standing engine is not turned by the speeding ring. The last of a stop is
    // left to friction, which ends at rest and not a hair above it.
    torque = -p.sunInertia * p.k * s.ringAcceleration - c.clutchTorque;
  } else {
    let acceleration = c.carrierTargetRate;
    acceleration += (c.carrierTarget + acceleration * c.within - wc) * p.speedGain;
    if (c.engineMode === ENGINE.stopping) acceleration = -Math.min(STOP_DECELERATION, wc * p.perH);
    const engine = s.indicatedTorque - s.frictionBound;
    const mesh = -(engine - p.carrierInertia * acceleration + s.meshLossTorque) * p.perK1;
    torque = mesh + s.meshLossTorque + p.sunInertia * (p.k1 * acceleration - p.k * s.ringAcceleration);
  }
  const sun = p.k1 * wc - p.k * s.ringSpeed;
  const w = Math.abs(sun);
  const size = Math.abs(torque);
  if (size > p.sunPeakTorque || size * w > p.sunPeakPower) {
    const most = p.sunPeakTorque * w > p.sunPeakPower ? p.sunPeakPower / w : p.sunPeakTorque;
    torque = torque > 0 ? most : -most;
    // A start at full torque is no limit worth a note.
    if (c.engineMode !== ENGINE.cranking) s.limits |= SUN_TORQUE;
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
  // Torque T with i T − loss(|T|) = need: the reduction's loss is known by sign.
  const loss = p.reductionLoss * s.gearFade;
  const perLess = 1 / (p.reduction - loss);
  const perMore = 1 / (p.reduction + loss);
  // Mesh torque acting on the ring, from the carrier acceleration that the sun torque found will bring about.
  const sunSide = s.sunTorque - s.meshLossTorque + p.sunInertia * p.k * s.ringAcceleration;
  let carrier = 0;
  if (s.carrierSpeed > 0 || c.engineMode !== ENGINE.off) {
    const pull = s.indicatedTorque - s.frictionBound + p.k1 * sunSide + s.meshLossTorque;
    if (s.carrierSpeed > 0 || pull > 0) carrier = pull * p.perCarrierInertia;
  }
  const mesh = sunSide - p.sunInertia * p.k1 * carrier;
  const other = p.k * mesh + s.driveLossTorque + p.ringSideInertia * s.ringAcceleration;
  const braking = c.braking === 1;
  const wanted = braking ? c.wheelForceAsk * c.regenShare : c.wheelForceAsk;
  const need = wanted * p.metresPerRing + other;
  let torque = need * (need > 0 ? perLess : perMore);
  const out = p.reduction * wr;
  const w = Math.abs(out);
  const size = Math.abs(torque);
  const clipped = size > p.outPeakTorque || size * w > p.outPeakPower;
  if (clipped) {
    const most = p.outPeakTorque * w > p.outPeakPower ? p.outPeakPower / w : p.outPeakTorque;
    torque = torque > 0 ? most : -most;
    s.limits |= braking ? OUTPUT_TORQUE : OUTPUT_TORQUE | UNMET;
  }
  if (w >= p.outTop && torque * out > 0) {
    torque = 0;
    s.limits |= OUTPUT_SPEED;
  }
  s.outputTorque = torque;
  s.brakeForce = c.holdForce;
  if (braking) {
    brake(p, s, c, p.reduction * torque - loss * Math.abs(torque) - other);
    if (!clipped && s.brakeForce > 0 && c.regenShare === p.axleBrakingShare) s.limits |= AXLE_SHARE;
  }
  s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
}

/** Friction brakes for what the driven axle's torque at the ring, N·m, leaves of the braking asked. */
function brake(p: Prepared, s: PlantState, c: ControlState, axle: number): void {
  const force = axle * p.perMetresPerRing;
  const rest = c.wheelForceAsk < 0 ? force - c.wheelForceAsk : c.wheelForceAsk - force;
  if (rest <= 0) return;
  s.brakeForce = Math.min(p.brakeMost, s.brakeForce + rest);
}
