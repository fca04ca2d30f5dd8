import { batch } from "@preact/signals";
import type { ComparisonJob } from "../../sim/study/compare/job.ts";
import { compareCsv } from "../../sim/study/compare/table.ts";
import { faultWords } from "../app/fault-words.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { t } from "../texts/catalogue.ts";
import { Crew, type Piece } from "../workers/crew.ts";
import { Cancelled } from "../workers/runner.ts";
import { curvesCsv } from "./curves-csv.ts";
import { jobsNow, titleOf } from "./planned.ts";
import {
  against,
  boundKey,
  bounds,
  compareCursor,
  type FailedLine,
  failures,
  jobs,
  laid,
  picked,
  reference,
  results,
  under,
  withBound,
} from "./state.ts";
import { workThrough } from "./under-way.ts";

/** One line: a failure stands in its place in the table, and the others go on. */
function linePiece(job: ComparisonJob): Piece {
  return async (runner) => {
    try {
      const result = await runner.ask((worker, report) => worker.compare(job, report));
      results.value = [...results.value, result].sort((a, b) => a.row.index - b.row.index);
    } catch (error) {
      if (error instanceof Cancelled) throw error;
      failures.value = [...failures.value, failedLine(job, faultWords(error))].sort(
        (a, b) => a.index - b.index,
      );
    }
  };
}

const failedLine = (job: ComparisonJob, why: string): FailedLine => ({
  index: job.index,
  strategy: titleOf(job),
  vehicle: job.vehicle.name,
  cycle: job.cycle.id,
  why,
});

function boundPiece({ vehicle, cycle, options }: ComparisonJob): Piece {
  return async (runner) => {
    const found = await runner.ask((worker, report) => worker.bound({ vehicle, cycle, options }, report));
    bounds.value = new Map(bounds.value).set(boundKey(vehicle.id, cycle.id), found);
  };
}

/** The pieces of a comparison, lines first. */
function piecesOf(list: readonly ComparisonJob[]): Piece[] {
  const seen = new Set<string>();
  const first = list.filter(({ vehicle, cycle }) => {
    const key = boundKey(vehicle.id, cycle.id);
    const fresh = !seen.has(key);
    seen.add(key);
    return fresh;
  });
  return [...list.map(linePiece), ...(withBound.value ? first.map(boundPiece) : [])];
}

const crew = new Crew();

function clear(list: readonly ComparisonJob[]): void {
  batch(() => {
    results.value = [];
    failures.value = [];
    jobs.value = list;
    bounds.value = new Map();
    picked.value = null;
    reference.value = null;
    compareCursor.value = 0;
  });
}

/** Drives everything that is chosen, on all cores; finished lines show at once, also when it is cancelled. */
export const compareNow = (): Promise<void> =>
  workThrough(crew, under, t.compare, () => {
    const list = jobsNow();
    clear(list);
    const pieces = piecesOf(list);
    return { pieces, all: pieces.length };
  });

/** Stops; finished lines stay. */
export function cancelCompare(): void {
  crew.cancel();
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

/** Saves the curves that are laid over each other as CSV. */
export async function saveCurves(): Promise<void> {
  const over = against.value;
  if (!over) return;
  const result = await bridge.exportFile({
    suggestedName: "curves.csv",
    kinds: [{ title: "CSV", mime: "text/csv", extensions: ["csv"] }],
    content: curvesCsv(laid.value, over),
  });
  take(result, (saved) => tell(t.compare.saved(saved.name)), t.notice.notSaved);
}
