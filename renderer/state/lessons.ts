import { batch, signal } from "@preact/signals";
import { slug } from "../../cycles/slug.ts";
import type { LessonState, OwnLesson, Project } from "../../shared/project.ts";

/** How far a lesson is. */
export interface LessonProgress {
  /** from 0 */
  readonly step: number;
  /** what was checked last, by the question's name: as it was typed, with its unit */
  readonly answers: Readonly<Record<string, string>>;
}

/** Lessons of one's own, in the order in which they were made. */
export const ownLessons = signal<readonly OwnLesson[]>([]);

/** How far each lesson is, by its id. */
export const lessonProgress = signal<Readonly<Record<string, LessonProgress>>>({});

/** The lesson that is open, by its id; null: the list is. */
export const openLesson = signal<string | null>(null);

/** Seed of the numbers that differ from student to student. */
export const lessonSeed = signal(1);

/** The own lesson that was deleted last, to be brought back. */
export const deletedLesson = signal<OwnLesson | null>(null);

/** What the schema of a project allows. */
const MOST_OWN = 200;
const LONGEST_TITLE = 200;
const LONGEST_ID = 60;
const LONGEST_NAME = 80;
const LONGEST_ANSWER = 10_000;

const START: LessonProgress = { step: 0, answers: {} };

/** How far a lesson is; at its start when nobody has begun it. */
export const progressOf = (id: string): LessonProgress => lessonProgress.value[id] ?? START;

/** Notes how far a lesson is. */
export function setProgress(id: string, changed: Partial<LessonProgress>): void {
  lessonProgress.value = { ...lessonProgress.value, [id]: { ...progressOf(id), ...changed } };
}

/** A lesson is begun anew: no answers, first step. */
export function forgetProgress(id: string): void {
  const { [id]: _, ...rest } = lessonProgress.value;
  lessonProgress.value = rest;
}

/** A title that fits a project. */
const fitting = (title: string): string => title.trim().slice(0, LONGEST_TITLE) || "–";

/**
 * An id that no lesson has yet.
 * @param taken ids that are in use, those of the built-in lessons among them
 */
export function freshLessonId(title: string, taken: readonly string[]): string {
  const stem = slug(title, "lesson").slice(0, LONGEST_ID).replace(/-+$/, "");
  if (!taken.includes(stem)) return stem;
  for (let n = 2; ; n += 1) if (!taken.includes(`${stem}-${n}`)) return `${stem}-${n}`;
}

/**
 * Adds an own lesson.
 * @param builtIn ids of the built-in lessons
 * @returns its id; null when there are as many as a project holds
 */
export function addLesson(title: string, text: string, builtIn: readonly string[]): string | null {
  if (ownLessons.value.length >= MOST_OWN) return null;
  const id = freshLessonId(title, [...builtIn, ...ownLessons.value.map((lesson) => lesson.id)]);
  ownLessons.value = [...ownLessons.value, { id, title: fitting(title), text }];
  return id;
}

/** Changes an own lesson's text; an unknown id changes nothing. */
export function writeLesson(id: string, title: string, text: string): void {
  ownLessons.value = ownLessons.value.map((lesson) =>
    lesson.id === id ? { id, title: fitting(title), text } : lesson,
  );
}

/** Takes an own lesson away; it can be brought back until the next one goes. */
export function deleteLesson(id: string): void {
  batch(() => {
    deletedLesson.value = ownLessons.value.find((lesson) => lesson.id === id) ?? deletedLesson.value;
    ownLessons.value = ownLessons.value.filter((lesson) => lesson.id !== id);
    if (openLesson.value === id) openLesson.value = null;
  });
}

/** Brings the own lesson back that was deleted last. */
export function bringBackLesson(): void {
  const lesson = deletedLesson.value;
  if (!lesson) return;
  batch(() => {
    ownLessons.value = [...ownLessons.value.filter(({ id }) => id !== lesson.id), lesson];
    deletedLesson.value = null;
  });
}

const stateOf = (id: string, { step, answers }: LessonProgress, seed: number): LessonState => ({
  id,
  step: Math.min(1000, Math.max(0, step)),
  answers: Object.fromEntries(
    Object.entries(answers).filter(
      ([name, text]) => name.length <= LONGEST_NAME && text.length <= LONGEST_ANSWER,
    ),
  ),
  seed,
});

/** A project with the lessons in it, everything else as it was. */
export function projectWithLessons(project: Project): Project {
  const open = openLesson.value;
  const seed = lessonSeed.value;
  const begun = Object.entries(lessonProgress.value).filter(([id]) => id !== open);
  return {
    ...project,
    lesson: open === null ? null : stateOf(open, progressOf(open), seed),
    lessonsBegun: begun.slice(-500).map(([id, progress]) => stateOf(id, progress, seed)),
    lessons: ownLessons.value.map((lesson) => ({ ...lesson })),
  };
}

const progressIn = ({ step, answers }: LessonState): LessonProgress => ({
  step,
  answers: Object.fromEntries(Object.entries(answers).map(([name, answer]) => [name, String(answer)])),
});

/** Takes the lessons of a project; own ones of before that it does not have stay. */
export function takeLessonsOf(project: Project): void {
  const { lesson, lessonsBegun, lessons } = project;
  const begun = lesson ? [...lessonsBegun, lesson] : lessonsBegun;
  batch(() => {
    const others = ownLessons.value.filter((own) => !lessons.some((fresh) => fresh.id === own.id));
    ownLessons.value = [...others, ...lessons].slice(-MOST_OWN);
    lessonProgress.value = {
      ...lessonProgress.value,
      ...Object.fromEntries(begun.map((state) => [state.id, progressIn(state)])),
    };
    openLesson.value = lesson?.id ?? null;
    lessonSeed.value = lesson?.seed ?? lessonsBegun[0]?.seed ?? lessonSeed.value;
  });
}
