import type { z } from "zod";
import { InputError, type InputFault } from "../../shared/errors.ts";
import { isQuantity, type ParameterMeta } from "../parameters/quantity.ts";
import { type Vehicle, vehicleSchema } from "../parameters/schema.ts";
import { batteryFaults } from "./checks/battery.ts";
import { bodyFaults } from "./checks/body.ts";
import { controlFaults } from "./checks/control.ts";
import { engineFaults } from "./checks/engine.ts";
import { engineMapFaults } from "./checks/engine-map.ts";
import { gearSetFaults } from "./checks/gear-set.ts";
import { machineFaults } from "./checks/machines.ts";
import { declarationAt, groupFields } from "./declarations.ts";
import { acceptedBy, show, valueAt } from "./faults.ts";
import { nearest } from "./nearest.ts";

type Issue = z.core.$ZodIssue;

/** Comparisons between parameters, in the order of the vehicle's parts; each adds one fault a problem. */
const CROSS_CHECKS: readonly ((vehicle: Vehicle) => InputFault[])[] = [
  gearSetFaults,
  bodyFaults,
  engineFaults,
  engineMapFaults,
  machineFaults,
  batteryFaults,
  controlFaults,
];

/**
 * Reads a vehicle from anything: left-out parameters take their defaults, the rest is checked against the
 * declarations and then against each other. The result is frozen.
 * @param input parsed file or form
 * @param where name of the file or form, put before each parameter path; "" for none
 * @throws InputError with one fault for each problem: path, value, what is accepted
 */
export function readVehicle(input: unknown, where: string): Vehicle {
  const parsed = vehicleSchema.safeParse(input);
  if (!parsed.success)
    throw refusal(
      parsed.error.issues.flatMap((issue) => issueFaults(issue, input)),
      where,
    );
  const faults = CROSS_CHECKS.flatMap((check) => check(parsed.data));
  if (faults.length > 0) throw refusal(faults, where);
  return freeze(parsed.data);
}

const refusal = (faults: readonly InputFault[], where: string): InputError =>
  new InputError(where === "" ? faults : faults.map((f) => ({ ...f, where: `${where}: ${f.where}` })));

function freeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    for (const part of Object.values(value)) freeze(part);
    Object.freeze(value);
  }
  return value;
}

/** Dotted path of the declared parameter, and the places inside a list or table after it. */
function splitPath(path: readonly PropertyKey[]): { name: string; indices: readonly number[] } {
  const indices = path.filter((part) => typeof part === "number");
  return { name: path.filter((part) => typeof part !== "number").join("."), indices };
}

/** The faults behind one issue of the schema, told from the value and its declaration. */
function issueFaults(issue: Issue, input: unknown): InputFault[] {
  const { name, indices } = splitPath(issue.path);
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownFault(name, key, input));
  const value = valueAt(input, issue.path);
  const meta = declarationAt(name)?.meta;
  if (!meta) {
    const fields = groupFields(name).slice(0, 3).join(", ");
    const accepted = `an object with parameters such as ${fields}`;
    return [{ what: "not a group of parameters", where: name || "vehicle", value: show(value), accepted }];
  }
  const depth = meta.kind === "grid" ? 2 : 1;
  const element = isQuantity(meta) && indices.length >= depth;
  const where = name + indices.map((i) => `[${i}]`).join("");
  const what = wrong(meta, value, element);
  return [{ what, where, value: show(value), accepted: acceptedBy(meta, element) }];
}

function unknownFault(group: string, key: string, input: unknown): InputFault {
  const fields = groupFields(group);
  const near = nearest(key, fields);
  return {
    what: near === undefined ? "unknown parameter" : `unknown parameter; the nearest known is ${near}`,
    where: group === "" ? key : `${group}.${key}`,
    value: show(valueAt(input, [...(group === "" ? [] : group.split(".")), key])),
    accepted: fields.join(", "),
  };
}

/** What is wrong with a value that its declaration refuses. */
export function wrong(meta: ParameterMeta, value: unknown, element = false): string {
  if (value === undefined) return "missing";
  if (meta.kind === "flag") return "neither true nor false";
  if (meta.kind === "choice") return "none of the known words";
  if (meta.kind === "text") return "not a text of this form";
  if (!element && (meta.kind === "column" || meta.kind === "grid")) {
    if (!Array.isArray(value)) return meta.kind === "column" ? "not a list" : "not a table";
    return "too few or too many points";
  }
  if (typeof value !== "number") return "not a number";
  if (!Number.isFinite(value)) return "not a finite number";
  if (isQuantity(meta) && value < meta.min) return "too small";
  if (isQuantity(meta) && value > meta.max) return "too large";
  return "not a whole number";
}
