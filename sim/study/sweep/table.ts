import { COMPARE_COLUMNS, csvCell } from "../compare/table.ts";
import type { SweepAxis } from "./axis.ts";
import type { SweepRow } from "./run-sweep-job.ts";

/**
 * Rows of many runs as CSV (RFC 4180, one header row, full precision), in the order of their indices: the index, what
 * was varied by its path, the columns of a comparison, and why a run was not driven.
 */
export function sweepCsv(axes: readonly SweepAxis[], rows: readonly SweepRow[]): string {
  const header = [
    "index",
    ...axes.map(({ path }) => path),
    ...COMPARE_COLUMNS.map(([name]) => name),
    "not_driven_because",
  ];
  const lines = [...rows]
    .sort((a, b) => a.index - b.index)
    .map(({ index, values, row, failure }) => [
      index,
      ...values,
      ...COMPARE_COLUMNS.map(([, of]) => (row ? of(row) : "")),
      failure,
    ]);
  return `${[header, ...lines].map((line) => line.map(csvCell).join(",")).join("\n")}\n`;
}
