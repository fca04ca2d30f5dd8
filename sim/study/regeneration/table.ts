import { csvCell } from "../compare/table.ts";
import type { RegenerationCell, RegenerationMap } from "./study.ts";

/** Columns of the exported map: name with unit, and how a cell fills it. */
const COLUMNS: readonly (readonly [string, (cell: RegenerationCell) => string | number])[] = [
  ["speed_mps", (c) => c.speed],
  ["rate_mps2", (c) => c.rate],
  ["charge_asked", (c) => c.charge],
  ["soc_at_brake", (c) => c.soc],
  ["soc_at_rest", (c) => c.soc_after],
  ["speed_reached_mps", (c) => c.speed_reached],
  ["asked_at_wheels_j", (c) => c.asked_at_wheels_j],
  ["at_machine_shaft_j", (c) => c.at_machine_shaft_j],
  ["into_battery_j", (c) => c.into_battery_j],
  ["friction_brakes_j", (c) => c.friction_brakes_j],
  ["recovered_share", (c) => c.recovered_share],
  ["kept_j", (c) => c.kept_j],
  ["kept_share", (c) => c.kept_share],
  ["fuel_saved_j", (c) => c.fuel_saved_j],
  ["limit", (c) => c.limit ?? ""],
  ["limits_j", (c) => c.limits.map(({ id, friction }) => `${id} ${friction}`).join("; ")],
];

/** The map as CSV (RFC 4180, one header row, full precision), a row a stop. */
export function regenerationCsv({ cells }: RegenerationMap): string {
  const header = COLUMNS.map(([name]) => name).join(",");
  const lines = cells.map((cell) => COLUMNS.map(([, of]) => csvCell(of(cell))).join(","));
  return `${[header, ...lines].join("\n")}\n`;
}

/**
 * The map as JSON with everything that is needed to repeat it.
 * @param strategy the strategy's id, or name and text of a person's own
 * @param version of the program
 */
export function regenerationJson(map: RegenerationMap, strategy: unknown, version: string): string {
  const { plan, cells, complete } = map;
  const file = {
    format: "trishaft-regeneration",
    format_version: 1,
    program_version: version,
    complete,
    plan: { ...plan, strategy },
    cells,
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}
