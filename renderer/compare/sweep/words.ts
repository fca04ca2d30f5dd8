import { strategyById } from "../../../sim/control/strategies/registry.ts";
import type { ComparedStrategy } from "../../../sim/study/compare/job.ts";
import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { num } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import { sweepableAt } from "./actions.ts";
import { shownValue } from "./axis-choice.ts";
import type { Cell } from "./cells.ts";
import type { Quantity } from "./quantities.ts";

const c = t.compare.sweep;

export const strategyTitle = (strategy: ComparedStrategy): string =>
  strategy.kind === "own" ? strategy.title : strategyById(strategy.id).title;

/** Name of a plan's axis with its unit. */
export function axisName(plan: SweepPlan, axis: number): string {
  const entry = sweepableAt(plan.axes[axis]?.path ?? "");
  if (!entry) return "";
  return entry.unit ? `${entry.title}, ${entry.unit}` : entry.title;
}

/** The values of a plan's axis as they are shown. */
export function axisTexts(plan: SweepPlan, axis: number): readonly string[] {
  const { path = "", values = [] } = plan.axes[axis] ?? {};
  const entry = sweepableAt(path);
  return values.map((value) => (entry ? shownValue(entry, value).replace(/^-/, "−") : value));
}

/** Where a place lies: each axis with its value. */
export const placeWords = (plan: SweepPlan, place: readonly number[]): string =>
  plan.axes.map((_, i) => `${axisName(plan, i)}: ${axisTexts(plan, i)[place[i] ?? 0] ?? ""}`).join("; ");

/** A cell's short text. */
export function cellText(cell: Cell, quantity: Quantity): string {
  if (cell.kind === "value") return num(cell.value, quantity.decimals);
  if (cell.kind === "waiting") return "";
  return "–";
}

/** A cell in words, without its place. */
export function cellWords(cell: Cell, quantity: Quantity): string {
  if (cell.kind === "waiting") return c.notRun;
  if (cell.kind === "refused") return `${c.notDriven}: ${cell.why}`;
  if (cell.kind === "none") {
    return cell.why ? `${c.notBalanced}: ${cell.why}` : "–";
  }
  const { row } = cell.row;
  const rest = row
    ? [c.reading.balance(num(row.net_share_left * 100, 2)), c.reading.raw(num(row.raw_litres_per_100km, 2))]
    : [];
  return [`${c.quantities[quantity.id]}: ${num(cell.value, quantity.decimals)}`, ...rest].join("; ");
}
