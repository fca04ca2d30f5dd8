import { InputError, type InputFault } from "../../shared/errors.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import type { RunOptions } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { PRESETS, presetById, vehicleById } from "../vehicle/presets/registry.ts";
import { readVehicle } from "../vehicle/read.ts";
import { applySettings } from "../vehicle/setting.ts";
import type { Arguments } from "./arguments.ts";
import { looksLikeFile, readJson } from "./files.ts";
import { OPTION_UNITS, readChoice, readQuantity } from "./quantity.ts";
import { chooseStrategy } from "./strategy-choice.ts";
import { withNearest } from "./suggest.ts";

/** What is driven and how. */
export interface Setup {
  readonly vehicle: Vehicle;
  readonly strategy: StrategyDefinition;
  readonly options: RunOptions;
}

const VEHICLE_IDS = PRESETS.map((preset) => preset.id);

/**
 * The vehicle named by a preset's id or a JSON file, with settings applied.
 * @param settings texts of the form "path=value"
 * @throws InputError for an unknown id, a file that cannot be read, a bad parameter or setting
 */
export function chooseVehicle(name: string, settings: readonly string[]): Vehicle {
  const preset = VEHICLE_IDS.includes(name);
  if (!preset && !looksLikeFile(name)) {
    throw withNearest("--vehicle", name, VEHICLE_IDS, "a JSON file of parameters", () => presetById(name));
  }
  if (preset && settings.length === 0) return vehicleById(name);
  const input: unknown = preset ? presetById(name).parameters : readJson("--vehicle", name);
  return readVehicle(withSettings(input, settings), preset ? `vehicle ${name}` : name);
}

function withSettings(input: unknown, settings: readonly string[]): unknown {
  try {
    return applySettings(input, settings);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.faults.map((fault) => ({ ...fault, where: `--set ${fault.where}` })));
  }
}

/** Run option that a command-line option sets. */
const KEYS = {
  step: "step",
  soc: "startSoc",
  payload: "payload",
  wind: "headWind",
  aux: "auxiliaryPower",
  "air-density": "airDensity",
  "air-temperature": "airTemperature",
} as const satisfies Record<keyof typeof OPTION_UNITS, keyof RunOptions>;

type NumberOption = keyof typeof KEYS;

/**
 * The run's options from the command line.
 * @throws InputError for the first of them that is wrong
 */
export function readOptions(args: Arguments): RunOptions {
  const options: { -readonly [K in keyof RunOptions]: RunOptions[K] } = {};
  for (const name of Object.keys(KEYS) as NumberOption[]) {
    const text = args.text(name);
    if (text !== undefined) options[KEYS[name]] = readQuantity(`--${name}`, text, OPTION_UNITS[name]);
  }
  if (args.has("cold")) options.coldStart = true;
  const every = args.text("log-every");
  if (every !== undefined) options.logEvery = readChoice("--log-every", every, ["control", "step"]);
  return options;
}

/**
 * Vehicle, strategy and run options from the command line.
 * @throws InputError for the first of them that is wrong
 */
export async function readSetup(args: Arguments): Promise<Setup> {
  const vehicle = chooseVehicle(args.text("vehicle") ?? "compact", args.texts("set"));
  const strategy = await chooseStrategy(args.text("strategy"), vehicle);
  return { vehicle, strategy, options: readOptions(args) };
}

/**
 * Does work whose faults name the engine's run options, and tells them by the command line's own names.
 * @throws what the work throws
 */
export function namingOptions<T>(args: Arguments, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.faults.map((fault) => renamed(fault, args)));
  }
}

function renamed(fault: InputFault, args: Arguments): InputFault {
  const name = (Object.keys(KEYS) as NumberOption[]).find((n) => fault.where === `run option ${KEYS[n]}`);
  const typed = name && args.text(name);
  if (name === undefined || typed === undefined) return fault;
  const value = typed === fault.value ? typed : `${typed}, which is ${fault.value}`;
  const hint = name === "soc" ? ", written as 0.6 or 60%" : "";
  return { ...fault, where: `--${name}`, value, accepted: `${fault.accepted}${hint}` };
}
