import type { Vehicle } from "../../sim/parameters/schema.ts";
import { PRESETS, vehicleById } from "../../sim/vehicle/presets/registry.ts";

/** A vehicle as lists show it. */
export interface VehicleEntry {
  readonly id: string;
  readonly title: string;
  readonly own: boolean;
}

/** A vehicle by its id: an own one first, else a preset. @throws InputError for an unknown id */
export const findVehicle = (own: readonly Vehicle[], id: string): Vehicle =>
  own.find((vehicle) => vehicle.id === id) ?? vehicleById(id);

/** Presets, then own ones. */
export const vehicleList = (own: readonly Vehicle[]): readonly VehicleEntry[] => [
  ...PRESETS.map(({ id, title }) => ({ id, title, own: false })),
  ...own.map(({ id, name }) => ({ id, title: name, own: true })),
];

/** An id that no vehicle has yet, from a base: base-2, base-3, … */
export function freshId(own: readonly Vehicle[], base: string): string {
  const taken = new Set(vehicleList(own).map((entry) => entry.id));
  const stem = base.replace(/-\d+$/, "").slice(0, 34);
  for (let n = 2; ; n += 1) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`;
}
