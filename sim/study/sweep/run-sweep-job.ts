import { InputError } from "../../../shared/errors.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import type { Progress } from "../../run/simulate.ts";
import type { ComparisonRow } from "../compare/row.ts";
import { runJob } from "../compare/run-job.ts";
import type { SweepJob } from "./plan.ts";

/** What came of one run: a row of figures, or why there is none. */
export interface SweepRow {
  readonly index: number;
  /** values of the axes, in their order */
  readonly values: readonly string[];
  readonly row: ComparisonRow | null;
  /** empty when there is a row */
  readonly failure: string;
}

/**
 * Does one run of a plan. What the input is to blame for ends this run alone: it stands in the row as a reason.
 * @param strategy the job's strategy, ready to run; null for one of ours
 */
export function runSweepJob(
  { index, values, job, refused }: SweepJob,
  progress: Progress = {},
  strategy: StrategyDefinition | null = null,
): SweepRow {
  if (!job) return { index, values, row: null, failure: refused };
  try {
    return { index, values, row: runJob(job, progress, strategy).row, failure: "" };
  } catch (error) {
    if (error instanceof InputError) return { index, values, row: null, failure: error.message };
    throw error;
  }
}
