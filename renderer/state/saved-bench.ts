import { z } from "zod";
import { following, SHAFTS, speedLimits } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { BenchState } from "./bench.ts";
import { findVehicle, vehicleList } from "./vehicles.ts";

const role = z.enum(["drive", "hold", "follow"]);
const shaft = z.enum(["sun", "carrier", "ring"]);
const three = <T extends z.ZodType>(each: T) => z.strictObject({ sun: each, carrier: each, ring: each });

/** The bench as it is kept in a file or in the browser. */
export const savedBenchSchema = z.strictObject({
  vehicle: z.string().min(1).max(40),
  speeds: three(z.number()),
  roles: three(role),
  touched: z.array(shaft).max(3),
  engineTorque: z.number().min(-1000).max(5000),
  outputTorque: z.number().min(-5000).max(5000).nullable(),
});

export type SavedBench = z.infer<typeof savedBenchSchema>;

const ROUNDING = 1e-3;

/** A bench that a file could hold but no bench could stand in is refused: why, or null for a good one. */
function contradiction(bench: SavedBench, v: Vehicle): string | null {
  const followers = SHAFTS.filter((s) => bench.roles[s] === "follow");
  const [follower, second] = followers;
  if (follower === undefined || second !== undefined) return "roles: exactly one shaft follows";
  const limits = speedLimits(v);
  const beyond = SHAFTS.find(
    (s) => bench.speeds[s] < limits[s].least - ROUNDING || bench.speeds[s] > limits[s].most + ROUNDING,
  );
  if (beyond) return `speeds.${beyond}: beyond the vehicle's limit`;
  const right = following(basicRatio(v.gearSet), bench.speeds, follower)[follower];
  return Math.abs(right - bench.speeds[follower]) > ROUNDING
    ? `speeds.${follower}: not what the teeth ask for`
    : null;
}

/** Reads a kept bench. @param own vehicles it may stand on beside the presets */
export function readBench(
  input: unknown,
  own: readonly Vehicle[] = [],
): { readonly ok: true; readonly bench: BenchState } | { readonly ok: false; readonly reason: string } {
  const parsed = savedBenchSchema.safeParse(input);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, reason: `${issue?.path.join(".") || "bench"}: ${issue?.message ?? "not readable"}` };
  }
  const known = vehicleList(own).some(({ id }) => id === parsed.data.vehicle);
  if (!known) return { ok: false, reason: `vehicle: there is none called ${parsed.data.vehicle}` };
  const reason = contradiction(parsed.data, findVehicle(own, parsed.data.vehicle));
  return reason === null ? { ok: true, bench: parsed.data } : { ok: false, reason };
}
