import { kelvinToCelsius } from "../../shared/units.ts";
import { type RunSettings, STANDARD_AIR_TEMPERATURE } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { REFERENCE_AIR_DENSITY } from "../settings.ts";
import { parameterTable } from "../vehicle/declarations.ts";
import { valueAt } from "../vehicle/faults.ts";
import { PRESETS, vehicleById } from "../vehicle/presets/registry.ts";

/** How a run can be made again. */
export interface Repeat {
  /** words of the command line behind the program's name */
  readonly words: readonly string[];
  /** the same as one line, quoted for a shell */
  readonly line: string;
  /** parameters that differ from the preset: dotted path, value there, value here */
  readonly changed: readonly { readonly path: string; readonly usual: string; readonly here: string }[];
  /** false when the vehicle cannot be told by settings alone and its file is needed */
  readonly whole: boolean;
}

const told = (value: unknown): string => {
  if (Array.isArray(value)) {
    return value
      .map((one) => (Array.isArray(one) ? one.join(",") : String(one)))
      .join(Array.isArray(value[0]) ? ";" : ",");
  }
  return value === undefined || value === null ? "" : String(value);
};

/** A word for a POSIX shell: quoted unless it is plain. */
export const shellWord = (word: string): string =>
  /^[\w@%+=:,./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;

const baseOf = (vehicle: Vehicle): Vehicle =>
  vehicleById(PRESETS.some(({ id }) => id === vehicle.id) ? vehicle.id : "compact");

function changesOf(vehicle: Vehicle): Repeat["changed"] {
  const base = baseOf(vehicle);
  return parameterTable()
    .filter(({ kind }) => kind !== "text")
    .map(({ path }) => ({
      path,
      usual: told(valueAt(base, path.split("."))),
      here: told(valueAt(vehicle, path.split("."))),
    }))
    .filter(({ usual, here }) => usual !== here);
}

function optionWords(vehicle: Vehicle, s: RunSettings): readonly string[] {
  const words: string[] = [];
  const add = (differs: boolean, name: string, value: number): void => {
    if (differs) words.push(name, String(value));
  };
  add(s.step !== 0.01, "--step", s.step);
  add(s.startSoc !== vehicle.battery.socStart, "--soc", s.startSoc);
  add(s.payload !== 0, "--payload", s.payload);
  add(s.headWind !== 0, "--wind", s.headWind);
  add(s.auxiliaryPower !== vehicle.auxiliary.power, "--aux", s.auxiliaryPower);
  add(s.airDensity !== REFERENCE_AIR_DENSITY, "--air-density", s.airDensity);
  const warm = s.airTemperature !== STANDARD_AIR_TEMPERATURE;
  if (warm) words.push("--air-temperature", `${Number(kelvinToCelsius(s.airTemperature).toPrecision(12))}`);
  if (s.coldStart) words.push("--cold");
  return words;
}

/**
 * The command line that makes a run again: `run`, or `report` with a file to write.
 * @param cycleLine what --cycle takes
 * @param more further words, such as --balance
 */
export function repeatRun(
  verb: "run" | "report",
  vehicle: Vehicle,
  cycleLine: string,
  strategy: string,
  settings: RunSettings,
  more: readonly string[] = [],
): Repeat {
  const changed = changesOf(vehicle);
  const whole = changed.every(({ here }) => here !== "");
  const base = baseOf(vehicle).id;
  const words = [
    verb,
    "--vehicle",
    whole ? base : "vehicle.json",
    ...(whole ? changed.flatMap(({ path, here }) => ["--set", `${path}=${here}`]) : []),
    "--cycle",
    cycleLine,
    "--strategy",
    strategy,
    ...optionWords(vehicle, settings),
    ...more,
  ];
  return { words, line: words.map(shellWord).join(" "), changed, whole };
}
