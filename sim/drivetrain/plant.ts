import { realAt } from "../../shared/at.ts";
import { LIMIT_BIT } from "../limits.ts";
import { GEAR_SMOOTHING } from "../settings.ts";
import { solveContacts } from "./contacts.ts";
import { type EngineMap, LEAST_EFFICIENCY } from "./engine.ts";
import { MESH_SMOOTHING } from "./gear-set.ts";
import type { Prepared } from "./prepared.ts";
import type { PlantState } from "./state.ts";

/**
 * One step of the plant for given torques (held over the step), as a short list of calls: `release` once, then
 * `move` and `drawCurrent`, repeated by the actuation while it cuts torques, then `burn`, `charge` and `settle`.
 * All work is torque × mean of the speeds at the step's ends, so that work and kinetic energy agree to rounding.
 */

/** Torques of the step that do not depend on the machines: losses by last step's load, air, engine friction. */
export function release(p: Prepared, s: PlantState): void {
  const wc = s.carrierSpeed;
  const wr = s.ringSpeed;
  const relative = p.k * (wc - wr);
  s.meshLossTorque = (p.meshLoss * Math.abs(s.meshTorque) * relative) / (Math.abs(relative) + MESH_SMOOTHING);
  s.gearFade = wr / (Math.abs(wr) + GEAR_SMOOTHING);
  s.driveLossTorque = p.driveLoss * Math.abs(s.driveTorque) * s.gearFade;
  // Drag and engine friction at the speed expected half way through the step: second order in the step.
  const air = (wr + p.halfH * s.ringAcceleration) * p.metresPerRing + p.headWind;
  s.airForce = (p.dragB + p.dragC * Math.abs(air)) * air;
  if (wc > 0) {
    const w = Math.max(0, wc + p.halfH * s.carrierAcceleration);
    s.frictionBound = (p.friction0 + (p.friction1 + p.friction2 * w) * w) * s.coldFactor;
  } else {
    s.frictionBound = p.breakaway * s.coldFactor;
  }
}

/**
 * End speeds, reactions and mean speeds for the present machine torques and brake force; then both machines'
 * electrical power.
 */
export function move(p: Prepared, s: PlantState): void {
  const wc = s.carrierSpeed;
  const wr = s.ringSpeed;
  s.reductionLossTorque = p.reductionLoss * Math.abs(s.outputTorque) * s.gearFade;
  const mesh = p.k * s.meshLossTorque;
  s.freeCarrier = s.indicatedTorque + p.k1 * s.sunTorque - mesh;
  s.freeRing =
    p.reduction * s.outputTorque -
    p.k * s.sunTorque +
    mesh -
    s.reductionLossTorque -
    s.driveLossTorque -
    (s.airForce + s.gradeForce) * p.metresPerRing;
  // The usual case first: both shafts turn on and friction opposes them.
  const ring = wr > 0 ? -s.ringBound : s.ringBound;
  const qc = s.freeCarrier - s.frictionBound;
  const qr = s.freeRing + ring;
  const carrierEnd = wc + p.h * (p.inverseCc * qc + p.inverseCr * qr);
  const ringEnd = wr + p.h * (p.inverseCr * qc + p.inverseRr * qr);
  if (wc > 0 && carrierEnd >= 0 && ((wr > 0 && ringEnd >= 0) || (wr < 0 && ringEnd <= 0))) {
    s.carrierEnd = carrierEnd;
    s.ringEnd = ringEnd;
    s.carrierReaction = -s.frictionBound;
    s.ringReaction = ring;
    s.carrierHeld = 0;
    s.ringHeld = 0;
  } else if (wc !== 0 || wr === 0 || !glide(p, s, ring)) {
    solveContacts(p, s);
    if (s.carrierReaction > 0 && wc > 0) easeStop(p, s);
  }
  measureMachines(p, s);
}

/** The other usual case: the engine stands, held by its breakaway, and the ring turns on. False if not so. */
function glide(p: Prepared, s: PlantState, ring: number): boolean {
  const qr = s.freeRing + ring;
  const carrier = -s.freeCarrier - (p.inverseCr * qr) / p.inverseCc;
  const ringEnd = s.ringSpeed + p.h * (p.inverseCr * (s.freeCarrier + carrier) + p.inverseRr * qr);
  if (carrier < -s.frictionBound || ringEnd * s.ringSpeed < 0) return false;
  s.carrierEnd = 0;
  s.ringEnd = ringEnd;
  s.carrierReaction = carrier;
  s.ringReaction = ring;
  s.carrierHeld = 1;
  s.ringHeld = 0;
  return true;
}

/**
 * The sun machine brings the engine to rest without bouncing it off its stop: its torque is eased until the stop
 * bears nothing, as far as its own limit and a turning ring allow.
 */
function easeStop(p: Prepared, s: PlantState): void {
  if (s.ringHeld === 1) return;
  const gain = p.inverseCc * p.k1 - p.inverseCr * p.k;
  const change = (s.carrierReaction * p.inverseCc) / gain;
  const torque = s.sunTorque + change;
  const sun = Math.abs(p.k1 * s.carrierSpeed - p.k * s.ringSpeed);
  if (Math.abs(torque) > p.sunPeakTorque || Math.abs(torque) * sun > p.sunPeakPower) return;
  s.sunTorque = torque;
  s.freeCarrier += p.k1 * change;
  s.freeRing -= p.k * change;
  solveContacts(p, s);
}

function measureMachines(p: Prepared, s: PlantState): void {
  const c = 0.5 * (s.carrierSpeed + s.carrierEnd);
  const r = 0.5 * (s.ringSpeed + s.ringEnd);
  const sun = p.k1 * c - p.k * r;
  const out = p.reduction * r;
  s.carrierMean = c;
  s.ringMean = r;
  s.sunMean = sun;
  s.outputMean = out;
  const t = s.sunTorque;
  const w = Math.abs(sun);
  s.sunLoss = s.awake * (p.sun0 + p.sun1 * t * t + (p.sun2 + p.sun3 * w * w + p.sun4 * Math.abs(t)) * w);
  s.sunElectric = t * sun + s.sunLoss;
  const u = s.outputTorque;
  const x = Math.abs(out);
  s.outputLoss = s.awake * (p.out0 + p.out1 * u * u + (p.out2 + p.out3 * x * x + p.out4 * Math.abs(u)) * x);
  s.outputElectric = u * out + s.outputLoss;
  s.batteryPower = s.sunElectric + s.outputElectric + s.auxiliaryPower;
}

/** Source voltage and resistance of the pack for this step (midpoint form); they do not depend on the power. */
export function openBattery(p: Prepared, s: PlantState): void {
  const place = s.soc * p.socSteps;
  let i = Math.floor(place);
  if (i < 0) i = 0;
  if (i >= p.socSteps) i = p.socSteps - 1;
  const low = realAt(p.openCircuit, i);
  const rise = realAt(p.openCircuit, i + 1) - low;
  const open = low + rise * (place - i);
  s.openCircuitMid = open;
  s.sourceVoltage = open - s.rcVoltage * p.rcInverse;
  // Half a step's charge moves the open-circuit voltage; the RC pair adds its own share.
  s.sourceResistance = p.halfH * rise * p.stepsPerCharge + p.rcResistance;
}

/**
 * Current and voltage at the present battery power: the small root of P = E I − R I².
 * Beyond the greatest power the source has, the current is set to infinity.
 */
export function drawCurrent(p: Prepared, s: PlantState): void {
  const e = s.sourceVoltage;
  const power = s.batteryPower;
  const ohmic = power >= 0 ? p.resistanceDischarge : p.resistanceCharge;
  const r = s.sourceResistance + ohmic;
  const square = e * e - 4 * r * power;
  s.ohmic = ohmic;
  if (square > 0) {
    s.current = (2 * power) / (e + Math.sqrt(square));
    s.voltage = e - r * s.current;
  } else {
    s.current = Number.POSITIVE_INFINITY;
    s.voltage = 0;
  }
}

/** Fuel power of the step and the engine's torque on the carrier (its reaction while it is held). */
export function burn(p: Prepared, s: PlantState): void {
  s.engineTorque = s.indicatedTorque + s.carrierReaction;
  if (s.indicatedTorque <= 0) {
    s.fuelPower = 0;
    return;
  }
  const w = s.carrierMean;
  const brake = s.engineTorque;
  if (p.map !== null) {
    // The map is that of the warm engine: a cold one's extra friction is a load on it.
    burnMap(p.map, s, w, s.indicatedTorque - s.frictionBound / s.coldFactor);
    return;
  }
  const off = w * p.perBestSpeed - 1;
  let efficiency = p.efficiency * (1 - p.speedFall * off * off);
  if (brake > p.easyLoad) {
    const place = w * p.fullPerStep;
    const i = place >= p.fullLast ? p.fullLast - 1 : Math.floor(place);
    const low = realAt(p.fullLoad, i);
    const full = low + (realAt(p.fullLoad, i + 1) - low) * (place - i);
    const over = Math.max(0, brake / full - p.loadKnee);
    efficiency *= 1 - p.loadFall * over * over;
  }
  s.fuelPower = (s.indicatedTorque * w) / Math.max(LEAST_EFFICIENCY, efficiency);
}

/** Bilinear fuel power of a gridded map; the cursors in the state make the search short. */
function burnMap(map: EngineMap, s: PlantState, speed: number, brake: number): void {
  const least = realAt(map.torque, 0);
  const torque = Math.max(least, brake);
  const rows = map.speed.length - 2;
  const columns = map.torque.length - 2;
  let i = s.mapRow;
  while (i < rows && realAt(map.speed, i + 1) < speed) i += 1;
  while (i > 0 && realAt(map.speed, i) > speed) i -= 1;
  let j = s.mapColumn;
  while (j < columns && realAt(map.torque, j + 1) < torque) j += 1;
  while (j > 0 && realAt(map.torque, j) > torque) j -= 1;
  s.mapRow = i;
  s.mapColumn = j;
  const x = Math.min(
    1,
    Math.max(0, (speed - realAt(map.speed, i)) / (realAt(map.speed, i + 1) - realAt(map.speed, i))),
  );
  const y = Math.min(
    1,
    Math.max(0, (torque - realAt(map.torque, j)) / (realAt(map.torque, j + 1) - realAt(map.torque, j))),
  );
  const base = i * map.torque.length + j;
  const next = base + map.torque.length;
  const below = realAt(map.fuelPower, base) * (1 - y) + realAt(map.fuelPower, base + 1) * y;
  const above = realAt(map.fuelPower, next) * (1 - y) + realAt(map.fuelPower, next + 1) * y;
  const fuel = below + (above - below) * x;
  // Below the map's least torque the fuel falls off with the indicated torque, to nothing at fuel cut.
  s.fuelPower = brake >= least ? fuel : (fuel * s.indicatedTorque) / (least + s.frictionBound / s.coldFactor);
}

/** Moves the battery through the step: means of its inner voltages, then charge and RC voltage at the step's end. */
export function charge(p: Prepared, s: PlantState): void {
  const i = s.current;
  const rcEnd = (s.rcVoltage * (1 - p.rcFactor) + p.h * i * p.rcPerCapacitance) * p.rcInverse;
  s.rcMid = 0.5 * (s.rcVoltage + rcEnd);
  s.openCircuitMid -= (s.sourceResistance - p.rcResistance) * i;
  s.rcVoltage = rcEnd;
  s.soc -= p.h * i * p.perCharge;
}

/** Ends the step: speeds, and the loads that the next step's gear losses use. */
export function settle(p: Prepared, s: PlantState): void {
  const carrierChange = (s.carrierEnd - s.carrierSpeed) * p.perH;
  const ringChange = (s.ringEnd - s.ringSpeed) * p.perH;
  const sunChange = p.k1 * carrierChange - p.k * ringChange;
  s.carrierChange = carrierChange;
  s.ringChange = ringChange;
  s.carrierAcceleration = s.carrierHeld === 1 ? 0 : carrierChange;
  s.ringAcceleration = s.ringHeld === 1 ? 0 : ringChange;
  s.meshTorque = s.sunTorque - p.sunInertia * sunChange - s.meshLossTorque;
  s.driveTorque =
    p.wheelSideInertia * ringChange + (s.airForce + s.gradeForce) * p.metresPerRing - s.ringReaction;
  if (s.carrierReaction > s.frictionBound && s.carrierHeld === 1 && !p.oneWayClutch)
    s.limits |= LIMIT_BIT["engine-stop"];
  s.carrierSpeed = s.carrierEnd;
  s.ringSpeed = s.ringEnd;
}
