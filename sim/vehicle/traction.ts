import { fullLoadTorque } from "../drivetrain/engine.ts";
import { MESH_SMOOTHING } from "../drivetrain/gear-set.ts";
import { machineLoss, torqueLimit } from "../drivetrain/machine.ts";
import { type Prepared, prepare } from "../drivetrain/prepared.ts";
import type { RunSettings } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { GEAR_SMOOTHING, SUN_CONTROL_SHARE, SUN_SPEED_SHARE } from "../settings.ts";
import { batteryPowers } from "./battery-power.ts";

/** Engine speeds and loads tried for the greatest wheel force. */
const SPEEDS = 40;
const LOADS = 8;

/** What a vehicle can do at its wheels, steady, at the charge that it keeps. Forces at the tyres, N. */
export interface Traction {
  /** most with engine, both machines and battery, within the driven tyres' grip; ≥ 0 */
  most(speed: number): number;
  /** most with the engine at rest; not a number where the sun machine would turn too fast for that */
  electric(speed: number): number;
  /** most that the output machine and the battery brake with; ≤ 0 */
  regeneration(speed: number): number;
  /** road load on the level: rolling and air */
  roadLoad(speed: number): number;
  /** grip of the driven axle */
  readonly grip: number;
}

/** Torque of the output machine at which its electrical power (shaft and loss) is a given one, W; the small root. */
function torqueForElectric(p: Prepared, speed: number, power: number): number {
  const w = Math.abs(speed);
  const standing = p.out0 + p.out2 * w + p.out3 * w * w * w - power;
  // c1 T² + (ω ± c4|ω|) T + standing = 0; the sign of c4 is that of the torque.
  const motoring = standing <= 0;
  const b = motoring ? speed + p.out4 * w : speed - p.out4 * w;
  if (p.out1 === 0) return b === 0 ? Number.POSITIVE_INFINITY : -standing / b;
  const square = b * b - 4 * p.out1 * standing;
  if (square < 0) return Number.NaN;
  return (-b + Math.sqrt(square)) / (2 * p.out1);
}

interface Scene {
  readonly vehicle: Vehicle;
  readonly p: Prepared;
  readonly out: number;
  readonly in: number;
}

/** Force at the tyres of a torque at the ring, after the final drive. */
function atTyres(p: Prepared, ring: number, fade: number): number {
  return ring / (ring > 0 ? 1 + p.driveLoss * fade : 1 - p.driveLoss * fade) / p.metresPerRing;
}

/** Most output machine torque for what the other loads leave of the battery; not a number if it cannot be met. */
function outputTorque({ vehicle, p, out, in: into }: Scene, ringSpeed: number, others: number): number {
  const speed = p.reduction * ringSpeed;
  const m = vehicle.outputMachine;
  const peak = torqueLimit(m, speed);
  const top = speed >= m.maxSpeed ? 0 : peak;
  const torque = Math.min(top, torqueForElectric(p, speed, out - others));
  if (!(torque >= -peak)) return Number.NaN;
  return torque * speed + machineLoss(m, torque, speed) + others >= -into ? torque : Number.NaN;
}

const reduced = (p: Prepared, torque: number, fade: number): number =>
  p.reduction * torque - p.reductionLoss * Math.abs(torque) * fade;

/** Wheel force with the engine at a speed and brake torque; not a number where a limit forbids it. */
function withEngine(scene: Scene, ringSpeed: number, engineSpeed: number, brake: number): number {
  const { vehicle, p } = scene;
  const fade = ringSpeed / (ringSpeed + GEAR_SMOOTHING);
  const sun = p.k1 * engineSpeed - p.k * ringSpeed;
  if (Math.abs(sun) > SUN_SPEED_SHARE * p.sunTop) return Number.NaN;
  // Tm (1 + k) = −(Te + Tl), Tl = (1 − η0)|Tm| × (ωs − ωc)/(|ωs − ωc| + smoothing)
  const relative = p.k * (engineSpeed - ringSpeed);
  const loss = (p.meshLoss * relative) / (Math.abs(relative) + MESH_SMOOTHING);
  const mesh = brake / (p.k1 - loss);
  const sunTorque = -mesh + loss * mesh;
  if (Math.abs(sunTorque) > SUN_CONTROL_SHARE * torqueLimit(vehicle.sunMachine, sun)) return Number.NaN;
  const sunElectric = sunTorque * sun + machineLoss(vehicle.sunMachine, sunTorque, sun);
  const torque = outputTorque(scene, ringSpeed, sunElectric + p.auxiliaryPower);
  return atTyres(p, p.k * mesh + reduced(p, torque, fade), fade);
}

/** Wheel force with the engine at rest; the sun machine helps where a one-way clutch bears it. */
function electricForce(scene: Scene, ringSpeed: number): number {
  const { vehicle, p } = scene;
  const sun = -p.k * ringSpeed;
  if (-sun > SUN_SPEED_SHARE * p.sunTop) return Number.NaN;
  const fade = ringSpeed / (ringSpeed + GEAR_SMOOTHING);
  let best = Number.NaN;
  const tried = p.oneWayClutch ? LOADS : 0;
  for (let i = 0; i <= tried; i += 1) {
    const push = tried > 0 ? (torqueLimit(vehicle.sunMachine, sun) * i) / tried : 0;
    const others = push * -sun + machineLoss(vehicle.sunMachine, push, sun) + p.auxiliaryPower;
    const torque = outputTorque(scene, ringSpeed, others);
    const force = atTyres(p, p.k * push + reduced(p, torque, fade), fade);
    if (!(force <= best)) best = Number.isNaN(force) ? best : force;
  }
  return best;
}

function brakingForce({ vehicle, p, in: into }: Scene, ringSpeed: number): number {
  const speed = p.reduction * ringSpeed;
  const m = vehicle.outputMachine;
  const sun = machineLoss(vehicle.sunMachine, 0, p.k * ringSpeed);
  const least = -into - p.auxiliaryPower - sun;
  // Electrical power falls with braking torque while the machine gains more than it loses.
  let low = -torqueLimit(m, speed);
  let high = 0;
  const electric = (torque: number): number => torque * speed + machineLoss(m, torque, speed);
  if (electric(low) < least) {
    for (let i = 0; i < 40; i += 1) {
      const middle = (low + high) / 2;
      if (electric(middle) < least) low = middle;
      else high = middle;
    }
    low = high;
  }
  const fade = ringSpeed / (ringSpeed + GEAR_SMOOTHING);
  return atTyres(p, reduced(p, low, fade), fade);
}

function greatest(scene: Scene, ringSpeed: number): number {
  const { vehicle, p } = scene;
  const e = vehicle.engine;
  let best = electricForce(scene, ringSpeed);
  for (let i = 0; i <= SPEEDS; i += 1) {
    const speed = e.idleSpeed + ((e.maxSpeed - e.idleSpeed) * i) / SPEEDS;
    const sun = p.k1 * speed - p.k * ringSpeed;
    const bearable = SUN_CONTROL_SHARE * p.k1 * 0.99 * torqueLimit(vehicle.sunMachine, sun);
    const most = Math.min(fullLoadTorque(e, speed), bearable);
    // More torque is more force; less is tried only where the battery cannot take what full torque makes.
    let force = withEngine(scene, ringSpeed, speed, most);
    for (let j = LOADS - 1; Number.isNaN(force) && j >= 0; j -= 1) {
      force = withEngine(scene, ringSpeed, speed, (most * j) / LOADS);
    }
    if (!(force <= best)) best = Number.isNaN(force) ? best : force;
  }
  return Number.isNaN(best) ? 0 : Math.max(0, best);
}

/**
 * Limits of a vehicle at its wheels, on the level, over road speeds v ≥ 0, m/s: steady (no body speeds up), with the
 * losses of the model and the battery at the charge it keeps. Formulas as in the run (plant.ts, actuation.ts).
 * @param settings checked run options: payload, air, wind, auxiliaries
 */
export function traction(vehicle: Vehicle, settings: RunSettings): Traction {
  const p = prepare(vehicle, settings);
  const { discharge, charge } = batteryPowers(vehicle.battery, vehicle.battery.socTarget);
  const scene: Scene = { vehicle, p, out: discharge, in: charge };
  const ring = (speed: number): number => speed / p.metresPerRing;
  const { outTop, reduction } = p;
  return {
    most: (speed) => Math.min(p.gripDriven, greatest(scene, ring(speed))),
    electric: (speed) => Math.min(p.gripDriven, electricForce(scene, ring(speed))),
    regeneration: (speed) =>
      speed < p.fadeEnd || ring(speed) * reduction > outTop
        ? 0
        : Math.max(-p.gripDriven, brakingForce(scene, ring(speed))),
    roadLoad: (speed) => {
      const air = speed + p.headWind;
      return p.rolling + (p.dragB + p.dragC * Math.abs(air)) * air;
    },
    grip: p.gripDriven,
  };
}
