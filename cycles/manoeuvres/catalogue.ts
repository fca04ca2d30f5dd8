import type { CycleTrace } from "../../shared/cycle.ts";
import { InputError, type InputFault } from "../../shared/errors.ts";
import { slug } from "../slug.ts";
import { backUp } from "./back-up.ts";
import { brakeStop } from "./brake-stop.ts";
import { cruise } from "./cruise.ts";
import { defaultQuantity, type Quantity, readQuantity, splitLine, type WrittenSetting } from "./grammar.ts";
import { hillDown } from "./hill-down.ts";
import { launch } from "./launch.ts";
import type { Manoeuvre } from "./parameter.ts";
import { stopAndGo } from "./stop-and-go.ts";

/** All manoeuvres, in the order they are offered. */
export const MANOEUVRES: readonly Manoeuvre[] = [launch, cruise, brakeStop, hillDown, stopAndGo, backUp];

/** True when the text before the colon names a manoeuvre; the parameters may still be wrong. */
export function isManoeuvre(line: string): boolean {
  return find(splitLine(line).name) !== undefined;
}

/**
 * Draws a manoeuvre.
 * @param line name and parameters as in grammar.ts; parameters left out have their defaults
 * @returns a trace that starts and ends at rest; its source holds the full line with every parameter, which draws
 *   the same trace again
 * @throws InputError with one fault for each parameter that is wrong
 */
export function manoeuvre(line: string): CycleTrace {
  const { definition, values } = read(line);
  const value = (key: string): number => {
    const quantity = values.get(key);
    if (!quantity) throw new Error(`${definition.id} has no parameter "${key}"`);
    return quantity.si;
  };
  return {
    id: shortId(definition, values),
    title: title(definition, values),
    source: `own manoeuvre ${write(definition, values)}`,
    ...definition.draw(value).finish(),
    soaks: [],
    treatment: [],
  };
}

/**
 * Writes a manoeuvre with every parameter, in a fixed order. Reading it again gives the same trace, and writing that
 * gives the same line.
 * @throws InputError as `manoeuvre`
 */
export function fullLine(line: string): string {
  const { definition, values } = read(line);
  return write(definition, values);
}

type Values = ReadonlyMap<string, Quantity>;

function find(name: string): Manoeuvre | undefined {
  return MANOEUVRES.find((candidate) => candidate.id === name);
}

function read(line: string): { definition: Manoeuvre; values: Values } {
  const { name, settings } = splitLine(line);
  const definition = find(name);
  if (!definition) {
    throw new InputError({
      what: "There is no manoeuvre of this name.",
      where: `manoeuvre "${line}"`,
      value: name,
      accepted: MANOEUVRES.map((m) => m.id).join(", "),
    });
  }
  const faults: InputFault[] = [];
  const given = new Map<string, Quantity>();
  for (const setting of settings) readSetting(setting, definition, line, given, faults);
  if (faults.length > 0) throw new InputError(faults);
  const values = new Map<string, Quantity>();
  for (const [key, parameter] of Object.entries(definition.parameters)) {
    values.set(key, given.get(key) ?? defaultQuantity(parameter));
  }
  return { definition, values };
}

function readSetting(
  setting: WrittenSetting,
  definition: Manoeuvre,
  line: string,
  given: Map<string, Quantity>,
  faults: InputFault[],
): void {
  const { key, text } = setting;
  const keys = Object.keys(definition.parameters).join(", ");
  const where = `manoeuvre "${line}", parameter "${key}"`;
  const parameter = Object.hasOwn(definition.parameters, key) ? definition.parameters[key] : undefined;
  if (!parameter) {
    const what = key === "" ? "A setting has no equals sign or no name." : "There is no such parameter.";
    faults.push({ what, where, value: key === "" ? text : key, accepted: `key=value with one of ${keys}` });
  } else if (given.has(key)) {
    faults.push({
      what: "The parameter is given twice.",
      where,
      value: text,
      accepted: "each parameter once",
    });
  } else {
    const quantity = readQuantity(text, parameter, where);
    if ("what" in quantity) faults.push(quantity);
    else given.set(key, quantity);
  }
}

const asWritten = (quantity: Quantity): string => `${quantity.digits}${quantity.unit.id}`;

function write(definition: Manoeuvre, values: Values): string {
  const settings = [...values].map(([key, quantity]) => `${key}=${asWritten(quantity)}`);
  return `${definition.id}:${settings.join(",")}`;
}

function changed(definition: Manoeuvre, values: Values): [string, Quantity][] {
  return [...values].filter(([key, quantity]) => {
    const parameter = definition.parameters[key];
    return parameter !== undefined && quantity.si !== defaultQuantity(parameter).si;
  });
}

function title(definition: Manoeuvre, values: Values): string {
  const settings = changed(definition, values).map(
    ([key, quantity]) => `${key} ${quantity.digits} ${quantity.unit.id}`,
  );
  return settings.length === 0 ? definition.title : `${definition.title}, ${settings.join(", ").trimEnd()}`;
}

// An id takes no signs, so they are spelled out; otherwise -2% and 2% would meet in one id.
function shortId(definition: Manoeuvre, values: Values): string {
  const settings = changed(definition, values).map(([key, quantity]) => {
    const value = asWritten(quantity).replace("-", " minus ").replace("%", "pct").replaceAll("/", "");
    return `${key} ${value}`;
  });
  return slug([definition.id, ...settings].join(" "), definition.id);
}
