import { fullLine } from "../../cycles/manoeuvres/catalogue.ts";
import { defaultQuantity, readQuantity, splitLine } from "../../cycles/manoeuvres/grammar.ts";
import type { Manoeuvre, Parameter } from "../../cycles/manoeuvres/parameter.ts";
import { findUnit } from "../../cycles/quantities.ts";
import { mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { num, roadUnitName, type Units } from "../state/format.ts";
import { splitNumber } from "../state/parse.ts";

/** The unit that a parameter is shown and typed in: a person's own for speeds, the manoeuvre's else. */
export const parameterUnit = ({ dimension, unit }: Parameter, units: Units): string =>
  dimension === "speed" ? roadUnitName(units) : unit.replace("m/s2", "m/s²");

const digits = (value: number): string => num(value, 3).replace(/\.?0+$/, "");

const shownSpeed = (units: Units, mps: number): number =>
  units.road === "kmh" ? mpsToKmh(mps) : mpsToMph(mps);

/** The range of a parameter in the unit shown. */
export function parameterRange(parameter: Parameter, units: Units): string {
  const { dimension, unit, min, max } = parameter;
  const own = findUnit(dimension, unit);
  const shown = (value: number): string => {
    if (dimension !== "speed" || !own) return digits(value);
    return num(shownSpeed(units, own.toSi(value)), 1).replace(/\.0$/, "");
  };
  return `${shown(min)} … ${shown(max)} ${parameterUnit(parameter, units)}`.trim();
}

/** Every parameter of a line as it is shown, by its key. @param line one that can be drawn */
export function shownParameters(
  line: string,
  { parameters }: Manoeuvre,
  units: Units,
): ReadonlyMap<string, string> {
  const shown = new Map<string, string>();
  for (const { key, text } of splitLine(fullLine(line)).settings) {
    const parameter = parameters[key];
    if (!parameter) continue;
    const read = readQuantity(text, parameter, key);
    const quantity = "what" in read ? defaultQuantity(parameter) : read;
    const inUnit =
      quantity.unit.id === (findUnit(parameter.dimension, parameterUnit(parameter, units))?.id ?? "");
    // What was typed in the unit shown stands as it was typed; the rest is converted.
    if (inUnit) shown.set(key, quantity.digits.replace("-", "−"));
    else if (parameter.dimension === "speed") shown.set(key, digits(shownSpeed(units, quantity.si)));
    else shown.set(key, `${quantity.digits} ${quantity.unit.id}`);
  }
  return shown;
}

/** What a person typed as a setting of the line: a number without a unit is in the unit shown. */
export function typedSetting(parameter: Parameter, text: string, units: Units): string {
  const read = splitNumber(text);
  if (!read) return text.replaceAll(/[,:=]/g, " ");
  const unit = read.unit === "" ? parameterUnit(parameter, units) : read.unit;
  return `${plain(read.value)}${unit}`;
}

/** Digits without an exponent, which the line does not know. */
const plain = (value: number): string => {
  const text = String(value);
  return text.includes("e") ? value.toFixed(12).replace(/\.?0+$/, "") : text;
};

/** A line with one setting in the place of what it had. */
export function withSetting(line: string, key: string, setting: string): string {
  const { name, settings } = splitLine(fullLine(line));
  const next = settings.map((one) => `${one.key}=${one.key === key ? setting : one.text}`);
  return `${name}:${next.join(",")}`;
}
