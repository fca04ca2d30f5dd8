import { missing, type SweepResults } from "../../study/sweep/file.ts";
import type { SweepRow } from "../../study/sweep/run-sweep-job.ts";
import { columns, digits, fixed, section } from "./text.ts";
import { percent } from "./units.ts";

/** Rows that are printed before the rest is left to the files. */
const MOST_ROWS = 200;

const HEAD = ["L/100 km", "g CO2/km", "battery", "recovered", "starts"];

function figures({ row, failure }: SweepRow): readonly string[] {
  if (!row) return ["–", "–", "–", "–", "–", `not driven: ${failure.split("\n")[0]}`];
  const { fuel } = row;
  return [
    fuel.balanced ? fixed(fuel.litres_per_100km, 3) : "–",
    fuel.balanced ? fixed(fuel.co2_g_per_km, 1) : "–",
    percent(row.net_share, 2),
    percent(row.recovery_share),
    String(row.starts),
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
  const table = rows.slice(0, MOST_ROWS).map((entry) => {
    const within = entry.index % perVehicle;
    const cycle = plan.cycles[Math.floor(within / plan.strategies.length) % plan.cycles.length];
    const strategy = plan.strategies[within % plan.strategies.length];
    return [
      plan.vehicles[Math.floor(entry.index / perVehicle)]?.id ?? "",
      ...entry.values.map(shown),
      cycle?.id ?? "",
      strategy?.kind === "own" ? strategy.title : (strategy?.id ?? ""),
      ...figures(entry),
    ];
  });
  const head = ["vehicle", ...plan.axes.map(({ path }) => path), "cycle", "strategy", ...HEAD, ""];
  const align = `l${"r".repeat(plan.axes.length)}llrrrrrl`;
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
    ...section("notes", notes),
    "",
  ].join("\n");
}
