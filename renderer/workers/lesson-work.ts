import { InputError } from "../../shared/errors.ts";
import { handout } from "../../sim/lesson/handout/handout.ts";
import { answerForm, marksCsv } from "../../sim/lesson/marking/files.ts";
import { markAnswers } from "../../sim/lesson/marking/mark.ts";
import { recentRuns } from "../../sim/lesson/runs.ts";
import { workLessonText } from "../../sim/lesson/work.ts";
import type { LessonWorker, Refusable } from "./lesson-contract.ts";

/** Runs kept from one piece of work to the next: those of the longest built-in lesson twice over. */
const MOST_RUNS = 16;

let driven = 0;
let hear: (runs: number) => void = () => undefined;

const runs = recentRuns(MOST_RUNS, () => {
  driven += 1;
  hear(driven);
});

/** Does a piece of work that tells how many runs it needed. */
function counted<T>(report: (runs: number) => void, work: () => T): T {
  driven = 0;
  hear = report;
  return work();
}

function refusable<T>(work: () => T): Refusable<T> {
  try {
    return { done: true, value: work() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { done: false, faults: error.faults };
  }
}

/** The verbs of the worker that lessons ask for. */
export const lessonWork: LessonWorker = {
  lesson: ({ lesson, file }, report) => counted(report, () => workLessonText(lesson, file, runs)),
  lessonRun(spec) {
    // Copied, not handed over: the next edit of the lesson reads the same run.
    const { vehicle, summary, regime, parts } = runs(spec);
    return { vehicle, summary, regime, log: parts() };
  },
  handout: ({ lesson, seed, students, paper }, report) =>
    counted(report, () =>
      refusable(() => ({
        ...handout(lesson, { seed, students, paper, runs }),
        form: answerForm(lesson, students),
      })),
    ),
  mark: ({ lesson, seed, students, answers, fileName }, report) =>
    counted(report, () =>
      refusable(() => {
        const marking = markAnswers(lesson, answers, {
          seed,
          fileName,
          ...(students ? { students } : {}),
          runs,
        });
        return { marking, csv: marksCsv(marking) };
      }),
    ),
};
