import { at } from "../../../shared/at.ts";
import { radPerSToRpm, rpmToRadPerS } from "../../../shared/units.ts";
import { fuelPower } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { FIGURE_UNITS, type FigureUnit, SPEED_UNITS, TORQUE_UNITS } from "./measures.ts";
import type { EngineMapParameters, MapLayout } from "./reading.ts";

/** Steps of a map made from the engine's formula: small enough for linear steps, round for a person to go on from. */
const SPEED_STEP = 250;
const SPEED_ENDS = 50;
const TORQUE_STEPS = [1, 2, 5, 10, 20, 50, 100] as const;
const TORQUES = 30;

/** Share of a step by which a number counts as being on it: parameters are rounded in SI. */
const NEAR = 1e-5;

/** rev/min, from at most idle to at least the greatest speed. */
function roundSpeeds({ idleSpeed, maxSpeed }: Vehicle["engine"]): number[] {
  const from = Math.floor(radPerSToRpm(idleSpeed) / SPEED_ENDS + NEAR) * SPEED_ENDS;
  const to = Math.ceil(radPerSToRpm(maxSpeed) / SPEED_ENDS - NEAR) * SPEED_ENDS;
  const between = Array.from({ length: Math.ceil(to / SPEED_STEP) }, (_, i) => i * SPEED_STEP);
  return [from, ...between.filter((speed) => speed > from && speed < to), to];
}

/** N·m, from one step to at least the most of full load. */
function roundTorques({ fullLoadTorque }: Vehicle["engine"]): number[] {
  const most = Math.max(...fullLoadTorque);
  const step = TORQUE_STEPS.find((one) => most <= TORQUES * one) ?? TORQUE_STEPS[6];
  return Array.from({ length: Math.max(2, Math.ceil(most / step)) }, (_, i) => (i + 1) * step);
}

/**
 * The engine's map: its own, or, where it goes by the Willans form, that form at round speeds and torques that reach
 * over all of the engine's; a little beyond full load it goes on by the same formula.
 */
export function presentEngineMap(engine: Vehicle["engine"]): EngineMapParameters {
  if (engine.map) return engine.map;
  const speed = roundSpeeds(engine).map(rpmToRadPerS);
  const torque = roundTorques(engine);
  return { speed, torque, fuelPower: speed.map((w) => torque.map((m) => fuelPower(engine, null, w, m))) };
}

/** Most digits of an axis, so that it is read back as the very value; of the fuel, beyond all that is measured. */
const AXIS_DIGITS = 17;
const FUEL_DIGITS = 10;

/** The shortest number that is read back as the very value, where there is one of so many digits. */
function shortest(
  value: number,
  toFile: (value: number) => number,
  back: (value: number) => number,
  most = AXIS_DIGITS,
): string {
  const inFile = toFile(value);
  for (let digits = 4; digits < most; digits += 1) {
    const text = String(Number(inFile.toPrecision(digits)));
    if (back(Number(text)) === value) return text;
  }
  return String(Number(inFile.toPrecision(most)));
}

function unitBy<T extends { readonly id: string }>(units: readonly T[], id: string): T {
  const unit = units.find((one) => one.id === id);
  if (!unit) throw new Error(`no unit is called ${id}`);
  return unit;
}

const SPEED = unitBy(SPEED_UNITS, "rev/min");
const TORQUE = unitBy(TORQUE_UNITS, "N·m");

const TITLES: Readonly<Record<FigureUnit["kind"], string>> = {
  flow: "fuel flow",
  specific: "specific consumption",
  efficiency: "efficiency",
  power: "fuel power",
};

/**
 * A map as CSV that `readEngineMap` reads back: speeds in rev/min, torques in N·m.
 * @param lowerHeat of the fuel, J/kg
 * @param layout a row for each point, or a grid with speeds in the first row and torques in the first column
 * @param figureUnit id of `FIGURE_UNITS`; one that tells no fuel without power suits maps whose torques are above 0
 */
export function engineMapCsv(
  map: EngineMapParameters,
  lowerHeat: number,
  layout: MapLayout = "long",
  figureUnit = "g/s",
): string {
  const unit = unitBy(FIGURE_UNITS, figureUnit);
  const speeds = map.speed.map((value) => shortest(value, SPEED.fromSi, SPEED.toSi));
  const torques = map.torque.map((value) => shortest(value, TORQUE.fromSi, TORQUE.toSi));
  const figure = (i: number, j: number): string => {
    const power = at(map.speed, i) * at(map.torque, j);
    return shortest(
      at(at(map.fuelPower, i), j),
      (fuel) => unit.fromFuelPower(fuel, power, lowerHeat),
      (value) => unit.toFuelPower(value, power, lowerHeat),
      FUEL_DIGITS,
    );
  };
  const [speedTitle, torqueTitle] = [`speed (${SPEED.id})`, `torque (${TORQUE.id})`];
  const figureTitle = `${TITLES[unit.kind]} (${unit.id})`;
  const rows =
    layout === "long"
      ? [
          [speedTitle, torqueTitle, figureTitle],
          ...speeds.flatMap((speed, i) => torques.map((torque, j) => [speed, torque, figure(i, j)])),
        ]
      : [
          [`${torqueTitle} \\ ${speedTitle} \\ ${figureTitle}`, ...speeds],
          ...torques.map((torque, j) => [torque, ...speeds.map((_, i) => figure(i, j))]),
        ];
  return rows.map((row) => `${row.join(",")}\r\n`).join("");
}
