import { cycleById } from "../../../cycles/catalogue.ts";
import { OWN_EXAMPLES } from "../../control/own/examples/registry.ts";
import { loadOwnStrategies } from "../../control/own/load.ts";
import { rules } from "../../control/strategies/rules.ts";
import { simulate } from "../../run/simulate.ts";
import { evenValues } from "../../study/sweep/axis.ts";
import { type SweepPlan, sweepJobs } from "../../study/sweep/plan.ts";
import type { SweepRow } from "../../study/sweep/run-sweep-job.ts";
import { vehicleById } from "../../vehicle/presets/registry.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { coreCount, doAll } from "../pool.ts";
import { measure, type Times } from "./measure.ts";

/** What an own strategy and a sweep cost. */
export interface StudyTimes {
  readonly own_ms: Times;
  /** ms that an own strategy adds to 1,000 simulated seconds, at ten decisions a second */
  readonly own_added_ms_per_1000_s: number;
  readonly sweep: SweepTimes;
}

/** A sweep on one thread and on all cores. */
export interface SweepTimes {
  readonly jobs: number;
  readonly threads: number;
  readonly one_thread_ms: number;
  readonly all_threads_ms: number;
  /** share of `threads` times one thread's throughput that is reached */
  readonly efficiency: number;
  /** true when both gave the same rows, byte for byte */
  readonly same: boolean;
}

/** Most an own strategy may add to 1,000 simulated seconds, ms, and least efficiency of a sweep. */
export const STUDY_TARGETS = { own: 300, efficiency: 0.9 } as const;

/**
 * Jobs of the sweep for each measured run of the other scenes, and the least. Every thread starts and gets warm first: a
 * throughput wants a sweep that is long against that.
 */
const JOBS_PER_RUN = 8;
const LEAST_JOBS = 4;

/** Measures both. @param runs measured runs of a scene */
export async function measureStudies(runs: number, rulesTimes: Times, around: Around): Promise<StudyTimes> {
  const own_ms = await measureOwn(runs, around);
  const seconds = simulate(vehicleById("compact"), cycleById("udds"), rules).time;
  return {
    own_ms,
    own_added_ms_per_1000_s: ((own_ms.min - rulesTimes.min) / seconds) * 1000,
    sweep: await measureSweep(Math.max(LEAST_JOBS, JOBS_PER_RUN * runs), around),
  };
}

async function measureOwn(runs: number, around: Around): Promise<Times> {
  const [example] = OWN_EXAMPLES;
  if (!example) throw new Error("no example");
  const own = await loadOwnStrategies();
  const strategy = own.strategy({ name: example.title, text: example.text, seed: 1 });
  const [compact, udds] = [vehicleById("compact"), cycleById("udds")];
  const times = measure("an own strategy", runs, () => simulate(compact, udds, strategy), around);
  strategy.close();
  return times;
}

async function measureSweep(count: number, around: Around): Promise<SweepTimes> {
  const plan: SweepPlan = {
    vehicles: [vehicleById("compact")],
    axes: [{ path: "run.payload", values: evenValues(0, 400, count) }],
    cycles: [cycleById("nycc")],
    strategies: [{ kind: "built-in", id: "rules" }],
    options: {},
  };
  const jobs = [...sweepJobs(plan)];
  const timed = async (threads: number): Promise<{ ms: number; rows: string }> => {
    const rows: SweepRow[] = [];
    const done = (row: SweepRow): void => {
      rows.push(row);
      around.progress(`a sweep on ${threads} threads`, rows.length / jobs.length);
    };
    const began = performance.now();
    await doAll(jobs, { threads, done, cancelled: around.cancelled });
    stopIfCancelled(around);
    const ms = performance.now() - began;
    return { ms, rows: JSON.stringify(rows.sort((a, b) => a.index - b.index)) };
  };
  const threads = coreCount();
  const one = await timed(1);
  const all = await timed(threads);
  return {
    jobs: jobs.length,
    threads,
    one_thread_ms: one.ms,
    all_threads_ms: all.ms,
    efficiency: one.ms / (threads * all.ms),
    same: one.rows === all.rows,
  };
}
