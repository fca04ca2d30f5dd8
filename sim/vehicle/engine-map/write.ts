import { at } from "../../../shared/at.ts";
import { engineTables, fuelPower, fullLoadTorque } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { FIGURE_UNITS, type FigureUnit, SPEED_UNITS, TORQUE_UNITS } from "./measures.ts";
import type { EngineMapParameters, MapLayout } from "./reading.ts";

/** Speeds and torques of a map made from the engine's formula: enough that linear steps between them are small. */
const SPEEDS = 17;
const TORQUES = 21;

/**
 * The engine's map: its own, or, where it goes by the Willans form, that form at equal steps from idle to the greatest
 * speed and from a twentieth of the greatest full-load torque up to it.
 */
export function presentEngineMap(engine: Vehicle["engine"]): EngineMapParameters {
  if (engine.map) return engine.map;
  const { map } = engineTables(engine);
  const { idleSpeed, maxSpeed } = engine;
  const speed = Array.from({ length: SPEEDS }, (_, i) =>
    i === SPEEDS - 1 ? maxSpeed : idleSpeed + ((maxSpeed - idleSpeed) * i) / (SPEEDS - 1),
  );
  const most = Math.max(...engine.fullLoadTorque, ...speed.map((w) => fullLoadTorque(engine, w)));
  const torque = Array.from({ length: TORQUES - 1 }, (_, j) => (most * (j + 1)) / (TORQUES - 1));
  return { speed, torque, fuelPower: speed.map((w) => torque.map((m) => fuelPower(engine, map, w, m))) };
}

/** Digits after which a number is held to be written out. */
const MOST_DIGITS = 17;

/** The shortest number that is read back as the very value, where there is one. */
function shortest(value: number, toFile: (value: number) => number, back: (value: number) => number): string {
  const inFile = toFile(value);
  for (let digits = 6; digits < MOST_DIGITS; digits += 1) {
    const text = String(Number(inFile.toPrecision(digits)));
    if (back(Number(text)) === value) return text;
  }
  return String(inFile);
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
