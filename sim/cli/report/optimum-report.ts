import type { CycleTrace } from "../../../shared/cycle.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { Balance } from "../../study/balance.ts";
import type { Distance } from "../../study/optimum/distance.ts";
import type { Optimum } from "../../study/optimum/optimum.ts";
import { consumed } from "../consumed.ts";
import { columns, fixed, section, wrap } from "./text.ts";
import { kj, percent, type ReportUnits } from "./units.ts";

/** A strategy beside the optimum. */
export interface StrategyDistance {
  readonly strategy: string;
  readonly balanced: Balance;
  readonly distance: Distance;
}

/** The optimum's figures as they stand in JSON: names carry their units. */
export const optimumFigures = (
  vehicle: Vehicle,
  cycle: CycleTrace,
  found: Optimum,
  distances: readonly StrategyDistance[],
) => ({
  format: "trishaft-optimum",
  format_version: 1,
  vehicle: { id: vehicle.id, name: vehicle.name },
  cycle: { id: cycle.id, title: cycle.title },
  grid: {
    stage_s: found.demand.stage,
    stages: found.demand.stages,
    soc_steps: found.grid.socSteps,
    points: found.grid.points,
  },
  soc_start: found.startSoc,
  soc_end: found.endSoc,
  feasible: found.feasible,
  reason: found.reason,
  distance_m: found.demand.distance,
  fuel_j: found.fuelEnergy,
  ...consumed(vehicle, found.fuelEnergy, found.demand.distance),
  grid_error_j: found.gridError,
  grid_error_share: found.gridError / found.fuelEnergy,
  starts: found.starts,
  unmet: found.unmet.map(({ time, power }) => ({ time_s: time, power_w: power })),
  strategies: distances.map(({ strategy, balanced, distance }) => ({
    strategy,
    balanced: balanced.balanced,
    reason: balanced.reason,
    ...consumed(vehicle, balanced.fuelEnergy, balanced.run.b.travelled),
    net_share: balanced.netShare,
    starts: balanced.run.c.starts,
    over_optimum: distance.forward.over,
    over_optimum_quasi_static: distance.quasiStatic.over,
    grid_error_share: distance.gridError,
    items_j: distance.items.map(({ id, run, quasiStatic }) => ({ id, run, quasi_static: quasiStatic })),
  })),
});

/** The optimum as a table to read. */
export function optimumReport(
  vehicle: Vehicle,
  cycle: CycleTrace,
  found: Optimum,
  distances: readonly StrategyDistance[],
  units: ReportUnits,
): string {
  return [
    ...wrap(`${cycle.title} (${cycle.id})`),
    `${vehicle.name} (${vehicle.id}), least fuel possible`,
    ...wrap(
      `${found.demand.stages} stages of ${fixed(found.demand.stage, 3)} s, ${found.grid.socSteps + 1} charges, ` +
        `${found.grid.points} engine points, engine on or off; charge ${percent(found.startSoc)} at the start, ` +
        `${percent(found.endSoc)} at the end`,
    ),
    ...section("optimum", optimumLines(vehicle, found, units)),
    ...section("seconds that the vehicle cannot do, taken at its limit", unmetLines(found)),
    ...section("strategies beside it", distanceLines(vehicle, distances, units)),
    ...section(
      "what the quasi-static count leaves out",
      distances.flatMap((entry) => itemLines(entry)),
      " (kJ: driven, counted)",
    ),
    "",
  ].join("\n");
}

function optimumLines(vehicle: Vehicle, found: Optimum, units: ReportUnits): string[] {
  if (!found.feasible) return wrap(`none: ${found.reason}`);
  const fuel = units.consumption(consumed(vehicle, found.fuelEnergy, found.demand.distance));
  return columns(
    [
      ["fuel", `${fuel} ${units.consumptionUnit}`],
      ["grid error", percent(found.gridError / found.fuelEnergy, 2)],
      ["engine starts", String(found.starts)],
    ],
    "ll",
  );
}

/** Seconds listed before the rest is only counted. */
const LISTED = 8;

function unmetLines({ unmet }: Optimum): string[] {
  const rows = unmet
    .slice(0, LISTED)
    .map(({ time, power }) => [`${fixed(time, 1)} s`, `${fixed(power / 1000, 2)} kW missing at the wheels`]);
  const more = unmet.length > LISTED ? [`and ${unmet.length - LISTED} more`] : [];
  return [...columns(rows, "rl"), ...more];
}

function distanceLines(
  vehicle: Vehicle,
  distances: readonly StrategyDistance[],
  units: ReportUnits,
): string[] {
  if (distances.length === 0) return [];
  const rows = distances.map(({ strategy, balanced, distance }) => [
    strategy,
    balanced.balanced
      ? units.consumption(consumed(vehicle, balanced.fuelEnergy, balanced.run.b.travelled))
      : "–",
    percent(distance.forward.over, 2),
    percent(distance.quasiStatic.over, 2),
    percent(distance.gridError, 2),
    String(balanced.run.c.starts),
  ]);
  const head = ["", units.consumptionUnit, "over least", "quasi-static", "grid error", "starts"];
  return [
    ...columns([head, ...rows], "lrrrrr"),
    ...wrap(
      "over least: fuel over the least possible on the demand actually driven, ending at the same charge",
    ),
    ...distances.flatMap(({ strategy, balanced }) =>
      balanced.balanced ? [] : wrap(`${strategy} is not balanced: ${balanced.reason}`),
    ),
  ];
}

function itemLines({ strategy, distance }: StrategyDistance): string[] {
  const rows = distance.items.map(({ title, run, quasiStatic }) => [
    title,
    kj(run),
    kj(quasiStatic),
    kj(run - quasiStatic),
  ]);
  return [strategy, ...columns(rows, "lrrr").map((line) => `  ${line}`)];
}
