import { rpmToRadPerS } from "../../shared/units.ts";
import { storedEnergy } from "../drivetrain/battery.ts";
import { bestSpeedFor, engineTables } from "../drivetrain/engine.ts";
import { basicRatio, mechanicalPoint } from "../drivetrain/gear-set.ts";
import { bodies, massMatrix } from "../drivetrain/mass-matrix.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { SUN_SPEED_SHARE } from "../settings.ts";
import { batteryPowers } from "./battery-power.ts";
import { electricWheelForce } from "./checks/body.ts";
import { bestPoint } from "./engine-best.ts";

/** A number that follows from the parameters. */
export interface DerivedFigure {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  /** SI unit, "1" for a pure number. */
  readonly unit: string;
}

/** Road speed, m/s, of a ring speed, rad/s. */
const roadSpeed = ({ body, finalDrive }: Vehicle, ring: number): number =>
  (ring * body.wheelRadius) / finalDrive.ratio;

/** Road speed, m/s, at which the supervisor starts the engine because the sun, engine at rest, turns too fast. */
export const electricTopSpeed = (v: Vehicle): number =>
  roadSpeed(v, (SUN_SPEED_SHARE * v.sunMachine.maxSpeed) / basicRatio(v.gearSet));

/** Road speed, m/s, at the output machine's greatest speed. */
export const outputTopSpeed = (v: Vehicle): number =>
  roadSpeed(v, v.outputMachine.maxSpeed / v.outputMachine.reduction);

/**
 * Road speed, m/s, at which the sun stands still while the engine makes a power (W) at its best speed for it:
 * ωr = ωc (1 + k)/k.
 */
export function sunRestRoadSpeed(v: Vehicle, power: number): number {
  const { map } = engineTables(v.engine);
  return roadSpeed(v, bestSpeedFor(v.engine, map, power) * mechanicalPoint(basicRatio(v.gearSet)));
}

/** Mass, kg, that a wheel force accelerates with the engine at rest: all bodies, seen at the tyres. */
export function effectiveMass(v: Vehicle): number {
  const perRing = v.body.wheelRadius / v.finalDrive.ratio;
  return massMatrix(bodies(v, 0)).rr / (perRing * perRing);
}

const figure = (id: string, title: string, value: number, unit: string): DerivedFigure => ({
  id,
  title,
  value,
  unit,
});

function gearFigures(v: Vehicle): DerivedFigure[] {
  const k = basicRatio(v.gearSet);
  const per1000 = roadSpeed(v, rpmToRadPerS(1000) * mechanicalPoint(k));
  return [
    figure("basic-ratio", "Basic ratio k, ring teeth over sun teeth", k, "1"),
    figure("ring-torque-share", "Share of the engine's torque at the ring, k/(1 + k)", k / (1 + k), "1"),
    figure(
      "sun-torque-share",
      "Share of the engine's torque that the sun bears, 1/(1 + k)",
      1 / (1 + k),
      "1",
    ),
    figure("sun-rest-ratio", "Ring speed over engine speed with the sun at rest", mechanicalPoint(k), "1"),
    figure(
      "sun-rest-per-1000",
      "Road speed with the sun at rest, each 1000 rev/min of engine",
      per1000,
      "m/s",
    ),
    figure(
      "sun-rest-third-power",
      "Road speed with the sun at rest at a third of the engine's power",
      sunRestRoadSpeed(v, engineTables(v.engine).top.power / 3),
      "m/s",
    ),
    figure("electric-top-speed", "Electric top speed, set by the sun's speed", electricTopSpeed(v), "m/s"),
    figure("output-top-speed", "Road speed at the output machine's greatest speed", outputTopSpeed(v), "m/s"),
  ];
}

function engineFigures({ engine }: Vehicle): DerivedFigure[] {
  const best = bestPoint(engine);
  const { top } = engineTables(engine);
  return [
    figure("engine-best-efficiency", "Best efficiency of the engine", best.efficiency, "1"),
    figure("engine-best-speed", "Engine speed of the best efficiency", best.speed, "rad/s"),
    figure("engine-best-torque", "Engine torque of the best efficiency", best.torque, "N m"),
    figure("engine-greatest-power", "Greatest engine power", top.power, "W"),
    figure("engine-greatest-power-speed", "Engine speed of the greatest power", top.speed, "rad/s"),
  ];
}

function batteryFigures({ battery: b }: Vehicle): DerivedFigure[] {
  const power = batteryPowers(b, b.socTarget);
  const usable = storedEnergy(b, b.socFloor, b.socCeiling);
  return [
    figure("battery-energy", "Battery energy from empty to full", storedEnergy(b, 0, 1), "J"),
    figure("battery-usable-energy", "Battery energy within the charge window", usable, "J"),
    figure("battery-discharge-power", "Greatest battery power out, at target charge", power.discharge, "W"),
    figure("battery-charge-power", "Greatest battery power in, at target charge", power.charge, "W"),
  ];
}

function bodyFigures(v: Vehicle): DerivedFigure[] {
  const mass = effectiveMass(v);
  return [
    figure("effective-mass", "Mass that a wheel force accelerates, engine at rest", mass, "kg"),
    figure("rotating-factor", "Effective mass over test mass", mass / v.body.mass, "1"),
    figure(
      "electric-wheel-force",
      "Greatest wheel force of the output machine, lossless",
      electricWheelForce(v),
      "N",
    ),
  ];
}

/** What follows from the parameters, in the order of a data sheet. SI units. @param v a checked vehicle */
export const derivedFigures = (v: Vehicle): readonly DerivedFigure[] => [
  ...gearFigures(v),
  ...engineFigures(v),
  ...batteryFigures(v),
  ...bodyFigures(v),
];
