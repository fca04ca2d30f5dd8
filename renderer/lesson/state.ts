import { batch, computed, signal } from "@preact/signals";
import type { LessonFault } from "../../sim/lesson/faults.ts";
import type { WorkedAsk, WorkedLesson, WorkedStep } from "../../sim/lesson/work.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import { lessonProgress, openLesson, ownLessons, progressOf, setProgress } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { isRight } from "./answer.ts";
import { type LessonEntry, lessonEntries, readingOf } from "./catalogue.ts";
import { hiddenParts, hiddenQuantities } from "./hidden.ts";
import { desk } from "./work.ts";

/** What is done with the open lesson. */
export const MODES = ["read", "write", "handout", "mark"] as const;
export type LessonMode = (typeof MODES)[number];

export const mode = signal<LessonMode>("read");

/** All lessons, and the open one. */
export const entries = computed(() => lessonEntries(ownLessons.value));
export const entry = computed<LessonEntry | null>(
  () => entries.value.find(({ id }) => id === openLesson.value) ?? null,
);

/** The open lesson as far as it can be read. */
export const reading = computed(() => entry.value && readingOf(entry.value));

interface Work {
  /** the text it was worked from */
  readonly text: string;
  readonly id: string;
  readonly worked: WorkedLesson;
  readonly faults: readonly LessonFault[];
}

/** The open lesson with every value computed; what stood before stays until the next is there. */
export const work = signal<Work | null>(null);

/** Runs driven so far while a lesson is worked; null: none is. */
export const working = signal<number | null>(null);

/** All that is wrong with the open lesson, in the order of its text. */
export const faults = computed<readonly LessonFault[]>(() => {
  const read = reading.value?.faults ?? [];
  const found = work.value;
  const isCurrent = found !== null && found.id === entry.value?.id && found.text === entry.value.text;
  // What cannot be computed often only follows from what cannot be read.
  return read.length > 0 || !isCurrent ? read : found.faults;
});

/** The open lesson, worked; null while nothing of it is known yet. */
export const worked = computed(() => (work.value?.id === openLesson.value ? work.value.worked : null));

/** Works the open lesson; only the newest counts. */
export async function workOpen(): Promise<void> {
  const now = entry.value;
  const read = reading.value;
  if (!now || !read) return;
  const { id, text, file } = now;
  if (work.value?.id === id && work.value.text === text) return;
  working.value = 0;
  try {
    const reply = await desk.newest(
      (worker, report) => worker.lesson({ lesson: read.lesson, file }, report),
      (runs) => {
        if (working.value !== null) working.value = runs;
      },
    );
    if (!reply) return;
    batch(() => {
      working.value = null;
      // Typing may have come back to a text that stands already.
      const isOpen = entry.value?.id === id && entry.value.text === text;
      if (isOpen) work.value = { id, text, worked: reply.worked, faults: reply.faults };
    });
  } catch (error) {
    working.value = null;
    tell(t.lesson.failed(faultWords(error)), true);
  }
}

const progress = computed(() => {
  // Read here, so that it is told of every change.
  lessonProgress.value;
  return openLesson.value === null ? null : progressOf(openLesson.value);
});

/** The step that is shown, from 0. */
export const stepIndex = computed(() => {
  const last = (worked.value?.steps.length ?? 1) - 1;
  return Math.min(last, Math.max(0, progress.value?.step ?? 0));
});

export const step = computed<WorkedStep | null>(() => worked.value?.steps[stepIndex.value] ?? null);

/** What was checked last, by the question's name. */
export const answers = computed(() => progress.value?.answers ?? {});

/** Wrong answers since the lesson was opened, by the question's name. */
export const tries = signal<Readonly<Record<string, number>>>({});

/** Questions whose working was asked for. */
export const shownWorkings = signal<ReadonlySet<string>>(new Set());

const askNamed = (name: string): WorkedAsk | undefined =>
  worked.value?.steps.flatMap(({ asks }) => asks).find((ask) => ask.name === name);

/** Whether a question needs no further answer. */
export function isSettled(name: string): boolean {
  const ask = askNamed(name);
  return shownWorkings.value.has(name) || (ask !== undefined && isRight(ask, answers.value[name]));
}

/** What the views leave out in this step. */
export const hidden = computed(() =>
  hiddenParts(worked.value ? hiddenQuantities(worked.value, stepIndex.value, isSettled) : new Set()),
);

/** Answers a question: the answer is kept, a wrong one counted. */
export function answer(ask: WorkedAsk, text: string): void {
  const id = openLesson.value;
  if (id === null) return;
  batch(() => {
    setProgress(id, { answers: { ...answers.value, [ask.name]: text } });
    if (!isRight(ask, text)) tries.value = { ...tries.value, [ask.name]: (tries.value[ask.name] ?? 0) + 1 };
  });
}

/** Shows the whole working of a question. */
export const showWorking = (name: string): void => {
  shownWorkings.value = new Set([...shownWorkings.value, name]);
};

/** Counts the steps gone to: the heading takes the focus at each. */
export const stepsGone = signal(0);

/** Goes to a step of the open lesson, as far as there is one. */
export function goToStep(to: number): void {
  const id = openLesson.value;
  const count = worked.value?.steps.length ?? 0;
  if (id === null || to < 0 || to >= count || to === stepIndex.value) return;
  batch(() => {
    setProgress(id, { step: to });
    stepsGone.value += 1;
  });
}

/** Opens a lesson, or the list. */
export function openById(id: string | null, how: LessonMode = "read"): void {
  batch(() => {
    if (id !== openLesson.value) {
      tries.value = {};
      shownWorkings.value = new Set();
    }
    openLesson.value = id;
    mode.value = how;
  });
}

/** Begins the open lesson anew. */
export function beginAnew(): void {
  const id = openLesson.value;
  if (id === null) return;
  batch(() => {
    setProgress(id, { step: 0, answers: {} });
    tries.value = {};
    shownWorkings.value = new Set();
    stepsGone.value += 1;
  });
}
