import type { VehiclePreset } from "./preset.ts";

/** The compact: every value is the schema's default, so only its name stands here. */
export const compact: VehiclePreset = {
  id: "compact",
  title: "Compact",
  about: "Five-door compact of 1.5 t with a small battery that lives from braking and from the engine.",
  defaultStrategy: "rules",
  parameters: {
    id: "compact",
    name: "Demo compact",
    note: "Invented for teaching: no real vehicle. Small battery, kept near one charge.",
  },
};
