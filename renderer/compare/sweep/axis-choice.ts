import { OPTION_RANGES } from "../../../sim/options.ts";
import { isQuantity } from "../../../sim/parameters/quantity.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import {
  evenValues,
  FACTOR_PREFIX,
  FACTOR_RANGE,
  MOST_VALUES,
  type SweepAxis,
} from "../../../sim/study/sweep/axis.ts";
import { DECLARATIONS, type Declaration } from "../../../sim/vehicle/declarations.ts";
import { OPTION_FIELDS } from "../../drive/option-fields.ts";
import { VEHICLE_PARTS, type VehiclePart, valueAtPath } from "../../vehicle/parts.ts";
import { digits, shownUnit } from "../../vehicle/shown-units.ts";
import { readNumber } from "../read-number.ts";

/** Something that can be swept, as it is shown and typed. */
export interface Sweepable {
  readonly path: string;
  /** a part of the vehicle, or the run's options */
  readonly group: VehiclePart | "options";
  /** meaning of a parameter; the name of a run option */
  readonly title: string;
  readonly unit: string;
  /** least and most, SI; null for words */
  readonly range: readonly [number, number] | null;
  /** only whole numbers */
  readonly whole: boolean;
  /** what a word may be; empty for numbers */
  readonly words: readonly string[];
  readonly toShown: (value: number) => number;
  readonly fromShown: (value: number) => number;
}

const same = (value: number): number => value;
const NONE = { unit: "", range: null, whole: false, words: [], toShown: same, fromShown: same } as const;

const partOf = (path: string): VehiclePart | undefined =>
  VEHICLE_PARTS.find((part) => path.startsWith(`${part}.`));

/**
 * A declared parameter, a list as a whole by a factor. None for texts, which have no values in between, nor for the
 * engine's map, which few vehicles have.
 */
function parameter({ path, meta }: Declaration): Sweepable[] {
  const group = partOf(path);
  if (!group || meta.kind === "grid" || meta.kind === "text" || path.startsWith("engine.map.")) return [];
  const base = { ...NONE, path, group, title: meta.meaning };
  if (meta.kind === "column")
    return [{ ...base, path: FACTOR_PREFIX + path, unit: "×", range: FACTOR_RANGE }];
  if (!isQuantity(meta)) return [{ ...base, words: meta.kind === "flag" ? ["false", "true"] : meta.options }];
  const { name, toShown, fromShown } = shownUnit(path, meta);
  const whole = meta.kind === "whole";
  return [{ ...base, unit: name, range: [meta.min, meta.max], whole, toShown, fromShown }];
}

/** Names of the run options, as the texts have them. */
export type OptionNames = Readonly<
  Record<(typeof OPTION_FIELDS)[number]["of"] | "coldStart" | "step", string>
>;

function options(names: OptionNames): Sweepable[] {
  const base = { ...NONE, group: "options" as const };
  const [least, most, unit] = OPTION_RANGES.step;
  return [
    ...OPTION_FIELDS.map(({ of, unit: shown, toShown, fromShown }): Sweepable => {
      const [from, to] = OPTION_RANGES[of];
      return {
        ...base,
        path: `run.${of}`,
        title: names[of],
        unit: shown,
        range: [from, to],
        toShown,
        fromShown,
      };
    }),
    { ...base, path: "run.coldStart", title: names.coldStart, words: ["false", "true"] },
    { ...base, path: "run.step", title: names.step, unit, range: [least, most] },
  ];
}

/** Everything that can be swept: run options, then the vehicle's parameters part by part. */
export const sweepables = (names: OptionNames): readonly Sweepable[] => [
  ...options(names),
  ...DECLARATIONS.flatMap(parameter),
];

/** What is typed for an axis; `from` and `to` in the unit shown. */
export interface AxisForm {
  readonly path: string;
  readonly from: string;
  readonly to: string;
  readonly steps: string;
}

/** Ranges of run options that are worth a first look, in the unit shown. */
const USUAL: Readonly<Record<string, readonly [string, string]>> = {
  "run.payload": ["0", "400"],
  "run.headWind": ["-30", "30"],
  "run.airTemperature": ["-10", "40"],
  "run.airDensity": ["1", "1.3"],
  "run.auxiliaryPower": ["0", "2000"],
  "run.startSoc": ["45", "65"],
  "run.step": ["0.005", "0.02"],
};

/** Digits that survive the way between units, so that 20 km/h does not become 19.999999999999996. */
const clean = (value: number): number => Number(value.toPrecision(12));

/** A first proposal in the unit shown: two digits, or all of them where rounding would leave the range. */
function proposed({ range, toShown, fromShown }: Sweepable, value: number): string {
  const [least, most] = range ?? [value, value];
  const within = Math.min(most, Math.max(least, value));
  const round = Number(toShown(within).toPrecision(2));
  const back = clean(fromShown(round));
  return digits(back >= least && back <= most ? round : toShown(within));
}

/** A first proposal for an axis: half to one and a half times the vehicle's value, within the range. */
export function usualForm(entry: Sweepable, vehicle: Vehicle): AxisForm {
  const usual = USUAL[entry.path];
  if (usual) return { path: entry.path, from: usual[0], to: usual[1], steps: "5" };
  if (!entry.range) return { path: entry.path, from: "", to: "", steps: "" };
  if (entry.path.startsWith(FACTOR_PREFIX)) return { path: entry.path, from: "0.8", to: "1.2", steps: "5" };
  const [least, most] = entry.range;
  const value = valueAtPath(vehicle, entry.path);
  const middle = typeof value === "number" ? value : (least + most) / 2;
  const half = middle === 0 ? (most - least) / 20 : Math.abs(middle) / 2;
  return {
    path: entry.path,
    from: proposed(entry, middle - half),
    to: proposed(entry, middle + half),
    steps: "5",
  };
}

/** What a typed axis means: an axis for the engine, or what is wrong with which field. */
export type ReadAxis =
  | { readonly ok: true; readonly axis: SweepAxis }
  | {
      readonly ok: false;
      readonly field: "from" | "to" | "steps";
      readonly why: "number" | "steps" | "range";
    };

/** Reads an axis. Whole numbers that fall together count once; words take all that there are. */
export function readAxis(entry: Sweepable, form: AxisForm): ReadAxis {
  const { path, range, words, whole, fromShown } = entry;
  if (!range) return { ok: true, axis: { path, values: words } };
  const ends: number[] = [];
  for (const field of ["from", "to"] as const) {
    const shown = readNumber(form[field]);
    if (shown === null) return { ok: false, field, why: "number" };
    const value = clean(fromShown(shown));
    if (!(value >= range[0] && value <= range[1])) return { ok: false, field, why: "range" };
    ends.push(value);
  }
  const steps = readNumber(form.steps);
  if (steps === null || !Number.isInteger(steps) || steps < 2 || steps > MOST_VALUES)
    return { ok: false, field: "steps", why: "steps" };
  const [from = 0, to = 0] = ends;
  const values = evenValues(from, to, steps);
  const rounded = whole ? values.map((value) => String(Math.round(Number(value)))) : values;
  return { ok: true, axis: { path, values: [...new Set(rounded)] } };
}

/** A value of an axis as it is shown, without its unit. */
export const shownValue = (entry: Sweepable, value: string): string =>
  entry.range ? digits(clean(entry.toShown(Number(value)))) : value;

/** The axis' name with its unit. */
export const axisTitle = ({ title, unit }: Sweepable): string => (unit ? `${title}, ${unit}` : title);
