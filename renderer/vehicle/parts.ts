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

/** What the form of the place can hold: a part, or what the vehicle is called. */
export const FORM_PARTS = [...VEHICLE_PARTS, "about"] as const;

export type FormPart = (typeof FORM_PARTS)[number];

/** Colour of a part, as its shaft's everywhere. */
export const PART_COLOUR: Readonly<Record<FormPart, string>> = {
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
  about: "",
};

/** What people may write of the vehicle as a whole; its id and version are not theirs. */
const ABOUT: ReadonlySet<string> = new Set(["name", "note"]);

/** Whether a parameter is shown with a part. */
export const isOf = (part: FormPart, path: string): boolean =>
  part === "about" ? ABOUT.has(path) : path.startsWith(`${part}.`);

/** The declared parameters of a part, in their order. */
export const declarationsOf = (part: FormPart): readonly Declaration[] =>
  DECLARATIONS.filter(({ path }) => isOf(part, path));

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
