import { signal } from "@preact/signals";
import { faultText, InputError, type InputFault } from "../../shared/errors.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { PRESETS } from "../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../sim/vehicle/read.ts";
import { ownVehicles, putVehicle, setVehicle, vehicle } from "../state/store.ts";
import { freshId } from "../state/vehicles.ts";
import { t } from "../texts/catalogue.ts";

/** What was refused last: the path typed at, and why. */
export const refused = signal<{ readonly path: string; readonly text: string } | null>(null);

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
  const id = freshId(ownVehicles.value, now.id);
  return readVehicle({ ...(changed as object), id, name: t.vehicle.changedName(now.name) }, "");
}

/** The fault that belongs to a path, else the first. */
const faultOf = (faults: readonly InputFault[], path: string): string => {
  const found = faults.find((fault) => fault.where === path) ?? faults[0];
  return found ? faultText(found) : "";
};

/** Sets several parameters at once. True when the vehicle took them; else why not stands in `refused`. */
export function setParameters(
  values: Readonly<Record<string, unknown>>,
  gesture: string | null = null,
): boolean {
  const now = vehicle.value;
  const changed = Object.entries(values).reduce<unknown>(
    (of, [path, value]) => withValue(of, path.split("."), value),
    now,
  );
  const [path = ""] = Object.keys(values);
  try {
    putVehicle(asOwn(changed, now), gesture);
    refused.value = null;
    return true;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    refused.value = { path, text: faultOf(error.faults, path) };
    return false;
  }
}

/** A copy of the vehicle under a new id, taken in use. */
export function duplicate(): void {
  const now = vehicle.value;
  const id = freshId(ownVehicles.value, now.id);
  refused.value = null;
  putVehicle(readVehicle({ ...structuredClone(now), id, name: t.vehicle.copyName(now.name) }, ""));
}

/** Back to the preset that it began as; the own vehicle stays in the list. */
export function backToPreset(): void {
  refused.value = null;
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
  refused.value = null;
}
