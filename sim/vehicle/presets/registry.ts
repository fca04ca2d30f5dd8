import { InputError } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { readVehicle } from "../read.ts";
import { compact } from "./compact.ts";
import { family } from "./family.ts";
import type { VehiclePreset } from "./preset.ts";
import { van } from "./van.ts";

/** Every demo vehicle, all of our own invention. The first is the default. */
export const PRESETS: readonly VehiclePreset[] = [compact, family, van];

/** @throws InputError naming the known vehicles */
export function presetById(id: string): VehiclePreset {
  const found = PRESETS.find((preset) => preset.id === id);
  if (found) return found;
  throw new InputError({
    what: "unknown vehicle",
    where: "vehicle",
    value: id,
    accepted: PRESETS.map((preset) => preset.id).join(", "),
  });
}

const made = new Map<string, Vehicle>();

/**
 * A preset as a complete vehicle; the same frozen object each time, so that tables made from it are shared.
 * @throws InputError naming the known vehicles
 */
export function vehicleById(id: string): Vehicle {
  const preset = presetById(id);
  const known = made.get(id);
  if (known) return known;
  const vehicle = readVehicle(preset.parameters, `vehicle ${id}`);
  made.set(id, vehicle);
  return vehicle;
}
