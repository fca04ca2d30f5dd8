import { PRESETS } from "../../vehicle/presets/registry.ts";
import { type VehicleSpec, vehicleOf } from "../vehicle-spec.ts";
import type { Fields } from "./fields.ts";

const TEETH = /^(\d{1,3})\s*\/\s*(\d{1,3})\s*\/\s*(\d{1,3})(?:\s*,\s*(\d)\s*planets)?$/;

/** Names of the lines that choose a vehicle. */
export const VEHICLE_FIELDS = ["vehicle", "gear set", "set*"] as const;

function teethSettings(fields: Fields): string[] {
  const field = fields.one("gear set");
  if (!field) return [];
  const [, sun, planet, ring, planets] = TEETH.exec(field.value) ?? [];
  if (sun === undefined) {
    const accepted = "teeth of sun / planet / ring, such as 40/32/104, perhaps with: , 4 planets";
    fields.faults.add(field.line, "not a gear set", field.value, accepted);
    return [];
  }
  return [
    `gearSet.sunTeeth=${sun}`,
    `gearSet.planetTeeth=${planet}`,
    `gearSet.ringTeeth=${ring}`,
    ...(planets === undefined ? [] : [`gearSet.planets=${planets}`]),
  ];
}

/** The vehicle that a block names, checked as a whole. */
export function readVehicleSpec(fields: Fields): VehicleSpec {
  const named = fields.one("vehicle");
  const settings = [...fields.many("set").map(({ value }) => value), ...teethSettings(fields)];
  const spec = { preset: named?.value ?? "compact", settings };
  const line = named?.line ?? fields.one("gear set")?.line ?? fields.one("set")?.line ?? fields.line;
  const good = fields.faults.trying(line, () => vehicleOf(spec));
  return good ? spec : { preset: PRESETS[0]?.id ?? "compact", settings: [] };
}
