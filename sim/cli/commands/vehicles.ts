import type { Vehicle } from "../../parameters/schema.ts";
import { parameterTable } from "../../vehicle/declarations.ts";
import { valueAt } from "../../vehicle/faults.ts";
import { derivedFigures } from "../../vehicle/figures.ts";
import { PRESETS } from "../../vehicle/presets/registry.ts";
import { vehicleWarnings } from "../../vehicle/warnings.ts";
import { expectWords, readArguments } from "../arguments.ts";
import type { Around } from "../around.ts";
import { VEHICLES_OPTIONS } from "../options.ts";
import { readChoice } from "../quantity.ts";
import { columns, digits, section, wrap } from "../report/text.ts";
import { chooseVehicle } from "../setup.ts";

/** `vehicles list` and `vehicles show ID|FILE`. */
export function vehicles(words: readonly string[], around: Around): void {
  const args = readArguments("vehicles", words, VEHICLES_OPTIONS);
  const [what = "list", ...rest] = args.words;
  readChoice("vehicles", what, ["list", "show"]);
  if (what === "list") {
    expectWords("vehicles list", rest, [], 0);
    around.out(args.has("json") ? json(PRESETS.map(listed)) : listText());
    return;
  }
  expectWords("vehicles show", rest, ["ID|FILE"], 1);
  const vehicle = chooseVehicle(rest[0] ?? "", args.texts("set"));
  around.out(args.has("json") ? json(shown(vehicle)) : showText(vehicle));
}

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
