import { type ComparisonJob, compareJobs } from "../../sim/study/compare/job.ts";
import { compareCsv } from "../../sim/study/compare/table.ts";
import { faultWords } from "../app/fault-words.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { chosenCycle, runOptions } from "../state/road.ts";
import { ownVehicles } from "../state/store.ts";
import { findVehicle } from "../state/vehicles.ts";
import { t } from "../texts/catalogue.ts";
import { Cancelled, Runner } from "../workers/runner.ts";
import {
  boundKey,
  bounds,
  chosenCycles,
  chosenStrategies,
  chosenVehicles,
  compareCursor,
  picked,
  reference,
  results,
  under,
  withBound,
} from "./state.ts";

/** One piece of work for any free worker. */
type Piece = (runner: Runner) => Promise<void>;

function linePiece(job: ComparisonJob): Piece {
  return async (runner) => {
    const result = await runner.ask((worker, report) => worker.compare(job, report));
    results.value = [...results.value, result].sort((a, b) => a.row.index - b.row.index);
  };
}

function boundPiece({ vehicle, cycle, options }: ComparisonJob): Piece {
  return async (runner) => {
    const found = await runner.ask((worker, report) => worker.bound({ vehicle, cycle, options }, report));
    bounds.value = new Map(bounds.value).set(boundKey(vehicle.id, cycle.id), found);
  };
}

/** The pieces of a comparison, lines first. */
function piecesOf(): Piece[] {
  const jobs = compareJobs(
    chosenVehicles.value.map((id) => findVehicle(ownVehicles.value, id)),
    chosenCycles.value.map(chosenCycle),
    chosenStrategies.value.map((id) => ({ kind: "built-in" as const, id })),
    runOptions.value,
  );
  const seen = new Set<string>();
  const first = jobs.filter(({ vehicle, cycle }) => {
    const key = boundKey(vehicle.id, cycle.id);
    const fresh = !seen.has(key);
    seen.add(key);
    return fresh;
  });
  return [...jobs.map(linePiece), ...(withBound.value ? first.map(boundPiece) : [])];
}

let runners: Runner[] = [];

/** Drives everything that is chosen, on all cores; finished lines show at once, also when it is cancelled. */
export async function compareNow(): Promise<void> {
  if (under.value) return;
  let queue: Piece[];
  try {
    queue = piecesOf();
  } catch (error) {
    tell(t.compare.failed(faultWords(error)), true);
    return;
  }
  const all = queue.length;
  results.value = [];
  bounds.value = new Map();
  picked.value = null;
  reference.value = null;
  compareCursor.value = 0;
  under.value = { done: 0, all };
  runners = Array.from({ length: Math.max(1, navigator.hardwareConcurrency) }, () => new Runner());
  const work = async (runner: Runner): Promise<void> => {
    for (let piece = queue.shift(); piece; piece = queue.shift()) {
      try {
        await piece(runner);
      } catch (error) {
        if (error instanceof Cancelled) return;
        tell(t.compare.failed(faultWords(error)), true);
      }
      if (under.value) under.value = { done: under.value.done + 1, all };
    }
  };
  await Promise.all(runners.map(work));
  if (queue.length > 0) tell(t.compare.cancelled);
  under.value = null;
  for (const runner of runners) runner.end();
  runners = [];
}

/** Stops; finished lines stay. */
export function cancelCompare(): void {
  for (const runner of runners) runner.cancel();
}

/** Saves the table as CSV. */
export async function saveTable(): Promise<void> {
  const result = await bridge.exportFile({
    suggestedName: "comparison.csv",
    kinds: [{ title: "CSV", mime: "text/csv", extensions: ["csv"] }],
    content: compareCsv(results.value.map(({ row }) => row)),
  });
  take(result, (saved) => tell(t.compare.saved(saved.name)), t.notice.notSaved);
}
