import { basename } from "node:path";
import { InputError } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { parameterTable } from "../../vehicle/declarations.ts";
import { withEngineMap } from "../../vehicle/engine-map/fit.ts";
import { MAP_ROLES } from "../../vehicle/engine-map/measures.ts";
import { readEngineMap } from "../../vehicle/engine-map/read.ts";
import { MOST_MAP_BYTES } from "../../vehicle/engine-map/sheet.ts";
import { engineMapCsv, presentEngineMap } from "../../vehicle/engine-map/write.ts";
import { valueAt } from "../../vehicle/faults.ts";
import { derivedFigures } from "../../vehicle/figures.ts";
import { PRESETS } from "../../vehicle/presets/registry.ts";
import { vehicleWarnings } from "../../vehicle/warnings.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { looksLikeFile, readText } from "../files.ts";
import { VEHICLES_OPTIONS } from "../options.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { readChoice } from "../quantity.ts";
import { columns, digits, section, wrap } from "../report/text.ts";
import { chooseVehicle } from "../setup.ts";

/** `vehicles list` and `vehicles show ID|FILE`, which also puts an engine map in and writes vehicle and map out. */
export function vehicles(words: readonly string[], around: Around): void {
  const args = readArguments("vehicles", words, VEHICLES_OPTIONS);
  const [what = "list", ...rest] = args.words;
  readChoice("vehicles", what, ["list", "show"]);
  if (what === "list") {
    expectWords("vehicles list", rest, [], 0);
    refuseWithList(args);
    around.out(args.has("json") ? json(PRESETS.map(listed)) : listText());
    return;
  }
  expectWords("vehicles show", rest, ["ID|FILE"], 1);
  const name = rest[0] ?? "";
  const [map, mapOut, vehicleOut] = OWN_OPTIONS.map((option) => args.text(option));
  const targets = [
    { where: "--engine-map-out", path: mapOut },
    { where: "--vehicle-out", path: vehicleOut },
  ].flatMap(({ where, path }) => (path === undefined ? [] : [{ where, path }]));
  checkTargets(
    targets,
    [map, looksLikeFile(name) ? name : undefined].filter((path) => path !== undefined),
  );
  const chosen = chooseVehicle(name, args.texts("set"));
  const { vehicle, told } = map === undefined ? { vehicle: chosen, told: [] } : putMap(chosen, map);
  writeAll(
    targets.map((target) => ({ ...target, pieces: () => [contentOf(target.where, vehicle)] })),
    () => stopIfCancelled(around),
  );
  around.out(
    args.has("json")
      ? json(shown(vehicle))
      : `${told.map((line) => `${line}\n`).join("")}${showText(vehicle)}`,
  );
}

const OWN_OPTIONS = ["engine-map", "engine-map-out", "vehicle-out"] as const;

function refuseWithList(args: Arguments): void {
  const given = OWN_OPTIONS.find((name) => args.has(name));
  if (given === undefined) return;
  throw new InputError({
    what: "this goes with vehicles show only",
    where: `--${given}`,
    value: args.text(given) ?? "",
    accepted: `vehicles show ID|FILE --${given} …`,
  });
}

/** The vehicle with the map of a table, and how the table was read. */
function putMap(vehicle: Vehicle, path: string): { vehicle: Vehicle; told: readonly string[] } {
  const name = basename(path);
  const reading = readEngineMap(readText("--engine-map", path, MOST_MAP_BYTES), name, vehicle.fuel.lowerHeat);
  const fitted = withEngineMap(vehicle, reading, name);
  if (!fitted.vehicle) throw new InputError(fitted.faults);
  const units = MAP_ROLES.map(
    (role) => `${role} in ${reading.roles[role].unit} (${reading.roles[role].unitHow})`,
  );
  return {
    vehicle: fitted.vehicle,
    told: [`engine map of ${name}: ${units.join(", ")}`, ...reading.notes, ""],
  };
}

const contentOf = (where: string, vehicle: Vehicle): string =>
  where === "--vehicle-out"
    ? json(vehicle)
    : engineMapCsv(presentEngineMap(vehicle.engine), vehicle.fuel.lowerHeat);

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

const listed = ({ id, title, about, defaultStrategy }: (typeof PRESETS)[number]) => ({
  id,
  title,
  about,
  default_strategy: defaultStrategy,
});

function listText(): string {
  const lines = PRESETS.flatMap(({ id, title, about, defaultStrategy }) => [
    `${id}: ${title}`,
    ...wrap(about, "  "),
    `  strategy ${defaultStrategy}`,
  ]);
  return `${lines.join("\n")}\n`;
}

const shown = (vehicle: Vehicle) => ({
  vehicle,
  parameters: parameterTable().map((row) => ({ ...row, value: valueAt(vehicle, row.path.split(".")) })),
  derived: derivedFigures(vehicle),
  warnings: vehicleWarnings(vehicle),
});

function showText(vehicle: Vehicle): string {
  const derived = derivedFigures(vehicle).map((f) => [f.title, digits(f.value, 5), unitText(f.unit)]);
  return [
    `${vehicle.name} (${vehicle.id})`,
    ...wrap(vehicle.note),
    ...section("parameters", parameterLines(vehicle)),
    ...section("what follows from them", columns(derived, "lrl")),
    ...section(
      "about this vehicle",
      vehicleWarnings(vehicle).flatMap((sentence) => wrap(sentence)),
    ),
    "",
  ].join("\n");
}

function parameterLines(vehicle: Vehicle): string[] {
  return parameterTable().flatMap((row) => {
    const value = valueAt(vehicle, row.path.split("."));
    if (value === undefined || row.kind === "text") return [];
    const range = row.min === null ? row.options.join(" or ") : `${row.min} … ${row.max}`;
    const head = `${row.path} = ${valueText(value)} ${unitText(row.unit)}`.trimEnd();
    return [...wrap(head), ...wrap(`${row.meaning}${range === "" ? "" : ` (${range})`}`, "    ")];
  });
}

const unitText = (unit: string): string => (unit === "1" ? "" : unit);

function valueText(value: unknown): string {
  if (!Array.isArray(value)) return String(value);
  return Array.isArray(value[0]) ? `a table of ${value.length} rows` : value.join(", ");
}
