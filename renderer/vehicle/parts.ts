import { DECLARATIONS, type Declaration } from "../../sim/vehicle/declarations.ts";

/** The parts whose parameters are shown together; each is a group of the vehicle's declarations. */
export const VEHICLE_PARTS = [
  "engine",
  "gearSet",
  "sunMachine",
  "outputMachine",
  "battery",
  "finalDrive",
  "body",
  "auxiliary",
  "fuel",
  "control",
] as const;

export type VehiclePart = (typeof VEHICLE_PARTS)[number];

/** Colour of a part, as its shaft's everywhere. */
export const PART_COLOUR: Readonly<Record<VehiclePart, string>> = {
  engine: "carrier",
  gearSet: "",
  sunMachine: "sun",
  outputMachine: "ring",
  battery: "battery",
  finalDrive: "ring",
  body: "",
  auxiliary: "battery",
  fuel: "fuel",
  control: "",
};

/** The declared parameters of a part, in their order. */
export const declarationsOf = (part: VehiclePart): readonly Declaration[] =>
  DECLARATIONS.filter(({ path }) => path.startsWith(`${part}.`));

/** The value at a dotted path of a vehicle. */
export function valueAtPath(of: unknown, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>(
      (at, name) =>
        typeof at === "object" && at !== null ? (at as Record<string, unknown>)[name] : undefined,
      of,
    );
}
