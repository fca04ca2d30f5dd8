import type { InputFault } from "../../shared/errors.ts";
import type { LessonFault } from "../../sim/lesson/faults.ts";
import type { Paper } from "../../sim/lesson/handout/style.ts";
import type { Lesson } from "../../sim/lesson/lesson.ts";
import type { Marking } from "../../sim/lesson/marking/mark.ts";
import type { RunSpec } from "../../sim/lesson/runs.ts";
import type { WorkedLesson } from "../../sim/lesson/work.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { RunReply } from "./contract.ts";

/** A lesson that was read, and what messages call it. */
export interface LessonRequest {
  readonly lesson: Lesson;
  readonly file: string;
}

/** A lesson with every value and key computed, as far as that goes. */
export interface LessonReply {
  readonly worked: WorkedLesson;
  /** in the order of the text; empty for a good lesson */
  readonly faults: readonly LessonFault[];
}

/** A run that a step shows. */
export interface LessonRunReply extends RunReply {
  readonly vehicle: Vehicle;
}

/** What a refused piece of work has to say: errors lose their faults on the way between threads. */
export type Refusable<T> =
  | { readonly done: true; readonly value: T }
  | { readonly done: false; readonly faults: readonly InputFault[] };

/** A handout that is asked for. */
export interface HandoutRequest extends LessonRequest {
  /** 0 to 4294967295 */
  readonly seed: number;
  readonly students: readonly string[];
  readonly paper: Paper;
}

/** Its three files, each as the command line writes it. */
export interface HandoutReply {
  readonly sheets: string;
  readonly key: string;
  /** empty CSV of answers to fill in */
  readonly form: string;
}

/** Answers that are to be marked. */
export interface MarkRequest extends LessonRequest {
  readonly seed: number;
  /** the class; null when any name will do */
  readonly students: readonly string[] | null;
  /** CSV, and the name of its file */
  readonly answers: string;
  readonly fileName: string;
}

/** The marks, and the file of them. */
export interface MarkReply {
  readonly marking: Marking;
  readonly csv: string;
}

/** What a worker does for lessons. `report` hears how many runs were driven. */
export interface LessonWorker {
  lesson(request: LessonRequest, report: (runs: number) => void): LessonReply;
  lessonRun(spec: RunSpec): LessonRunReply;
  handout(request: HandoutRequest, report: (runs: number) => void): Refusable<HandoutReply>;
  mark(request: MarkRequest, report: (runs: number) => void): Refusable<MarkReply>;
}
