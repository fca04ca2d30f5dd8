import { at } from "../../shared/at.ts";
import { fuelOver } from "../../sim/study/compare/differ.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { csvCell } from "../../sim/study/compare/table.ts";
import type { Against } from "./state.ts";

interface Column {
  readonly name: string;
  readonly values: Float64Array;
}

/** A line's name as part of a column's: lower case, words joined by underscores. */
const word = (title: string): string =>
  title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "_")
    .replace(/^_|_$/g, "");

function columnsOf(result: ComparisonResult, place: number, over: Against): Column[] {
  const { series, row } = result;
  const name = `${place + 1}_${word(row.strategy.title)}`;
  const own: Column[] = [
    { name: `speed_mps_${name}`, values: series.speed },
    { name: `soc_${name}`, values: series.soc },
    { name: `fuel_j_${name}`, values: series.fuel },
    { name: `battery_source_j_${name}`, values: series.battery },
    { name: `engine_speed_radps_${name}`, values: series.engineSpeed },
    { name: `engine_torque_nm_${name}`, values: series.engineTorque },
  ];
  if (result === over.result) return own;
  return [...own, { name: `fuel_over_j_${name}`, values: fuelOver(series, over.series, over.slope) }];
}

/**
 * The curves that are laid over each other as CSV (RFC 4180, one header row, full precision), a row a second: of each
 * line speed, charge, fuel, battery energy, engine, and its fuel over the reference with charge counted.
 */
export function curvesCsv(laid: readonly ComparisonResult[], over: Against): string {
  const columns = laid.flatMap((result, place) => columnsOf(result, place, over));
  const longest = laid.reduce((most, { series }) => Math.max(most, series.time.length), 0);
  const time = laid.find(({ series }) => series.time.length === longest)?.series.time ?? new Float64Array(0);
  const header = ["time_s", ...columns.map(({ name }) => name)].map(csvCell).join(",");
  const lines = Array.from({ length: longest }, (_, i) =>
    [at(time, i), ...columns.map(({ values }) => (i < values.length ? at(values, i) : ""))]
      .map(csvCell)
      .join(","),
  );
  return `${[header, ...lines].join("\n")}\n`;
}
