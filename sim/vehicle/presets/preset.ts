import type { VehicleInput } from "../../parameters/schema.ts";

/** One demo vehicle of our own invention, as it stands in the registry. */
export interface VehiclePreset {
  readonly id: string;
  readonly title: string;
  /** One sentence for a person choosing. */
  readonly about: string;
  /** Id of the strategy that this vehicle is meant to be driven with. */
  readonly defaultStrategy: string;
  /** What differs from the schema's defaults; checked by `readVehicle` like any file. */
  readonly parameters: VehicleInput;
}
