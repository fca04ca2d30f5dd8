import type { Vehicle } from "../parameters/schema.ts";
import { presetById, vehicleById } from "../vehicle/presets/registry.ts";
import { readVehicle } from "../vehicle/read.ts";
import { applySettings } from "../vehicle/setting.ts";

/** A vehicle as a lesson names it. Plain data. */
export interface VehicleSpec {
  /** id of a preset */
  readonly preset: string;
  /** `path=value` each, SI units */
  readonly settings: readonly string[];
}

const made = new Map<string, Vehicle>();

/** Vehicles kept at most: handouts with varied vehicles must not fill the memory. */
const MOST = 200;

/**
 * The vehicle that is meant; the same object each time, so that tables made from it are shared.
 * @throws InputError for an unknown preset, path or value, and for a vehicle that contradicts itself
 */
export function vehicleOf({ preset, settings }: VehicleSpec): Vehicle {
  if (settings.length === 0) return vehicleById(preset);
  const name = JSON.stringify([preset, settings]);
  const known = made.get(name);
  if (known) return known;
  const vehicle = readVehicle(applySettings(presetById(preset).parameters, settings), "");
  if (made.size >= MOST) made.clear();
  made.set(name, vehicle);
  return vehicle;
}
