import { InputError } from "../../shared/errors.ts";
import { celsiusToKelvin, kmhToMps, mphToMps, percentToShare } from "../../shared/units.ts";

const same = (value: number): number => value;

/** Way to SI for each unit that may stand behind a number; "" is the number alone. */
export type Units = Readonly<Record<string, (value: number) => number>>;

/** Units of the run's options, by option. */
export const OPTION_UNITS = {
  step: { "": same, s: same, ms: (ms: number) => ms / 1000 },
  soc: { "": same, "%": percentToShare },
  payload: { "": same, kg: same },
  wind: { "": same, "m/s": same, "km/h": kmhToMps, mph: mphToMps },
  aux: { "": same, W: same, kW: (kw: number) => kw * 1000 },
  "air-density": { "": same, "kg/m3": same },
  "air-temperature": { "": celsiusToKelvin, C: celsiusToKelvin, "°C": celsiusToKelvin, K: same },
} as const satisfies Record<string, Units>;

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;

/**
 * Reads a number with or without a unit into SI.
 * @param where the option, for the message
 * @throws InputError when it is no number or the unit is not one of those
 */
export function readQuantity(where: string, text: string, units: Units): number {
  const [, digits, unit = ""] = NUMBER.exec(text.trim()) ?? [];
  const convert = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (digits !== undefined && convert) return convert(Number(digits));
  const known = Object.keys(units).filter((name) => name !== "");
  throw new InputError({
    what: digits === undefined ? "not a number" : "the unit is not known here",
    where,
    value: text,
    accepted: `a number, alone or with ${known.join(", ")}`,
  });
}

/**
 * Reads a whole number.
 * @throws InputError when it is none or out of range
 */
export function readWhole(where: string, text: string, least: number, most: number): number {
  const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new InputError({
    what: "not a whole number in range",
    where,
    value: text,
    accepted: `${least} to ${most}`,
  });
}

/**
 * Reads one of several words.
 * @throws InputError naming them
 */
export function readChoice<const T extends string>(where: string, text: string, words: readonly T[]): T {
  const found = words.find((word) => word === text);
  if (found !== undefined) return found;
  throw new InputError({ what: "unknown word", where, value: text, accepted: words.join(" or ") });
}
