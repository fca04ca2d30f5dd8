import { z } from "zod";
import { auxiliarySchema, controlSchema, fuelSchema } from "./control.ts";
import { bodySchema, finalDriveSchema, gearSetSchema } from "./driveline.ts";
import { batterySchema, outputMachineSchema, sunMachineSchema } from "./electric.ts";
import { engineSchema } from "./engine.ts";

/** Everything a vehicle is. Left-out fields take the demo compact's values. SI units throughout unless named. */
export const vehicleSchema = z.strictObject({
  schemaVersion: z.literal(1).default(1),
  id: z
    .string()
    .regex(/^[a-z0-9-]{1,40}$/)
    .default("compact"),
  name: z.string().min(1).max(80).default("Demo compact"),
  note: z.string().max(500).default("Invented for teaching."),
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
