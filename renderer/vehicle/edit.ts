import { batch, computed, effect, signal } from "@preact/signals";
import { InputError, type InputFault } from "../../shared/errors.ts";
import { isQuantity } from "../../sim/parameters/quantity.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { declarationAt } from "../../sim/vehicle/declarations.ts";
import { PRESETS } from "../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../sim/vehicle/read.ts";
import { ownVehicles, putVehicle, setVehicle, vehicle } from "../state/store.ts";
import { freshId } from "../state/vehicles.ts";
import { t } from "../texts/catalogue.ts";
import { valueAtPath } from "./parts.ts";
import { refusalText, whereText } from "./refusal.ts";

/** A typed value that is not in force. */
export interface Refused {
  /** as it stands in the field */
  readonly typed: string;
  /** SI */
  readonly value: unknown;
  readonly why: string;
  /** it may become right by what else is typed: teeth, or the two lists of a curve, only fit together */
  readonly waits: boolean;
}

type RefusedBy = ReadonlyMap<string, Refused>;

const NONE: RefusedBy = new Map();

/** Characters of the longest name that the vehicle's declaration takes. */
const MOST_NAME = 80;

const kept = signal<{ readonly of: Vehicle | null; readonly by: RefusedBy }>({ of: null, by: NONE });

/** What was refused, by the path it was typed at. It ends with the vehicle it was typed for: by undo, or another one. */
export const refused = computed<RefusedBy>(() => (kept.value.of === vehicle.value ? kept.value.by : NONE));

// What was left is not found again by going to another vehicle and back.
effect(() => {
  if (kept.peek().of !== vehicle.value) kept.value = { of: null, by: NONE };
});

const keep = (by: RefusedBy): void => {
  kept.value = { of: vehicle.value, by };
};

const isPreset = (id: string): boolean => PRESETS.some((preset) => preset.id === id);

/** The preset that a vehicle began as: its own id without the number; the default where that says nothing. */
export const presetOf = (id: string): string => {
  const stem = id.replace(/-\d+$/, "");
  return isPreset(stem) ? stem : (PRESETS[0]?.id ?? "compact");
};

/** A copy of a vehicle with one value put in its place. */
function withValue(of: unknown, names: readonly string[], value: unknown): unknown {
  const [name, ...rest] = names;
  if (name === undefined) return value;
  const group = typeof of === "object" && of !== null ? (of as Record<string, unknown>) : {};
  return { ...group, [name]: withValue(group[name], rest, value) };
}

/** An own vehicle with these parameters: a changed preset becomes one under a new id and name. */
function asOwn(changed: unknown, now: Vehicle): Vehicle {
  if (!isPreset(now.id)) return readVehicle(changed, "");
  return readVehicle({ ...(changed as object), ...changedName(now, valueAtPath(changed, "name")) }, "");
}

/** Id and name of a preset's changed copy. */
function changedName<T>(preset: Vehicle, name: T): { readonly id: string; readonly name: T | string } {
  const id = freshId(ownVehicles.value, preset.id);
  return { id, name: name === preset.name ? t.vehicle.changedName(preset.name) : name };
}

type Edit = readonly [path: string, value: unknown];

/** A vehicle with edits, or why it cannot be. */
interface Attempt {
  readonly changed: unknown;
  readonly own: Vehicle | null;
  readonly faults: readonly InputFault[];
}

function attempt(edits: readonly Edit[]): Attempt {
  const now = vehicle.value;
  const changed = edits.reduce<unknown>((of, [path, value]) => withValue(of, path.split("."), value), now);
  try {
    return { changed, own: asOwn(changed, now), faults: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { changed, own: null, faults: error.faults };
  }
}

/** Whether all that is wrong lies between parameters, so that other values of others could mend it. */
const isBetween = ({ faults }: Attempt): boolean => faults.every(({ pieces }) => pieces !== undefined);

/** The words of the fault at a path; undefined where there is none. */
const wordsAt = ({ faults, changed }: Attempt, path: string): string | undefined => {
  const fault = faults.find(({ where }) => where === path || where.startsWith(`${path}[`));
  return fault && refusalText(fault, changed);
};

const firstWords = ({ faults: [first], changed }: Attempt): string =>
  first ? refusalText(first, changed) : "";

const edits = (of: Iterable<readonly [string, Refused]>): Edit[] =>
  [...of].filter(([, one]) => one.waits).map(([path, one]) => [path, one.value]);

/** Puts a vehicle in force; of what was refused, this stays. */
const take = (own: Vehicle, rest: () => void): void =>
  batch(() => {
    putVehicle(own);
    rest();
  });

const waitsNot = (by: RefusedBy): RefusedBy => new Map([...by].filter(([, one]) => !one.waits));

/** What waits is taken where it fits together by now; else each says what is wrong with them all. */
function settle(by: RefusedBy, newest?: { readonly path: string; readonly why: string | undefined }): void {
  const waiting = edits(by);
  const together = attempt(waiting);
  if (waiting.length === 0) {
    keep(by);
    return;
  }
  if (together.own) {
    take(together.own, () => keep(waitsNot(by)));
    return;
  }
  // One field tells the fault whole where it lies at none of those that wait.
  const teller = newest?.path ?? waiting.at(-1)?.[0];
  const told = waiting.some(([path]) => path !== newest?.path && wordsAt(together, path));
  const why = (path: string): string => {
    const own = wordsAt(together, path) ?? (path === newest?.path ? newest.why : undefined);
    if (own) return t.vehicle.waits(own);
    if (path === teller && (newest || !told)) return t.vehicle.waits(firstWords(together));
    return t.vehicle.waitsFor(together.faults[0] ? whereText(together.faults[0]) : "");
  };
  keep(new Map([...by].map(([path, one]) => [path, one.waits ? { ...one, why: why(path) } : one])));
}

/**
 * Sets one parameter, SI. What does not fit the others waits, and is tried again with all that waits by the next edit;
 * until then the vehicle stays as it was, and `refused` says why.
 * @param typed as it stands in the field
 * @returns whether the vehicle took it
 */
export function setParameter(path: string, value: unknown, typed: string): boolean {
  const others = new Map(refused.value);
  others.delete(path);
  const together = attempt([...edits(others), [path, value]]);
  if (together.own) {
    take(together.own, () => keep(waitsNot(others)));
    return true;
  }
  const alone = attempt([[path, value]]);
  if (alone.own) {
    take(alone.own, () => settle(others));
    return true;
  }
  const meta = declarationAt(path)?.meta;
  const waits = isBetween(alone) && meta !== undefined && isQuantity(meta);
  const why = wordsAt(alone, path);
  settle(others.set(path, { typed, value, why: why ?? firstWords(alone), waits }), { path, why });
  return false;
}

/**
 * Sets one parameter in a vehicle that was checked elsewhere: a map can have so many points that checking takes time.
 * @param checked the vehicle in use with the value (readVehicle)
 */
export function setChecked(path: string, checked: Vehicle, typed: string): void {
  const others = new Map(refused.value);
  others.delete(path);
  // What waits is tried together with it, as one step.
  if (edits(others).length > 0) {
    setParameter(path, valueAtPath(checked, path), typed);
    return;
  }
  const now = vehicle.value;
  const own = isPreset(now.id) ? { ...checked, ...changedName(now, checked.name) } : checked;
  take(own, () => keep(others));
}

/** Takes a refused value back: its field shows the one in force. */
export function takeBack(path: string): void {
  const by = new Map(refused.value);
  if (by.delete(path)) settle(by);
}

/** A copy of the vehicle under a new id, taken in use. */
export function duplicate(): void {
  const now = vehicle.value;
  const id = freshId(ownVehicles.value, now.id);
  const name = t.vehicle.copyName(now.name);
  // A name may be as long as names can be.
  putVehicle(
    readVehicle({ ...structuredClone(now), id, name: name.length > MOST_NAME ? now.name : name }, ""),
  );
}

/** Back to the preset that it began as; the own vehicle stays in the list. */
export function backToPreset(): void {
  setVehicle(presetOf(vehicle.value.id));
}

/** Takes a vehicle file's text; a broken one is refused and nothing changes. @throws InputError */
export function takeVehicleText(text: string, name: string): void {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : "";
    throw new InputError({ what: "not JSON", where: name, value: why, accepted: "a vehicle file" });
  }
  const read = readVehicle(data, name);
  const taken = isPreset(read.id);
  putVehicle(taken ? readVehicle({ ...read, id: freshId(ownVehicles.value, read.id) }, name) : read);
}
