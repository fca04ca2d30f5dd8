import { z } from "zod";
import { auxiliarySchema, controlSchema, fuelSchema } from "./control.ts";
import { bodySchema, finalDriveSchema, gearSetSchema } from "./driveline.ts";
import { batterySchema, outputMachineSchema, sunMachineSchema } from "./electric.ts";
import { engineSchema } from "./engine.ts";
import { text, whole } from "./quantity.ts";

/** Everything a vehicle is. Left-out fields take the demo compact's values. SI units throughout unless named. */
export const vehicleSchema = z.strictObject({
  schemaVersion: whole("version of this set of parameters", "1", [1, 1], 1),
  id: text("short name: 1 to 40 of a-z, 0-9 and hyphen", /^[a-z0-9-]{1,40}$/, "compact"),
  name: text("name for people, 1 to 80 characters", /^.{1,80}$/s, "Demo compact"),
  note: text(
    "where the numbers come from, up to 500 characters",
    /^.{0,500}$/s,
    "Invented for teaching: no real vehicle.",
  ),
  gearSet: gearSetSchema.prefault({}),
  finalDrive: finalDriveSchema.prefault({}),
  body: bodySchema.prefault({}),
  engine: engineSchema.prefault({}),
  sunMachine: sunMachineSchema.prefault({}),
  outputMachine: outputMachineSchema.prefault({}),
  battery: batterySchema.prefault({}),
  auxiliary: auxiliarySchema.prefault({}),
  fuel: fuelSchema.prefault({}),
  control: controlSchema.prefault({}),
});

/** A complete, range-checked vehicle. */
export type Vehicle = z.infer<typeof vehicleSchema>;

/** A vehicle as files and forms give it: every field may be left out. */
export type VehicleInput = z.input<typeof vehicleSchema>;
