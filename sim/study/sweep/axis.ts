import { InputError, type InputFault } from "../../../shared/errors.ts";
import { OPTION_RANGES, type RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { DECLARATIONS, declarationAt } from "../../vehicle/declarations.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { readVehicle } from "../../vehicle/read.ts";
import { applySetting } from "../../vehicle/setting.ts";

/** One thing that is varied, and the values it takes. */
export interface SweepAxis {
  /**
   * a vehicle's parameter, such as "battery.capacityAh", a run option, such as "run.payload", or a whole list or table
   * by a factor, such as "factor.engine.fullLoadTorque"
   */
  readonly path: string;
  /** as a setting is written: numbers in SI units, words, true or false */
  readonly values: readonly string[];
}

/** What a run option's path begins with. */
const OPTION_PREFIX = "run.";

/** What the path of a list or table begins with where all its numbers are multiplied. */
export const FACTOR_PREFIX = "factor.";

/** Least and greatest factor. */
export const FACTOR_RANGE = [0.01, 100] as const;

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
    else if (path.startsWith(FACTOR_PREFIX)) input = timesFactor(input, path, value);
    else input = applySetting(input, path, value);
  });
  return { vehicle: input === base.vehicle ? base.vehicle : readVehicle(input, ""), options };
}

/** The factor of a text. @throws InputError for a path that is no list or table, and a factor out of range */
function factorOf(path: string, value: string): number {
  const of = path.slice(FACTOR_PREFIX.length);
  const lists = DECLARATIONS.filter(({ meta }) => meta.kind === "column" || meta.kind === "grid");
  if (!lists.some((known) => known.path === of)) {
    const paths = lists.map((known) => FACTOR_PREFIX + known.path);
    const what = `no list or table; the nearest is ${nearest(path, paths) ?? ""}`;
    throw new InputError({ what, where: path, value: "", accepted: paths.join(", ") });
  }
  const number = value.trim() === "" ? Number.NaN : Number(value);
  const [least, most] = FACTOR_RANGE;
  if (number >= least && number <= most) return number;
  throw new InputError({
    what: Number.isNaN(number) ? "not a number" : "out of range",
    where: path,
    value,
    accepted: `${least} … ${most} ×`,
  });
}

const times = (value: unknown, factor: number): unknown =>
  Array.isArray(value) ? value.map((one) => times(one, factor)) : Number(value) * factor;

/** A vehicle's input with every number of a list or table multiplied; `readVehicle` checks what comes of it. */
function timesFactor(input: unknown, path: string, value: string): unknown {
  const factor = factorOf(path, value);
  const names = path.slice(FACTOR_PREFIX.length).split(".");
  const within = (group: unknown, at: number): unknown => {
    const name = names[at];
    if (name === undefined) return times(group, factor);
    if (typeof group === "object" && group !== null && Object.hasOwn(group, name)) {
      const inner = within((group as Record<string, unknown>)[name], at + 1);
      return { ...group, [name]: inner };
    }
    const what = "the vehicle has no such list or table";
    const accepted = "a vehicle that has it: an engine map is read from a CSV";
    throw new InputError({ what, where: path, value: "", accepted });
  };
  return within(input, 0);
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
    else if (path.startsWith(FACTOR_PREFIX)) factorOf(path, value);
    else applySetting({}, path, value);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.faults;
    throw error;
  }
}

/** SI unit of what is varied, "×" for a factor, "1" for a pure number, "" for what is no number. */
export function unitOf(path: string): string {
  if (path.startsWith(FACTOR_PREFIX)) return "×";
  const option = NUMBER_OPTIONS.find((name) => OPTION_PREFIX + name === path);
  if (option) return OPTION_RANGES[option][2];
  const meta = declarationAt(path)?.meta;
  return meta && "unit" in meta ? meta.unit : "";
}
