import { mpsToKmh } from "../../shared/units.ts";
import { engineTables } from "../drivetrain/engine.ts";
import { basicRatio } from "../drivetrain/gear-set.ts";
import { GRAVITY } from "../drivetrain/road.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { SOC_FORCED_START, SOC_NO_CHARGE } from "../settings.ts";
import { electricWheelForce } from "./checks/body.ts";
import { crankTorque, sunTorqueAtFullLoad } from "./checks/machines.ts";
import { bestPoint } from "./engine-best.ts";
import { round } from "./faults.ts";
import { electricTopSpeed, outputTopSpeed } from "./figures.ts";

/** Brake efficiency above which a petrol engine is better than any on the road (common practice, no source). */
const ODD_EFFICIENCY = 0.43;
/** Speed that a car is expected to reach, m/s: 120 km/h. */
const USUAL_TOP = 33.3;
/** Deceleration that brakes are expected to give, m/s², and grade that a vehicle is expected to start on. */
const USUAL_BRAKING = 5;
const USUAL_GRADE = 0.12;

/** A test and the sentence for a vehicle that fails it; undefined when it passes. */
type Warning = (vehicle: Vehicle) => string | undefined | false;

const kmh = (speed: number): string => `${Math.round(mpsToKmh(speed))} km/h`;

const ENGINE: readonly Warning[] = [
  (v) => {
    const best = bestPoint(v.engine).efficiency;
    return (
      best > ODD_EFFICIENCY &&
      `engine: best efficiency ${round(best)} is above ${ODD_EFFICIENCY}, more than today's engines reach`
    );
  },
  (v) =>
    v.engine.fullLoadSpeed.length < 4 &&
    "engine.fullLoadSpeed: a full-load curve of fewer than four points is coarse",
];

const MACHINES: readonly Warning[] = [
  (v) => {
    const needed = sunTorqueAtFullLoad(v);
    return (
      v.sunMachine.peakTorque < needed &&
      `sunMachine.peakTorque: ${round(v.sunMachine.peakTorque)} N m hold only part of the engine's full load (${round(needed)} N m); the rest is cut`
    );
  },
  (v) => {
    const cold = (crankTorque(v) * v.engine.coldFriction) / (1 + basicRatio(v.gearSet));
    return (
      v.sunMachine.peakTorque <= cold &&
      `sunMachine.peakTorque: a cold engine needs ${round(cold)} N m to start, more than there is`
    );
  },
  ...(["sunMachine", "outputMachine"] as const).map(
    (part): Warning =>
      (v) => {
        const corner = v[part].peakPower / v[part].peakTorque;
        return (
          corner > v[part].maxSpeed &&
          `${part}.peakPower: never reached, peak torque would give it only at ${round(corner)} rad/s`
        );
      },
  ),
  (v) => {
    const top = outputTopSpeed(v);
    return top < USUAL_TOP && `outputMachine.maxSpeed: over-speeds above ${kmh(top)} on the road`;
  },
];

const ROAD: readonly Warning[] = [
  (v) =>
    v.body.frictionBrakeForce < USUAL_BRAKING * v.body.mass &&
    `body.frictionBrakeForce: brakes with less than ${USUAL_BRAKING} m/s²`,
  (v) => {
    const grade = electricWheelForce(v) / (v.body.mass * GRAVITY);
    return (
      grade < USUAL_GRADE &&
      `outputMachine.peakTorque: pulls away electrically up to a grade of ${round(grade)} only`
    );
  },
];

const CHARGE: readonly Warning[] = [
  ({ battery: b }) =>
    b.socTarget < b.socFloor + 1.5 * SOC_FORCED_START &&
    "battery.socTarget: so near the floor that low charge forces the engine on",
  ({ battery: b }) =>
    b.socTarget > b.socCeiling - SOC_NO_CHARGE &&
    "battery.socTarget: so near the ceiling that the engine may not charge",
  ({ battery: b, control: c }) =>
    b.socTarget - c.socLow < b.socFloor + SOC_FORCED_START &&
    "control.socLow: the supervisor's forced start comes before the strategy's start on low charge",
  ({ battery: b, control: c }) =>
    (b.socTarget + c.thermostatBand > b.socCeiling || b.socTarget - c.thermostatBand < b.socFloor) &&
    "control.thermostatBand: reaches beyond the charge window",
];

const CONTROL: readonly Warning[] = [
  (v) => {
    const top = electricTopSpeed(v);
    return (
      v.control.electricTopSpeed > top &&
      `control.electricTopSpeed: not reached, the sun machine's speed ends electric driving at ${kmh(top)}`
    );
  },
  (v) =>
    v.control.startPower > engineTables(v.engine).top.power &&
    "control.startPower: above the engine's greatest power",
];

/**
 * What is possible but odd in a checked vehicle.
 * @returns one sentence each, beginning with the parameter's path; empty for a usual vehicle
 */
export const vehicleWarnings = (vehicle: Vehicle): string[] =>
  [...ENGINE, ...MACHINES, ...ROAD, ...CHARGE, ...CONTROL]
    .map((warning) => warning(vehicle))
    .filter((sentence) => typeof sentence === "string");
