import { strategyById } from "../../control/strategies/registry.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import { regimes } from "../../run/regimes.ts";
import type { Progress } from "../../run/simulate.ts";
import { summarize } from "../../run/summary.ts";
import { balance } from "../balance.ts";
import { comparedOptimum } from "./bound.ts";
import type { ComparisonJob } from "./job.ts";
import { plugIn } from "./plug-in.ts";
import { type ComparisonRow, rowOf } from "./row.ts";
import { type Series, seriesOf } from "./series.ts";

/** Net battery energy over fuel energy that a comparison's search for balance ends at, before the correction. */
export const COMPARISON_WINDOW = 0.001;

/** A finished job: its row, and the run over time for overlays. */
export interface ComparisonResult {
  readonly row: ComparisonRow;
  readonly series: Series;
}

/**
 * Does one job: balances the charge, corrects the rest by the slope, gathers the row. Deterministic.
 * @param strategy the job's strategy, ready to run; default: ours by its id. Own texts need their own machine.
 * @throws InputError for bad options or an unknown strategy; whatever an own strategy throws
 */
export function runJob(
  job: ComparisonJob,
  progress: Progress = {},
  strategy: StrategyDefinition | null = null,
): ComparisonResult {
  const chosen = strategy ?? builtIn(job);
  const report = progress.report;
  const part = (from: number, to: number): Progress => ({
    ...progress,
    ...(report ? { report: (share: number) => report(from + (to - from) * share) } : {}),
  });
  const { vehicle, cycle, options } = job;
  const end = job.optimum ? 0.5 : 1;
  const found = balance(vehicle, cycle, chosen, options, COMPARISON_WINDOW, part(0, end));
  const { run } = found;
  const regime = regimes(run.log, run.p);
  const summary = summarize(run, job.vehicle, job.cycle, chosen.id, regime);
  const row = rowOf(job, found, summary, {
    plugIn: plugIn(vehicle, cycle, chosen, options, progress),
    optimum: job.optimum ? comparedOptimum(run, chosen.regeneration, part(end, 1)) : null,
  });
  return {
    row: { ...row, strategy: { id: row.strategy.id, title: chosen.title } },
    series: seriesOf(run.log, regime),
  };
}

function builtIn({ strategy }: ComparisonJob): StrategyDefinition {
  if (strategy.kind === "built-in") return strategyById(strategy.id);
  throw new Error("an own strategy must be made ready before its job is run");
}
