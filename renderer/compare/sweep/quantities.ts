import { joulesToKwh, mpsToKmh } from "../../../shared/units.ts";
import type { ComparisonRow } from "../../../sim/study/compare/row.ts";

/** A figure of a row that can be drawn over what is swept. */
export interface Quantity {
  readonly id: "fuel" | "over" | "recovered" | "starts" | "engine" | "throughput" | "trace" | "electric";
  readonly decimals: number;
  /** in the unit shown; null where the row has none, never a number that is not comparable */
  readonly of: (row: ComparisonRow) => number | null;
}

/** The figure that is asked for first. */
export const FUEL: Quantity = {
  id: "fuel",
  decimals: 2,
  of: ({ fuel }) => (fuel.balanced ? fuel.litres_per_100km : null),
};

/** The figures, the most asked first. */
export const QUANTITIES: readonly Quantity[] = [
  FUEL,
  {
    id: "over",
    decimals: 1,
    of: ({ fuel, optimum }) => (fuel.balanced && optimum ? optimum.over * 100 : null),
  },
  {
    id: "recovered",
    decimals: 0,
    of: ({ recovery_share }) => (Number.isFinite(recovery_share) ? recovery_share * 100 : null),
  },
  { id: "starts", decimals: 0, of: ({ starts }) => starts },
  { id: "engine", decimals: 1, of: ({ engine_seconds }) => engine_seconds / 60 },
  { id: "throughput", decimals: 2, of: ({ battery_throughput_j }) => joulesToKwh(battery_throughput_j) },
  { id: "trace", decimals: 2, of: ({ trace_rms_mps }) => mpsToKmh(trace_rms_mps) },
  { id: "electric", decimals: 2, of: ({ electric_kwh_per_100km }) => electric_kwh_per_100km },
];
