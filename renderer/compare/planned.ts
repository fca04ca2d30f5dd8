import { computed } from "@preact/signals";
import { strategyById } from "../../sim/control/strategies/registry.ts";
import { type ComparisonJob, compareJobs } from "../../sim/study/compare/job.ts";
import { ownStrategies, strategyOf } from "../state/own-strategies.ts";
import { chosenCycle, runOptions } from "../state/road.ts";
import { ownVehicles } from "../state/store.ts";
import { findVehicle } from "../state/vehicles.ts";
import { chosenCycles, chosenStrategies, chosenVehicles, failures, jobs, results, under } from "./state.ts";

/** What is chosen, as jobs. @throws InputError for what is no longer there */
export const jobsNow = (): readonly ComparisonJob[] =>
  compareJobs(
    chosenVehicles.value.map((id) => findVehicle(ownVehicles.value, id)),
    chosenCycles.value.map(chosenCycle),
    chosenStrategies.value.map((id) => strategyOf(ownStrategies.value, id)),
    runOptions.value,
  );

/** Title of what a job drives with. */
export const titleOf = ({ strategy }: ComparisonJob): string =>
  strategy.kind === "own" ? strategy.title : strategyById(strategy.id).title;

/** Before the first comparison: what is chosen. */
const chosen = computed<readonly ComparisonJob[]>(() => {
  try {
    return jobsNow();
  } catch {
    // An id that leads nowhere any more is told when Compare is pressed.
    return [];
  }
});

/** Lines still to be driven: of the comparison under way, or of the first one. */
export const planned = computed<readonly ComparisonJob[]>(() => {
  if (jobs.value.length === 0) return chosen.value;
  if (!under.value) return [];
  const done = new Set([
    ...results.value.map(({ row }) => row.index),
    ...failures.value.map((line) => line.index),
  ]);
  return jobs.value.filter(({ index }) => !done.has(index));
});
