import type { InputFault } from "../../../shared/errors.ts";
import { frictionTorque } from "../../drivetrain/engine.ts";
import { basicRatio } from "../../drivetrain/gear-set.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { FIRING_SHARE, SUN_SPEED_SHARE } from "../../settings.ts";
import { crossFault, round } from "../faults.ts";
import { UNIT, type Words, words } from "../words.ts";

/** Share of the sun's part of full load below which the engine could never reach its own best points. */
const LEAST_BORNE = 0.6;

/** Torque the sun machine needs to hold the engine at its greatest torque, N·m: full load / (1 + k), lossless. */
export const sunTorqueAtFullLoad = (vehicle: Vehicle): number =>
  Math.max(...vehicle.engine.fullLoadTorque) / (1 + basicRatio(vehicle.gearSet));

/** Torque against which the sun machine starts the warm engine, N·m at the carrier. */
export const crankTorque = ({ engine }: Vehicle): number =>
  Math.max(engine.breakaway, frictionTorque(engine, FIRING_SHARE * engine.idleSpeed));

/** Whether the sun machine can hold and start the engine. */
export function machineFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const sun = vehicle.sunMachine;
  const k = basicRatio(vehicle.gearSet);
  const add = (path: string, what: string | Words, accepted: string | Words): void => {
    faults.push(crossFault(vehicle, `sunMachine.${path}`, what, accepted));
  };
  const needed = sunTorqueAtFullLoad(vehicle);
  if (sun.peakTorque < LEAST_BORNE * needed) {
    const share = round((100 * sun.peakTorque) / needed);
    const what = `the sun machine holds only ${share} % of the engine's full load (full load/(1 + k) = ${round(needed)} N m)`;
    add("peakTorque", what, words`at least ${LEAST_BORNE * needed}, for all of it ${needed}`);
  }
  const crank = crankTorque(vehicle) / (1 + k);
  if (!(sun.peakTorque > crank)) {
    add("peakTorque", "the sun machine cannot start the engine", words`above ${crank}`);
  }
  const idle = (1 + k) * vehicle.engine.idleSpeed;
  if (!(idle < SUN_SPEED_SHARE * sun.maxSpeed)) {
    const what = words`idling at rest over-speeds the sun, which turns (1 + k)·idle = ${idle}${UNIT}`;
    add("maxSpeed", what, words`above ${idle / SUN_SPEED_SHARE}`);
  }
  return faults;
}
