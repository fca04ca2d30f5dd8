import { InputError, type InputFault } from "../../../shared/errors.ts";
import { OPTION_RANGES, type RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { declarationAt } from "../../vehicle/declarations.ts";
import { readVehicle } from "../../vehicle/read.ts";
import { applySetting } from "../../vehicle/setting.ts";

/** One thing that is varied, and the values it takes. */
export interface SweepAxis {
  /** a vehicle's parameter, such as "battery.capacityAh", or a run option, such as "run.payload" */
  readonly path: string;
  /** as a setting is written: numbers in SI units, words, true or false */
  readonly values: readonly string[];
}

/** What a run option's path begins with. */
const OPTION_PREFIX = "run.";

/** Most values of one axis. */
export const MOST_VALUES = 1000;

type NumberOption = keyof typeof OPTION_RANGES;

const NUMBER_OPTIONS = Object.keys(OPTION_RANGES) as NumberOption[];

/** A vehicle and the options to drive it with. */
export interface Setting {
  readonly vehicle: Vehicle;
  readonly options: RunOptions;
}

/** The run options that can be varied, as paths. */
export const OPTION_PATHS: readonly string[] = [...NUMBER_OPTIONS, "coldStart"].map(
  (name) => OPTION_PREFIX + name,
);

/** Evenly spaced numbers, both ends included, as texts that read back to the same numbers. */
export function evenValues(from: number, to: number, count: number): readonly string[] {
  return Array.from({ length: count }, (_, i) =>
    String(
      i === count - 1 && count > 1
        ? to
        : Number((from + ((to - from) * i) / Math.max(1, count - 1)).toPrecision(12)),
    ),
  );
}

/**
 * Sets the axes' values one after the other and checks the vehicle as a whole.
 * @param values one a axis, in their order
 * @throws InputError for a path that is unknown, a value out of range, or values that do not go together
 */
export function settingAt(base: Setting, axes: readonly SweepAxis[], values: readonly string[]): Setting {
  let input: unknown = base.vehicle;
  let options = base.options;
  axes.forEach(({ path }, i) => {
    const value = values[i] ?? "";
    if (path.startsWith(OPTION_PREFIX)) options = withOption(options, path, value);
    else input = applySetting(input, path, value);
  });
  return { vehicle: input === base.vehicle ? base.vehicle : readVehicle(input, ""), options };
}

function withOption(options: RunOptions, path: string, value: string): RunOptions {
  const name = path.slice(OPTION_PREFIX.length);
  if (name === "coldStart") {
    if (value === "true" || value === "false") return { ...options, coldStart: value === "true" };
    throw new InputError({ what: "neither true nor false", where: path, value, accepted: "true or false" });
  }
  const option = NUMBER_OPTIONS.find((known) => known === name);
  if (!option) {
    throw new InputError({
      what: "unknown run option",
      where: path,
      value: "",
      accepted: OPTION_PATHS.join(", "),
    });
  }
  const number = value.trim() === "" ? Number.NaN : Number(value);
  const [least, most, unit] = OPTION_RANGES[option];
  if (number >= least && number <= most) return { ...options, [option]: number };
  throw new InputError({
    what: Number.isNaN(number) ? "not a number" : "out of range",
    where: path,
    value,
    accepted: `${least} … ${most} ${unit}`,
  });
}

/**
 * Checks the axes by themselves: known paths, values in range, nothing twice. Whether values go together shows at each
 * point.
 * @throws InputError with one fault for each thing that is wrong
 */
export function checkAxes(axes: readonly SweepAxis[]): void {
  const faults: InputFault[] = [];
  if (axes.length > 2) {
    faults.push({
      what: "too many parameters at once",
      where: "sweep",
      value: axes.map(({ path }) => path).join(", "),
      accepted: "one or two",
    });
  }
  axes.forEach(({ path, values }, i) => {
    const double = axes.findIndex((axis) => axis.path === path) !== i;
    if (double) faults.push({ what: "varied twice", where: path, value: "", accepted: "each once" });
    if (values.length === 0 || values.length > MOST_VALUES) {
      const accepted = `1 to ${MOST_VALUES} values`;
      faults.push({ what: "wrong count of values", where: path, value: String(values.length), accepted });
    }
    faults.push(...values.flatMap((value) => valueFaults(path, value)).slice(0, 5));
  });
  if (faults.length > 0) throw new InputError(faults);
}

function valueFaults(path: string, value: string): readonly InputFault[] {
  try {
    if (path.startsWith(OPTION_PREFIX)) withOption({}, path, value);
    else applySetting({}, path, value);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.faults;
    throw error;
  }
}

/** SI unit of what is varied, "1" for a pure number, "" for what is no number. */
export function unitOf(path: string): string {
  const option = NUMBER_OPTIONS.find((name) => OPTION_PREFIX + name === path);
  if (option) return OPTION_RANGES[option][2];
  const meta = declarationAt(path)?.meta;
  return meta && "unit" in meta ? meta.unit : "";
}
