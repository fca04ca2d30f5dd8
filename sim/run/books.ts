import type { ControlState } from "../control/state.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";

/** Running sums of a run, J unless stated: one for each line of the ledger, and what the summary needs besides. */
export class Books {
  runningFuel = 0;
  startFuel = 0;
  engineHeat = 0;
  engineFriction = 0;
  engineMotoring = 0;
  sunMachine = 0;
  outputMachine = 0;
  mesh = 0;
  finalDrive = 0;
  reduction = 0;
  contacts = 0;
  ohmic = 0;
  polarisation = 0;
  auxiliary = 0;
  rolling = 0;
  air = 0;
  brake = 0;
  /** taken out of the open-circuit source */
  source = 0;

  /** m, signed, and without sign */
  distance = 0;
  travelled = 0;
  /** m */
  height = 0;
  /** rad: integrated shaft angles */
  carrierAngle = 0;
  engineWork = 0;
  batteryThroughput = 0;
  brakingAsked = 0;
  brakingShaft = 0;
  recovered = 0;
  brakingFriction = 0;
  engineSeconds = 0;
}

/** Books the step that the plant has just made, before it is settled into the state. Each line by its own formula. */
export function book(p: Prepared, s: PlantState, c: ControlState, b: Books): void {
  const h = p.h;
  const wc = s.carrierMean;
  const wr = s.ringMean;
  const v = wr * p.metresPerRing;
  b.runningFuel += h * s.fuelPower;
  b.startFuel += h * s.startFuelPower;
  // Heat of combustion: what the fuel brings less the indicated work; the extra fuel of a start is all heat.
  b.engineHeat += h * (s.fuelPower - s.indicatedTorque * wc + s.startFuelPower);
  if (s.carrierHeld === 1) b.contacts -= h * s.carrierReaction * wc;
  else if (s.indicatedTorque > 0) b.engineFriction -= h * s.carrierReaction * wc;
  else b.engineMotoring -= h * s.carrierReaction * wc;
  b.sunMachine += h * s.sunLoss;
  b.outputMachine += h * s.outputLoss;
  b.mesh += h * s.meshLossTorque * p.k * (wc - wr);
  b.finalDrive += h * s.driveLossTorque * wr;
  b.reduction += h * s.reductionLossTorque * wr;
  const i = s.current;
  b.ohmic += h * s.ohmic * i * i;
  b.polarisation += h * s.rcMid * s.rcMid * p.rcConductance;
  b.auxiliary += h * s.auxiliaryPower;
  b.air += h * s.airForce * v;
  b.source += h * s.openCircuitMid * i;
  const slowed = -h * s.ringReaction * wr;
  if (s.ringHeld === 1) b.contacts += slowed;
  else if (s.brakeForce > 0) {
    const brakes = (slowed * s.brakeForce) / (s.brakeForce + s.rollingForce);
    b.brake += brakes;
    b.rolling += slowed - brakes;
  } else b.rolling += slowed;
  b.distance += h * v;
  b.travelled += h * Math.abs(v);
  b.height += h * s.gradeSine * v;
  b.carrierAngle += h * wc;
  b.engineWork += h * Math.max(0, s.engineTorque * wc);
  b.batteryThroughput += h * Math.abs(s.batteryPower);
  if (c.braking === 1) bookBraking(p, s, c, b, v);
}

/**
 * Energy of braking at its four places: asked at the wheels, at the machine's shaft, into the battery, in the friction
 * brakes. While the engine pushes the ring, the output machine absorbs its share too: only the axle's part counts.
 */
function bookBraking(p: Prepared, s: PlantState, c: ControlState, b: Books, v: number): void {
  const h = p.h;
  b.brakingAsked += h * Math.max(0, -c.wheelForceAsk * v);
  const shaft = -s.outputTorque * s.outputMean;
  if (shaft > 0) {
    const engine = Math.max(0, -p.k * s.meshTorque * s.ringMean);
    const share = Math.max(0, 1 - engine / shaft);
    b.brakingShaft += h * shaft * share;
    // Less what the sun machine uses, and never more than goes into the battery.
    const made = (-s.outputElectric - Math.max(0, s.sunElectric)) * share;
    b.recovered += h * Math.max(0, Math.min(made, -s.batteryPower));
  }
  if (s.ringHeld === 0) b.brakingFriction += h * s.brakeForce * Math.abs(v);
}

/** Energy turned over so far, J: fuel, and what went through the battery either way. */
export const turnedOver = (b: Books): number => b.runningFuel + b.startFuel + b.batteryThroughput;
