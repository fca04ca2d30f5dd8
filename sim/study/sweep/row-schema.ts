import { z } from "zod";
import type { SweepRow } from "./run-sweep-job.ts";

/** A number as JSON keeps it: what is no number there stands as null. */
const number = z
  .number()
  .nullable()
  .transform((value) => value ?? Number.NaN);

const named = z.object({ id: z.string(), title: z.string() });

const fuel = z.discriminatedUnion("balanced", [
  z.object({
    balanced: z.literal(true),
    energy_j: number,
    litres_per_100km: number,
    mpg_us: number,
    co2_g_per_km: number,
  }),
  z.object({ balanced: z.literal(false), reason: z.string() }),
]);

const comparisonRow = z.object({
  index: z.number().int().min(0),
  vehicle: z.object({ id: z.string(), name: z.string() }),
  cycle: named,
  strategy: named,
  fuel,
  raw_fuel_j: number,
  net_battery_j: number,
  net_share: number,
  net_share_left: number,
  slope: number,
  slope_source: z.enum(["measured", "marginal"]),
  start_soc: number,
  runs: number,
  distance_m: number,
  electric_kwh_per_100km: number,
  raw_litres_per_100km: number,
  recovered_j: number,
  recovery_share: number,
  starts: number,
  engine_seconds: number,
  battery_throughput_j: number,
  regimes: z.array(z.object({ id: z.string(), seconds: number })),
  trace_rms_mps: number,
  trace_seconds_outside: number,
  plug_in: z
    .object({
      soc_start: number,
      soc_end: number,
      litres_per_100km: number,
      kwh_per_100km: number,
      electric_range_m: z.number().nullable(),
    })
    .nullable(),
  optimum: z
    .object({ energy_j: number, over: number, over_quasi_static: number, grid_error: number })
    .nullable(),
});

/** One row of a results file. */
export const sweepRowSchema: z.ZodType<SweepRow> = z.object({
  index: z.number().int().min(0),
  values: z.array(z.string()),
  row: comparisonRow.nullable(),
  failure: z.string(),
});
