import { missing, type SweepResults } from "../../study/sweep/file.ts";
import type { SweepRow } from "../../study/sweep/run-sweep-job.ts";
import { columns, digits, fixed, section } from "./text.ts";
import { percent } from "./units.ts";

/** Rows that are printed before the rest is left to the files. */
const MOST_ROWS = 200;

const HEAD = ["L/100 km", "g CO2/km", "battery", "recovered", "starts"];

/** Title of the distance to the optimum, where it was asked for. */
const OVER = "over optimum";

function figures({ row, failure }: SweepRow, bound: boolean): readonly string[] {
  const none = Array.from({ length: HEAD.length + (bound ? 1 : 0) }, () => "–");
  if (!row) return [...none, `not driven: ${failure.split("\n")[0]}`];
  const { fuel } = row;
  return [
    fuel.balanced ? fixed(fuel.litres_per_100km, 3) : "–",
    fuel.balanced ? fixed(fuel.co2_g_per_km, 1) : "–",
    percent(row.net_share, 2),
    percent(row.recovery_share),
    String(row.starts),
    ...(bound ? [row.optimum ? percent(row.optimum.over) : "–"] : []),
    fuel.balanced ? "" : `not balanced: ${fuel.reason}`,
  ];
}

const shown = (value: string): string =>
  value !== "" && Number.isFinite(Number(value)) ? digits(Number(value), 6) : value;

/** Many runs as a table. */
export function resultsReport(results: SweepResults): string {
  const { plan, rows } = results;
  const point = plan.axes.reduce((count, axis) => count * axis.values.length, 1);
  const perVehicle = Math.max(1, point * plan.cycles.length * plan.strategies.length);
  const bound = plan.optimum === true;
  const table = rows.slice(0, MOST_ROWS).map((entry) => {
    const within = entry.index % perVehicle;
    const cycle = plan.cycles[Math.floor(within / plan.strategies.length) % plan.cycles.length];
    const strategy = plan.strategies[within % plan.strategies.length];
    return [
      plan.vehicles[Math.floor(entry.index / perVehicle)]?.id ?? "",
      ...entry.values.map(shown),
      cycle?.id ?? "",
      strategy?.kind === "own" ? strategy.title : (strategy?.id ?? ""),
      ...figures(entry, bound),
    ];
  });
  const head = [
    "vehicle",
    ...plan.axes.map(({ path }) => path),
    "cycle",
    "strategy",
    ...HEAD,
    ...(bound ? [OVER] : []),
    "",
  ];
  const align = `l${"r".repeat(plan.axes.length)}llrrrrr${bound ? "r" : ""}l`;
  const left = missing(results);
  const notes = [
    ...(rows.length > MOST_ROWS ? [`${rows.length - MOST_ROWS} more rows stand in the files`] : []),
    ...(left.missing > 0 ? [`${left.missing} of ${left.of} runs are missing`] : []),
    ...(rows.some(({ row }) => row && !row.fuel.balanced)
      ? ["a row that cannot be balanced has no figure that may be compared"]
      : []),
  ];
  return [
    "Fuel at equal charge: the battery ends as full as it began, the rest is corrected.",
    ...section("runs", columns([head, ...table], align)),
    ...section("from a full battery", plugInLines(rows)),
    ...section("notes", notes),
    "",
  ].join("\n");
}

/** Fuel and electricity apart, and how far without the engine, of vehicles that are charged from the mains. */
function plugInLines(rows: readonly SweepRow[]): readonly string[] {
  const lines = rows.slice(0, MOST_ROWS).flatMap(({ row }) => {
    if (!row?.plug_in) return [];
    const { litres_per_100km: fuel, kwh_per_100km: electric, electric_range_m: range } = row.plug_in;
    const way = range === null ? "never starts" : `${fixed(range / 1000, 1)} km`;
    return [[row.vehicle.id, row.cycle.id, row.strategy.title, fixed(fuel, 3), fixed(electric, 2), way]];
  });
  if (lines.length === 0) return [];
  const head = ["vehicle", "cycle", "strategy", "L/100 km", "kWh/100 km", "to the first start"];
  return columns([head, ...lines], "lllrrr");
}
