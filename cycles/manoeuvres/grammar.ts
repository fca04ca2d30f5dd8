import type { InputFault } from "../../shared/errors.ts";
import { findUnit, unitChoice, type WrittenUnit } from "../quantities.ts";
import type { Parameter } from "./parameter.ts";

/**
 * How a manoeuvre is written on one line, on the command line as in a project file:
 *
 *     manoeuvre = name [ ":" setting { "," setting } ]
 *     setting   = key "=" number [ unit ]
 *     number    = [ "+" | "-" ] digits [ "." digits ]
 *
 * Blanks around the signs and capitals do not matter. A unit must be written wherever the parameter has one, so that
 * 60 can never mean two things: `cruise:speed=60mph,grade=2%,for=5min`.
 */

/** A line taken apart; the numbers are not yet read. */
export interface WrittenManoeuvre {
  readonly name: string;
  readonly settings: readonly WrittenSetting[];
}

/** One setting as it was written. */
export interface WrittenSetting {
  /** Lower case; empty when the equals sign is missing. */
  readonly key: string;
  readonly text: string;
}

/** A number as written, with its unit. */
export interface Quantity {
  /** The digits as typed, so that writing the line again gives the same value to the last bit. */
  readonly digits: string;
  readonly unit: WrittenUnit;
  /** s, m/s, m, m/s², rise over run. */
  readonly si: number;
}

/** Splits a line at its signs; never fails. */
export function splitLine(line: string): WrittenManoeuvre {
  const colon = line.indexOf(":");
  if (colon < 0) return { name: line.trim().toLowerCase(), settings: [] };
  const rest = line.slice(colon + 1).trim();
  return {
    name: line.slice(0, colon).trim().toLowerCase(),
    settings: rest === "" ? [] : rest.split(",").map(splitSetting),
  };
}

function splitSetting(text: string): WrittenSetting {
  const equals = text.indexOf("=");
  if (equals < 0) return { key: "", text: text.trim() };
  return { key: text.slice(0, equals).trim().toLowerCase(), text: text.slice(equals + 1).trim() };
}

/**
 * Reads a number with its unit and checks the range.
 * @param where for the fault, if it comes to one
 */
export function readQuantity(text: string, parameter: Parameter, where: string): Quantity | InputFault {
  const { dimension } = parameter;
  const range = `${rangeText(parameter)}, in ${unitChoice(dimension)}`;
  const fault = (what: string): InputFault => ({ what, where, value: text, accepted: range });
  const match = /^([+-]?\d+(?:\.\d+)?)\s*(.*)$/.exec(text);
  if (!match) return fault("This is not a number with a unit.");
  const [, digits = "", unitText = ""] = match;
  const unit = findUnit(dimension, unitText);
  if (!unit)
    return fault(unitText === "" ? "The unit is missing." : `The unit "${unitText}" is not known here.`);
  const si = unit.toSi(Number(digits));
  const own = findUnit(dimension, parameter.unit) ?? unit;
  if (!(si >= own.toSi(parameter.min) && si <= own.toSi(parameter.max)))
    return fault("The value is out of range.");
  if (dimension === "count" && !Number.isInteger(si)) return fault("The number must be whole.");
  return { digits, unit, si };
}

/** A parameter's range as text: `5 to 250 km/h`. */
export function rangeText(parameter: Parameter): string {
  return `${parameter.min} to ${parameter.max} ${parameter.unit}`.trimEnd();
}

/** The default of a parameter, as if it had been written. */
export function defaultQuantity(parameter: Parameter): Quantity {
  const unit = findUnit(parameter.dimension, parameter.unit);
  if (!unit) throw new Error(`unit "${parameter.unit}" is no ${parameter.dimension}`);
  return { digits: String(parameter.default), unit, si: unit.toSi(parameter.default) };
}
