import { batch } from "@preact/signals";
import { checkAxes, type SweepAxis } from "../../../sim/study/sweep/axis.ts";
import { resultsJson } from "../../../sim/study/sweep/file.ts";
import { countJobs, type SweepJob, type SweepPlan, sweepJobs } from "../../../sim/study/sweep/plan.ts";
import { sweepCsv } from "../../../sim/study/sweep/table.ts";
import { ownStrategies, strategyOf } from "../../state/own-strategies.ts";
import { chosenCycle, runOptions } from "../../state/road.ts";
import { ownVehicles } from "../../state/store.ts";
import { findVehicle } from "../../state/vehicles.ts";
import { t } from "../../texts/catalogue.ts";
import { Crew, type Piece } from "../../workers/crew.ts";
import { saveStudyAs, workThrough } from "../under-way.ts";
import { readAxis, type Sweepable, sweepables } from "./axis-choice.ts";
import {
  firstAxis,
  secondAxis,
  shownPlace,
  shownStrategy,
  sweepCycle,
  sweepOptimum,
  sweepPlan,
  sweepRows,
  sweepStrategies,
  sweepUnder,
  sweepVehicle,
} from "./state.ts";

const c = t.compare.sweep;

/** Everything that can be swept, with the names of the texts. */
export const SWEEPABLES: readonly Sweepable[] = sweepables({ ...t.road.options, step: c.step });

export const sweepableAt = (path: string): Sweepable | undefined =>
  SWEEPABLES.find((one) => one.path === path);

/** The axes as typed; null while a field is wrong. */
function axesNow(): readonly SweepAxis[] | null {
  const axes: SweepAxis[] = [];
  for (const form of [firstAxis.value, secondAxis.value]) {
    const entry = form && sweepableAt(form.path);
    if (!entry || !form) continue;
    const read = readAxis(entry, form);
    if (!read.ok) return null;
    axes.push(read.axis);
  }
  return axes;
}

/** The plan as chosen; null while a field is wrong or no strategy is chosen. @throws InputError for what is gone */
export function planNow(): SweepPlan | null {
  const axes = axesNow();
  if (!axes || sweepStrategies.value.length === 0) return null;
  const plan = {
    vehicles: [findVehicle(ownVehicles.value, sweepVehicle.value)],
    axes,
    cycles: [chosenCycle(sweepCycle.value)],
    strategies: sweepStrategies.value.map((id) => strategyOf(ownStrategies.value, id)),
    options: runOptions.value,
  };
  return sweepOptimum.value ? { ...plan, optimum: true } : plan;
}

const crew = new Crew();

function* piecesOf(jobs: Iterable<SweepJob>): Generator<Piece> {
  for (const job of jobs) {
    yield async (runner) => {
      const row = await runner.ask((worker, report) => worker.sweep(job, report));
      sweepRows.value = new Map(sweepRows.value).set(row.index, row);
    };
  }
}

/** Drives the whole plan over all cores; finished runs show at once, also when it is cancelled. */
export const sweepNow = (): Promise<void> =>
  workThrough(crew, sweepUnder, c, () => {
    const plan = planNow();
    if (!plan) return null;
    checkAxes(plan.axes);
    const jobs = sweepJobs(plan);
    batch(() => {
      sweepPlan.value = plan;
      sweepRows.value = new Map();
      shownPlace.value = [0, 0];
      shownStrategy.value = 0;
    });
    return { pieces: piecesOf(jobs), all: countJobs(plan) };
  });

export const cancelSweep = (): void => crew.cancel();

/** Saves what is done so far: the table, or everything that is needed to repeat it. */
export async function saveSweep(kind: "csv" | "json"): Promise<void> {
  const plan = sweepPlan.value;
  if (!plan) return;
  const rows = [...sweepRows.value.values()];
  await saveStudyAs("sweep", kind, c.saved, (version) =>
    kind === "csv" ? sweepCsv(plan.axes, rows) : resultsJson({ plan, part: null, rows, version }),
  );
}
