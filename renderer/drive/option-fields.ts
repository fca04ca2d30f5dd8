import { kmhToMps, mpsToKmh } from "../../shared/units.ts";
import { OPTION_RANGES, type RunOptions, STANDARD_AIR_TEMPERATURE } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { REFERENCE_AIR_DENSITY } from "../../sim/settings.ts";
import { num } from "../state/format.ts";

type Name = "startSoc" | "payload" | "headWind" | "airTemperature" | "airDensity" | "auxiliaryPower";

/** How a run option is shown and typed. */
export interface OptionField {
  readonly of: Name;
  readonly unit: string;
  readonly decimals: number;
  readonly toShown: (value: number) => number;
  readonly fromShown: (value: number) => number;
  /** what holds when nothing is typed, as text */
  readonly standard: (vehicle: Vehicle) => string;
}

const same = (value: number): number => value;
const KELVIN = 273.15;

/** The options in their order. */
export const OPTION_FIELDS: readonly OptionField[] = [
  {
    of: "startSoc",
    unit: "%",
    decimals: 1,
    toShown: (value) => value * 100,
    fromShown: (value) => value / 100,
    standard: (v) => num(v.battery.socStart * 100, 1),
  },
  { of: "payload", unit: "kg", decimals: 0, toShown: same, fromShown: same, standard: () => "0" },
  {
    of: "headWind",
    unit: "km/h",
    decimals: 1,
    toShown: mpsToKmh,
    fromShown: kmhToMps,
    standard: () => "0",
  },
  {
    of: "airTemperature",
    unit: "°C",
    decimals: 1,
    toShown: (value) => value - KELVIN,
    fromShown: (value) => value + KELVIN,
    standard: () => num(STANDARD_AIR_TEMPERATURE - KELVIN, 1),
  },
  {
    of: "airDensity",
    unit: "kg/m³",
    decimals: 3,
    toShown: same,
    fromShown: same,
    standard: () => num(REFERENCE_AIR_DENSITY, 3),
  },
  {
    of: "auxiliaryPower",
    unit: "W",
    decimals: 0,
    toShown: same,
    fromShown: same,
    standard: (v) => num(v.auxiliary.power, 0),
  },
];

/** What a typed text means: a value in SI, null for nothing typed, or the range it should be in, as text. */
export type ReadOption =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly least: string; readonly most: string };

/** Reads a typed option; a decimal comma and a true minus count. */
export function parseOption(field: OptionField, text: string): ReadOption {
  const plain = text
    .trim()
    .replace(",", ".")
    .replace("−", "-")
    .replace(/([\d.])\s*[%a-z°/³²]+$/i, "$1");
  if (plain === "") return { ok: true, value: null };
  const value = field.fromShown(Number(plain));
  const [least, most] = OPTION_RANGES[field.of];
  if (value >= least && value <= most) return { ok: true, value };
  const shown = (limit: number): string => num(field.toShown(limit), field.decimals);
  return { ok: false, least: shown(least), most: shown(most) };
}

/** An option as it stands in its field; empty when it is not set. */
export const shownOption = (field: OptionField, value: RunOptions[Name]): string =>
  value === undefined ? "" : String(Number(field.toShown(value).toFixed(field.decimals)));
