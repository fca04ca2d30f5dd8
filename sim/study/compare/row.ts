import type { Vehicle } from "../../parameters/schema.ts";
import { consumption, kwhPer100Km } from "../../run/fuel.ts";
import type { RunSummary } from "../../run/summary.ts";
import type { Balance } from "../balance.ts";
import type { ComparedOptimum } from "./bound.ts";
import type { ComparisonJob } from "./job.ts";
import type { PlugIn } from "./plug-in.ts";
import { remainder, whyNotComparable } from "./remainder.ts";

/** Fuel of a row at equal charge: a number that may be compared, or the reason why there is none. */
export type BalancedFuel =
  | {
      readonly balanced: true;
      readonly energy_j: number;
      readonly litres_per_100km: number;
      readonly mpg_us: number;
      readonly co2_g_per_km: number;
    }
  | { readonly balanced: false; readonly reason: string };

/** One line of the comparison: plain data. Names carry their units. */
export interface ComparisonRow {
  readonly index: number;
  readonly vehicle: { readonly id: string; readonly name: string };
  readonly cycle: { readonly id: string; readonly title: string };
  readonly strategy: { readonly id: string; readonly title: string };
  readonly fuel: BalancedFuel;
  /** the run nearest to balance, before it is corrected */
  readonly raw_fuel_j: number;
  readonly net_battery_j: number;
  /** net battery energy over fuel energy, before the correction by the slope, and what may be left after it */
  readonly net_share: number;
  readonly net_share_left: number;
  readonly slope: number;
  readonly slope_source: Balance["slopeSource"];
  readonly start_soc: number;
  readonly runs: number;
  readonly distance_m: number;
  /** electricity that the battery gave, kWh/100 km: what a plug-in takes from the socket beside the fuel */
  readonly electric_kwh_per_100km: number;
  readonly raw_litres_per_100km: number;
  readonly recovered_j: number;
  readonly recovery_share: number;
  readonly starts: number;
  readonly engine_seconds: number;
  readonly battery_throughput_j: number;
  readonly regimes: readonly { readonly id: string; readonly seconds: number }[];
  readonly trace_rms_mps: number;
  readonly trace_seconds_outside: number;
  /** from a full battery on; null for a vehicle that is not charged from the mains */
  readonly plug_in: PlugIn | null;
  /** null when it was not asked for, and for a cold start */
  readonly optimum: ComparedOptimum | null;
}

/** What a row holds beside the run nearest to balance. */
export interface RowExtras {
  readonly plugIn: PlugIn | null;
  readonly optimum: ComparedOptimum | null;
}

function fuelOf(vehicle: Vehicle, balance: Balance, distance: number): BalancedFuel {
  const reason = whyNotComparable(balance);
  if (reason !== "") return { balanced: false, reason };
  const used = consumption(vehicle.fuel, balance.fuelEnergy, distance);
  return {
    balanced: true,
    energy_j: balance.fuelEnergy,
    litres_per_100km: used.litresPer100Km,
    mpg_us: used.mpg,
    co2_g_per_km: used.co2PerKm,
  };
}

/** The row of a job from its balance and the summary of the run nearest to it. */
export function rowOf(
  job: ComparisonJob,
  balance: Balance,
  summary: RunSummary,
  extras: RowExtras,
): ComparisonRow {
  const { strategy } = job;
  return {
    index: job.index,
    vehicle: { id: job.vehicle.id, name: job.vehicle.name },
    cycle: { id: job.cycle.id, title: job.cycle.title },
    strategy:
      strategy.kind === "own"
        ? { id: "own", title: strategy.title }
        : { id: strategy.id, title: strategy.id },
    fuel: fuelOf(job.vehicle, balance, summary.distance_m),
    raw_fuel_j: summary.fuel.energy_j,
    net_battery_j: summary.battery.net_j,
    net_share: balance.netShare,
    net_share_left: remainder(balance),
    slope: balance.slope,
    slope_source: balance.slopeSource,
    start_soc: summary.battery.soc_start,
    runs: balance.runs,
    distance_m: summary.distance_m,
    electric_kwh_per_100km: kwhPer100Km(summary.battery.net_j, summary.distance_m),
    raw_litres_per_100km: summary.fuel.l_per_100km,
    recovered_j: summary.recovered.into_battery_j,
    recovery_share: summary.recovered.share,
    starts: summary.engine.starts,
    engine_seconds: summary.engine.seconds_on,
    battery_throughput_j: summary.battery.throughput_j,
    regimes: summary.regimes.map(({ id, seconds }) => ({ id, seconds })),
    trace_rms_mps: summary.trace.rmsError,
    trace_seconds_outside: summary.trace.secondsOutside,
    plug_in: extras.plugIn,
    optimum: extras.optimum,
  };
}
