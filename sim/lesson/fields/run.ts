import { cycleById } from "../../../cycles/catalogue.ts";
import { strategyById } from "../../control/strategies/registry.ts";
import { OPTION_RANGES } from "../../options.ts";
import type { LessonFaults } from "../faults.ts";
import { RUN_NUMBERS, type RunNumber, type RunScene, type Written } from "../lesson.ts";
import { type LessonUnit, unitById } from "../units.ts";
import { type Fields, readFields } from "./fields.ts";
import { hiddenNames } from "./names.ts";
import { readVehicleSpec, VEHICLE_FIELDS } from "./vehicle.ts";
import { readWritten } from "./written.ts";

const NUMBERS = Object.keys(RUN_NUMBERS) as RunNumber[];
/** Fields of a `run` block; a star marks one that may stand several times. */
export const RUN_FIELDS = [...VEHICLE_FIELDS, "name", "cycle", "strategy", ...NUMBERS, "cold", "at", "hide"];

const BARE = unitById("");
const UNITS: Readonly<Record<RunNumber, LessonUnit>> = {
  payload: BARE,
  wind: unitById("m/s"),
  auxiliaries: unitById("W"),
  charge: unitById("%"),
  "air density": BARE,
};

const ID = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

/** Words of expressions that no run may be called by. */
const TAKEN = ["always", "never", "and", "is", "of", "abs", "regime"];

/** Units of measure that lessons have no name for are written behind the number: `100 kg`. */
const withoutUnit = (text: string): string => text.replace(/\s*(kg\/m3|kg\/m³|kg)/g, "");

function numberOf(fields: Fields, name: RunNumber): Written | null {
  const field = fields.one(name);
  if (!field) return null;
  const found = fields.faults.trying(field.line, () => readWritten(withoutUnit(field.value), UNITS[name]));
  if (!found) return null;
  const [least, most, unit] = OPTION_RANGES[RUN_NUMBERS[name]];
  const far = [found.value, ...found.choices].find((value) => !(value >= least && value <= most));
  if (far === undefined) return found;
  fields.faults.add(field.line, "out of range", field.value, `${least} … ${most} ${unit}`);
  return null;
}

function numbersOf(fields: Fields): RunScene["numbers"] {
  const found: Partial<Record<RunNumber, Written>> = {};
  for (const name of NUMBERS) {
    const number = numberOf(fields, name);
    if (number) found[name] = number;
  }
  return found;
}

function instantOf(fields: Fields): RunScene["at"] {
  const field = fields.one("at");
  if (!field) return null;
  if (ID.test(field.value)) return field.value;
  return fields.faults.trying(field.line, () => readWritten(field.value, unitById("s")));
}

function nameOf(fields: Fields): string {
  const field = fields.one("name");
  if (!field) return "run";
  if (ID.test(field.value) && !TAKEN.includes(field.value)) return field.value;
  const accepted = `lower-case words joined by hyphens, none of ${TAKEN.join(", ")}`;
  fields.faults.add(field.line, "not a name for a run", field.value, accepted);
  return "run";
}

function coldOf(fields: Fields): boolean {
  const field = fields.one("cold");
  if (field && field.value !== "yes" && field.value !== "no") {
    fields.faults.add(field.line, "neither yes nor no", field.value, "cold: yes, or cold: no");
  }
  return field?.value === "yes";
}

/** Reads a `run` block. */
export function readRun(line: number, text: string, faults: LessonFaults): RunScene {
  const fields = readFields("run", line, text, RUN_FIELDS, faults);
  const cycle = fields.needed("cycle", "a cycle's id, or a manoeuvre such as cruise:speed=100km/h");
  const strategy = fields.one("strategy");
  if (cycle) faults.trying(cycle.line, () => cycleById(cycle.value));
  if (strategy) faults.trying(strategy.line, () => strategyById(strategy.value));
  return {
    kind: "run",
    line,
    name: nameOf(fields),
    vehicle: readVehicleSpec(fields),
    cycle: cycle?.value ?? "udds",
    strategy: strategy?.value ?? "rules",
    numbers: numbersOf(fields),
    cold: coldOf(fields),
    at: instantOf(fields),
    hide: hiddenNames(fields),
  };
}
