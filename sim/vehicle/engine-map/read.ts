import { FaultList } from "../../../cycles/import/faults.ts";
import { round } from "../faults.ts";
import { MapBuilder } from "./build.ts";
import { gridPoints } from "./grid.ts";
import { guessFigureUnit, guessSpeedUnit } from "./guess.ts";
import { longColumns, longPoints, type RoleColumn } from "./long.ts";
import {
  FIGURE_UNITS,
  MAP_ROLES,
  type MapRole,
  ROLE_NAMES,
  SPEED_UNITS,
  TORQUE_UNITS,
  unitsOfRole,
  unitWords,
} from "./measures.ts";
import { type NameReading, readCorner, unitsAllowed } from "./names.ts";
import type { FilePoint, MapChoices, MapHow, MapReading, MapUnits, TakenRole } from "./reading.ts";
import { layoutOf, readSheet, type Sheet } from "./sheet.ts";

interface FoundUnit {
  readonly unit: string;
  readonly how: MapHow;
}

type ByRole<T> = Readonly<Record<MapRole, T>>;

const NO_ROLE: TakenRole = { column: 0, columnHow: "assumed", unit: "", unitHow: "assumed" };

/** What a file that is no table at all gives. */
const nothing = (faults: FaultList): MapReading => ({
  delimiter: ",",
  layout: "long",
  layoutHow: "assumed",
  header: [],
  firstRows: [],
  roles: { speed: NO_ROLE, torque: NO_ROLE, figure: NO_ROLE },
  map: null,
  faults: faults.list,
  notes: [],
});

/**
 * Reads a table of an engine map: a row for each point (columns speed, torque, and fuel flow, specific consumption or
 * efficiency), or a grid (first row speeds, first column torques). Units are taken from the names, else guessed from the
 * magnitudes; `choices` settles what a person knows better. Whether the map suits a vehicle, `withEngineMap` tells.
 * @param text CSV as in RFC 4180; commas, semicolons, tabs or bars, decimal point or comma, # lines are comments
 * @param name of the file, for messages
 * @param lowerHeat lower heating value of the fuel, J/kg: it makes fuel power of fuel
 * @returns always a reading; where it cannot be taken `map` is null and `faults` tell why
 */
export function readEngineMap(
  text: string,
  name: string,
  lowerHeat: number,
  choices: MapChoices = {},
): MapReading {
  const faults = new FaultList(name);
  const sheet = readSheet(text, choices.delimiter, faults);
  if (!sheet) return nothing(faults);
  const layout = choices.layout ?? layoutOf(sheet.header.cells);
  const columns = layout === "long" ? longColumns(sheet, choices) : cornerColumns(sheet);
  const points = layout === "long" ? longPoints(sheet, columns, faults) : gridPoints(sheet, faults);
  const found = findUnits(points, columns, lowerHeat, choices);
  const units = settled(found);
  if (!units && !faults.any && points.length > 0) refuseUnits(sheet, columns, found, faults);
  if (points.length === 0 && !faults.any)
    faults.add("There are no points.", {}, "", "at least 2 speeds with 2 torques");
  // Points are checked though cells were refused, so that all is told at once.
  const builder = units && points.length > 0 ? new MapBuilder(units, lowerHeat, faults) : null;
  const map = builder?.build(points) ?? null;
  const role = (one: MapRole): TakenRole => ({
    column: columns[one].column,
    columnHow: columns[one].how,
    unit: found[one].unit,
    unitHow: found[one].how,
  });
  return {
    delimiter: sheet.delimiter,
    layout,
    layoutHow: choices.layout ? "chosen" : "guessed",
    header: sheet.header.cells,
    firstRows: sheet.rows.slice(0, 3).map(({ cells }) => cells),
    roles: { speed: role("speed"), torque: role("torque"), figure: role("figure") },
    map,
    faults: faults.list,
    notes: [...(builder?.notes ?? []), ...heatNote(units, lowerHeat)],
  };
}

function cornerColumns({ header }: Sheet): ByRole<RoleColumn> {
  const corner = readCorner(header.cells[0] ?? "");
  const of = (role: MapRole): RoleColumn => ({ column: 0, how: "assumed", named: corner[role] });
  return { speed: of("speed"), torque: of("torque"), figure: of("figure") };
}

/** Units by role: chosen, stated, or guessed; torque in N·m where nothing tells, since its size cannot. */
function findUnits(
  points: readonly FilePoint[],
  columns: ByRole<RoleColumn>,
  lowerHeat: number,
  choices: MapChoices,
): ByRole<FoundUnit> {
  const told = (role: MapRole): FoundUnit | null => {
    const chosen = unitsOfRole(role).find(({ id }) => id === choices.units?.[role]);
    if (chosen) return { unit: chosen.id, how: "chosen" };
    const stated = columns[role].named?.unit;
    return stated ? { unit: stated, how: "from the header" } : null;
  };
  const speed = told("speed") ?? { unit: guessSpeedUnit(points.map((point) => point.speed)), how: "guessed" };
  const torque = told("torque") ?? { unit: "N·m", how: "assumed" };
  return {
    speed,
    torque,
    figure: told("figure") ?? guessed(points, speed, torque, columns.figure.named, lowerHeat),
  };
}

function guessed(
  points: readonly FilePoint[],
  speed: FoundUnit,
  torque: FoundUnit,
  named: NameReading | null,
  lowerHeat: number,
): FoundUnit {
  const speedUnit = SPEED_UNITS.find(({ id }) => id === speed.unit);
  const torqueUnit = TORQUE_UNITS.find(({ id }) => id === torque.unit);
  if (!speedUnit || !torqueUnit) return { unit: "", how: "guessed" };
  const inSi = points.map((point) => ({
    speed: speedUnit.toSi(point.speed),
    torque: torqueUnit.toSi(point.torque),
    figure: point.figure,
  }));
  const unit = guessFigureUnit(inSi, lowerHeat, named ? unitsAllowed(named.kinds) : FIGURE_UNITS);
  return { unit: unit?.id ?? "", how: "guessed" };
}

function settled(found: ByRole<FoundUnit>): MapUnits | null {
  const speed = SPEED_UNITS.find(({ id }) => id === found.speed.unit);
  const torque = TORQUE_UNITS.find(({ id }) => id === found.torque.unit);
  const figure = FIGURE_UNITS.find(({ id }) => id === found.figure.unit);
  return speed && torque && figure ? { speed, torque, figure } : null;
}

function refuseUnits(
  { header }: Sheet,
  columns: ByRole<RoleColumn>,
  found: ByRole<FoundUnit>,
  faults: FaultList,
): void {
  for (const role of MAP_ROLES.filter((one) => found[one].unit === "")) {
    const column = header.cells[Math.max(0, columns[role].column - 1)] ?? "";
    const what = `The unit of ${ROLE_NAMES[role]} is not stated, and in none that fits would the engine's efficiency lie between 12 and 50 %.`;
    faults.add(what, { row: header.line, column }, column, `a unit behind the name: ${unitWords(role)}`);
  }
}

/** Fuel by mass becomes heat only with a heating value, which is the vehicle's. */
function heatNote(units: MapUnits | null, lowerHeat: number): string[] {
  if (units?.figure.kind !== "flow" && units?.figure.kind !== "specific") return [];
  const heat = round(lowerHeat / 1e6);
  return [`Fuel becomes heat by the lower heating value of the vehicle's fuel, ${heat} MJ/kg.`];
}
