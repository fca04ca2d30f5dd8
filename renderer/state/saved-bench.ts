import { z } from "zod";
import { following, SHAFTS, speedLimits } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import { PRESETS, vehicleById } from "../../sim/vehicle/presets/registry.ts";
import type { BenchState } from "./bench.ts";

const role = z.enum(["drive", "hold", "follow"]);
const shaft = z.enum(["sun", "carrier", "ring"]);
const three = <T extends z.ZodType>(each: T) => z.strictObject({ sun: each, carrier: each, ring: each });

/** The bench as it is kept in a file or in the browser. */
export const savedBenchSchema = z.strictObject({
  vehicle: z.enum(PRESETS.map((preset) => preset.id)),
  speeds: three(z.number()),
  roles: three(role),
  touched: z.array(shaft).max(3),
  engineTorque: z.number().min(-1000).max(5000),
  outputTorque: z.number().min(-5000).max(5000).nullable(),
});

export type SavedBench = z.infer<typeof savedBenchSchema>;

const ROUNDING = 1e-3;

/** A bench that a file could hold but no bench could stand in is refused: why, or null for a good one. */
function contradiction(bench: SavedBench): string | null {
  const v = vehicleById(bench.vehicle);
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

/** Reads a kept bench. */
export function readBench(
  input: unknown,
): { readonly ok: true; readonly bench: BenchState } | { readonly ok: false; readonly reason: string } {
  const parsed = savedBenchSchema.safeParse(input);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return { ok: false, reason: `${issue?.path.join(".") || "bench"}: ${issue?.message ?? "not readable"}` };
  }
  const reason = contradiction(parsed.data);
  return reason === null ? { ok: true, bench: parsed.data } : { ok: false, reason };
}
