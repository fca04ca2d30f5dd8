import type { InputFault } from "../../shared/errors.ts";
import { isQuantity, LEAST_POINTS, MOST_POINTS, type ParameterMeta } from "../parameters/quantity.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { declarationAt } from "./declarations.ts";
import { told, UNIT, type Words } from "./words.ts";

const LONGEST = 60;

/** A value found, as short text; empty for a missing one. */
export function show(value: unknown): string {
  if (value === undefined) return "";
  if (Array.isArray(value)) {
    const flat = value.every((entry) => typeof entry === "number");
    const all = flat ? value.join(", ") : "";
    return flat && all.length <= LONGEST ? all : `a list of ${value.length}`;
  }
  if (typeof value === "string") {
    return JSON.stringify(value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value);
  }
  if (typeof value === "object" && value !== null) return "an object";
  return typeof value === "function" ? "a function" : String(value);
}

/** A number with four digits: enough for a message. */
export const round = (value: number): string => String(Number(value.toPrecision(4)));

const unitText = (unit: string): string => (unit === "1" ? "" : ` ${unit}`);

const COUNT = `${LEAST_POINTS} to ${MOST_POINTS}`;

/** What a declaration accepts, with unit and meaning. @param element of a list or table, not the whole */
export const acceptedBy = (meta: ParameterMeta, element = false): string =>
  `${acceptedRange(meta, element)}: ${meta.meaning}`;

/** What a declaration accepts, with unit. @param element of a list or table, not the whole */
export function acceptedRange(meta: ParameterMeta, element = false): string {
  if (!isQuantity(meta)) {
    if (meta.kind === "flag") return "true or false";
    return meta.kind === "choice" ? meta.options.join(" or ") : "a text";
  }
  const range = `${meta.min} … ${meta.max}${unitText(meta.unit)}`;
  const list: Record<typeof meta.kind, string> = {
    number: "",
    whole: "a whole number, ",
    column: element ? "" : `a list of ${COUNT} numbers, each `,
    grid: element ? "" : `${COUNT} rows of ${COUNT} numbers, each `,
  };
  return `${list[meta.kind]}${range}`;
}

/** The value at a dotted path of anything; undefined where the path leads nowhere. */
export function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const name of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, name)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[name];
  }
  return value;
}

/**
 * A fault found by comparing parameters: value, unit and meaning are read from vehicle and declaration.
 * @param path dotted path of the parameter to mend
 * @param accepted what it would have to be; the unit follows it
 */
export function crossFault(
  vehicle: Vehicle,
  path: string,
  what: string | Words,
  accepted: string | Words,
): InputFault {
  const meta = declarationAt(path)?.meta;
  if (!meta) throw new Error(`no parameter is declared at ${path}`);
  const unit = isQuantity(meta) ? unitText(meta.unit) : "";
  const value = show(valueAt(vehicle, path.split(".")));
  const pieces = { what: [what].flat(), accepted: [accepted, UNIT].flat() };
  const how = {
    number: round,
    unit,
    named: (other: string, shown: string) => `${other.split(".").pop()} = ${shown}`,
  };
  return {
    what: told(pieces.what, how),
    where: path,
    value,
    accepted: `${told(pieces.accepted, how)} (${meta.meaning})`,
    pieces,
  };
}
