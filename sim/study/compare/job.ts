import type { CycleTrace } from "../../../shared/cycle.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";

/** A strategy to be compared: one of ours by its id, or a person's own text. */
export type ComparedStrategy =
  | { readonly kind: "built-in"; readonly id: string }
  | { readonly kind: "own"; readonly title: string; readonly text: string };

/** One drive to be balanced and put into the table: plain data, so that any thread can do it. */
export interface ComparisonJob {
  /** place in the table, from 0 */
  readonly index: number;
  readonly vehicle: Vehicle;
  readonly cycle: CycleTrace;
  readonly strategy: ComparedStrategy;
  readonly options: RunOptions;
  /** true: the row tells the distance to the optimum too, which takes some seconds more */
  readonly optimum?: boolean;
}

/** Every vehicle on every cycle with every strategy, in that order: always the same list for the same input. */
export function compareJobs(
  vehicles: readonly Vehicle[],
  cycles: readonly CycleTrace[],
  strategies: readonly ComparedStrategy[],
  options: RunOptions = {},
  optimum = false,
): readonly ComparisonJob[] {
  const jobs: ComparisonJob[] = [];
  for (const vehicle of vehicles)
    for (const cycle of cycles)
      for (const strategy of strategies) {
        const job = { index: jobs.length, vehicle, cycle, strategy, options };
        jobs.push(optimum ? { ...job, optimum } : job);
      }
  return jobs;
}
