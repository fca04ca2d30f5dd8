import { REGIMES } from "../../run/regimes.ts";
import type { ComparisonRow } from "./row.ts";

type Cell = string | number;
type Column = readonly [name: string, of: (row: ComparisonRow) => Cell];

const seconds = (row: ComparisonRow, regime: string): number =>
  row.regimes.find(({ id }) => id === regime)?.seconds ?? 0;

/** Columns of the exported table: name with unit, and how a row fills it. */
export const COMPARE_COLUMNS: readonly Column[] = [
  ["vehicle", (row) => row.vehicle.id],
  ["cycle", (row) => row.cycle.id],
  ["strategy", (row) => row.strategy.title],
  ["fuel_l_per_100km", (row) => (row.fuel.balanced ? row.fuel.litres_per_100km : "")],
  ["fuel_mpg_us", (row) => (row.fuel.balanced ? row.fuel.mpg_us : "")],
  ["co2_g_per_km", (row) => (row.fuel.balanced ? row.fuel.co2_g_per_km : "")],
  ["fuel_balanced_j", (row) => (row.fuel.balanced ? row.fuel.energy_j : "")],
  ["not_balanced_because", (row) => (row.fuel.balanced ? "" : row.fuel.reason)],
  ["fuel_raw_j", (row) => row.raw_fuel_j],
  ["fuel_raw_l_per_100km", (row) => row.raw_litres_per_100km],
  ["battery_net_j", (row) => row.net_battery_j],
  ["battery_net_share", (row) => row.net_share],
  ["battery_net_share_left", (row) => row.net_share_left],
  ["slope", (row) => row.slope],
  ["slope_source", (row) => row.slope_source],
  ["soc_start", (row) => row.start_soc],
  ["electric_kwh_per_100km", (row) => row.electric_kwh_per_100km],
  ["distance_m", (row) => row.distance_m],
  ["recovered_j", (row) => row.recovered_j],
  ["recovery_share", (row) => row.recovery_share],
  ["engine_starts", (row) => row.starts],
  ["engine_s", (row) => row.engine_seconds],
  ["battery_throughput_j", (row) => row.battery_throughput_j],
  ["trace_rms_mps", (row) => row.trace_rms_mps],
  ["trace_outside_s", (row) => row.trace_seconds_outside],
  ["optimum_j", (row) => row.optimum?.energy_j ?? ""],
  ["over_optimum", (row) => row.optimum?.over ?? ""],
  ["over_optimum_quasi_static", (row) => row.optimum?.over_quasi_static ?? ""],
  ["optimum_grid_error", (row) => row.optimum?.grid_error ?? ""],
  ["plug_in_l_per_100km", (row) => row.plug_in?.litres_per_100km ?? ""],
  ["plug_in_kwh_per_100km", (row) => row.plug_in?.kwh_per_100km ?? ""],
  ["electric_range_m", (row) => row.plug_in?.electric_range_m ?? ""],
  ...REGIMES.map(({ id }): Column => [`${id.replaceAll("-", "_")}_s`, (row) => seconds(row, id)]),
];

/** A cell as RFC 4180 wants it. */
export const csvCell = (value: Cell): string => {
  const text = typeof value === "number" && !Number.isFinite(value) ? "" : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** The comparison as CSV (RFC 4180, one header row, full precision), in the order of the rows' indices. */
export function compareCsv(rows: readonly ComparisonRow[]): string {
  const sorted = [...rows].sort((a, b) => a.index - b.index);
  const lines = sorted.map((row) => COMPARE_COLUMNS.map(([, of]) => csvCell(of(row))).join(","));
  return `${[COMPARE_COLUMNS.map(([name]) => name).join(","), ...lines].join("\n")}\n`;
}
