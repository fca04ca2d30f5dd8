import { z } from "zod";
import { InputError, type InputFault } from "../../shared/errors.ts";
import { isQuantity, type ParameterMeta } from "../parameters/quantity.ts";
import { DECLARATIONS, type Declaration, declarationAt, groupFields } from "./declarations.ts";
import { acceptedBy, show } from "./faults.ts";
import { nearest } from "./nearest.ts";
import { wrong } from "./read.ts";

const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * A copy of a vehicle's input with one parameter set, as the command line does it. Only this parameter is checked;
 * `readVehicle` checks the whole.
 * @param vehicleInput parsed file, preset parameters, or {} for the defaults; not changed
 * @param path dotted path, such as "engine.startFuel"
 * @param text the value: a number in the parameter's SI unit, numbers parted by commas for a list (rows parted by
 * semicolons for a table), true or false, or a word
 * @throws InputError for an unknown path (naming the nearest), a value that cannot be read or is out of range
 */
export function applySetting(vehicleInput: unknown, path: string, text: string): unknown {
  const declaration = declarationAt(path);
  if (!declaration) throw new InputError(unknownPath(path, text));
  const value = parse(declaration.meta, text.trim());
  if (value === undefined || !z.safeParse(declaration.schema, value).success) {
    const what = value === undefined ? "no value" : wrongPart(declaration.meta, value);
    const accepted = acceptedBy(declaration.meta);
    throw new InputError({ what, where: path, value: show(text), accepted });
  }
  return withValue(vehicleInput, path.split("."), path, value);
}

/**
 * Several settings one after the other.
 * @param settings texts of the form "path=value"
 * @throws InputError as `applySetting`, and for a text without "="
 */
export function applySettings(vehicleInput: unknown, settings: readonly string[]): unknown {
  return settings.reduce<unknown>((input, setting) => {
    const cut = setting.indexOf("=");
    if (cut > 0) return applySetting(input, setting.slice(0, cut).trim(), setting.slice(cut + 1));
    const accepted = "path=value, such as engine.startFuel=8000";
    throw new InputError({ what: "not a setting", where: "setting", value: show(setting), accepted });
  }, vehicleInput);
}

/** The text as the kind of value wanted; what cannot be read stays text, which the declaration then refuses. */
function parse(meta: ParameterMeta, text: string): unknown {
  const number = (part: string): unknown => (DECIMAL.test(part.trim()) ? Number(part) : part.trim());
  const list = (part: string): unknown[] => part.split(",").map(number);
  if (text === "" && meta.kind !== "text") return undefined;
  if (meta.kind === "flag") return text === "true" ? true : text === "false" ? false : text;
  if (meta.kind === "column") return list(text);
  if (meta.kind === "grid") return text.split(";").map(list);
  return isQuantity(meta) ? number(text) : text;
}

/** What is wrong: told of the first bad element where a list is of the right length. */
function wrongPart(meta: ParameterMeta, value: unknown): string {
  if (!isQuantity(meta) || !Array.isArray(value)) return wrong(meta, value);
  const flat: unknown[] = value.flat();
  const bad = flat.findIndex((x) => typeof x !== "number" || !(x >= meta.min && x <= meta.max));
  return bad < 0 ? wrong(meta, value) : `${wrong(meta, flat[bad], true)} at place ${bad + 1}`;
}

function unknownPath(path: string, text: string): InputFault {
  const fields = groupFields(path);
  if (fields.length > 0) {
    const accepted = fields.map((field) => `${path}.${field}`).join(", ");
    return { what: "a group of parameters, not one", where: path || "setting", value: show(text), accepted };
  }
  const near = nearestPath(path);
  return {
    what: `unknown parameter; the nearest known is ${near}`,
    where: path || "setting",
    value: show(text),
    accepted: "a parameter's dotted path, as listed with the vehicles",
  };
}

/** Nearest by the whole path, or by the last name alone where somebody left the group out. */
function nearestPath(path: string): string {
  const named = DECLARATIONS.filter((d: Declaration) => d.path.split(".").at(-1) === path.split(".").at(-1));
  const paths = (named.length > 0 ? named : DECLARATIONS).map((d) => d.path);
  return nearest(path, paths) ?? "";
}

function withValue(root: unknown, names: readonly string[], path: string, value: unknown): unknown {
  const [name, ...rest] = names;
  if (name === undefined) return value;
  const group = root === undefined ? {} : root;
  if (typeof group !== "object" || group === null || Array.isArray(group)) {
    const accepted = "a vehicle's parameters as an object";
    throw new InputError({ what: "no group to set it in", where: path, value: show(root), accepted });
  }
  const inner = Object.hasOwn(group, name) ? (group as Record<string, unknown>)[name] : undefined;
  return { ...group, [name]: withValue(inner, rest, path, value) };
}
