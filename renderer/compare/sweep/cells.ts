import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import type { SweepRow } from "../../../sim/study/sweep/run-sweep-job.ts";
import type { Quantity } from "./quantities.ts";

/** What stands at a point of a sweep. */
export type Cell =
  | { readonly kind: "value"; readonly value: number; readonly row: SweepRow }
  /** driven, but without this figure: not balanced, or no optimum */
  | { readonly kind: "none"; readonly why: string; readonly row: SweepRow }
  | { readonly kind: "refused"; readonly why: string }
  | { readonly kind: "waiting" };

const WAITING: Cell = { kind: "waiting" };

/** The cell of a row: a figure that may be compared, or why there is none. */
export function cellOf(row: SweepRow | undefined, quantity: Quantity): Cell {
  if (!row) return WAITING;
  if (!row.row) return { kind: "refused", why: row.failure };
  const value = quantity.of(row.row);
  if (value !== null && Number.isFinite(value)) return { kind: "value", value, row };
  const { fuel } = row.row;
  return { kind: "none", why: fuel.balanced ? "" : fuel.reason, row };
}

/**
 * Index of a run in its plan (one vehicle, one cycle).
 * @param place index of the value on each axis, in the axes' order
 */
export function indexOf(plan: SweepPlan, place: readonly number[], strategy: number): number {
  const point = plan.axes.reduce((sum, { values }, i) => sum * values.length + (place[i] ?? 0), 0);
  return point * plan.strategies.length + strategy;
}

/** Least and most of what stands in cells; null where there is none. */
export function extentOf(cells: readonly Cell[]): readonly [number, number] | null {
  const values = cells.flatMap((cell) => (cell.kind === "value" ? [cell.value] : []));
  return values.length === 0 ? null : [Math.min(...values), Math.max(...values)];
}

/** Where a value stands between the ends, 0–1; in the middle where there is no width. */
export const shareOf = (value: number, [least, most]: readonly [number, number]): number =>
  most > least ? (value - least) / (most - least) : 0.5;
