import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { ComparedStrategy, ComparisonJob } from "../compare/job.ts";
import { checkAxes, type Setting, type SweepAxis, settingAt } from "./axis.ts";

/** Everything that many runs are made from; without axes it is a plain comparison. */
export interface SweepPlan {
  readonly vehicles: readonly Vehicle[];
  /** none, one or two things varied in every vehicle */
  readonly axes: readonly SweepAxis[];
  readonly cycles: readonly CycleTrace[];
  readonly strategies: readonly ComparedStrategy[];
  readonly options: RunOptions;
  /** true: every row tells the distance to the optimum too */
  readonly optimum?: boolean;
}

/** One run of a plan, or why it cannot be driven. Plain data, so that any thread can do it. */
export interface SweepJob {
  readonly index: number;
  /** values of the axes, in their order */
  readonly values: readonly string[];
  readonly job: ComparisonJob | null;
  /** why there is no job: the values do not go together */
  readonly refused: string;
}

/** Most runs of one plan. */
export const MOST_JOBS = 1_000_000;

/** Every combination of the axes' values, the last axis changing first. */
export function points(axes: readonly SweepAxis[]): readonly (readonly string[])[] {
  return axes.reduce<readonly (readonly string[])[]>(
    (made, { values }) => made.flatMap((point) => values.map((value) => [...point, value])),
    [[]],
  );
}

/** How many runs a plan has. */
export const countJobs = ({ vehicles, axes, cycles, strategies }: SweepPlan): number =>
  axes.reduce(
    (count, { values }) => count * values.length,
    vehicles.length * cycles.length * strategies.length,
  );

/** One part of a plan's runs, of several that together are all: every n-th, so that each part is as long as the others. */
export interface Part {
  /** from 1 */
  readonly number: number;
  readonly of: number;
}

/** All of a plan at once. */
export const WHOLE: Part = { number: 1, of: 1 };

/** Whether a run belongs to a part. */
export const isIn = (part: Part, index: number): boolean => index % part.of === part.number - 1;

/** How many runs of a plan belong to a part. */
export const countIn = (plan: SweepPlan, { number, of }: Part): number =>
  Math.max(0, Math.floor((countJobs(plan) - number) / of) + 1);

/**
 * The runs of a plan: vehicle × point × cycle × strategy, in that order; always the same for the same plan. They are
 * made one by one as they are asked for, so that a large plan needs no more memory than a small one.
 * @param part only the runs of this part, with the indices they have in the whole
 * @throws InputError for axes that are wrong in themselves, and for a plan too large
 */
export function sweepJobs(plan: SweepPlan, part: Part = WHOLE): Iterable<SweepJob> {
  checkAxes(plan.axes);
  const count = countJobs(plan);
  if (count > MOST_JOBS) {
    const accepted = `at most ${MOST_JOBS} runs`;
    throw new InputError({ what: "too many runs", where: "sweep", value: String(count), accepted });
  }
  return jobsOf(plan, part);
}

function* jobsOf(plan: SweepPlan, part: Part): Generator<SweepJob> {
  let index = 0;
  for (const vehicle of plan.vehicles) {
    for (const values of points(plan.axes)) {
      // Made for the first run that wants it: most points of a small part want none.
      let found: Setting | string | null = null;
      for (const cycle of plan.cycles) {
        for (const strategy of plan.strategies) {
          if (isIn(part, index)) {
            found ??= settingOrReason({ vehicle, options: plan.options }, plan.axes, values);
            yield jobOf(index, values, found, cycle, strategy, plan.optimum === true);
          }
          index += 1;
        }
      }
    }
  }
}

function jobOf(
  index: number,
  values: readonly string[],
  found: Setting | string,
  cycle: CycleTrace,
  strategy: ComparedStrategy,
  optimum: boolean,
): SweepJob {
  if (typeof found === "string") return { index, values, job: null, refused: found };
  const job = { index, ...found, cycle, strategy };
  return { index, values, job: optimum ? { ...job, optimum } : job, refused: "" };
}

function settingOrReason(
  base: Setting,
  axes: readonly SweepAxis[],
  values: readonly string[],
): Setting | string {
  try {
    return settingAt(base, axes, values);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
