import type { OwnLesson } from "../../shared/project.ts";
import { LESSONS } from "../../sim/lesson/built-in/registry.ts";
import type { Lesson } from "../../sim/lesson/lesson.ts";
import { type LessonReading, readLessonText } from "../../sim/lesson/read.ts";

/** A lesson of the list. */
export interface LessonEntry {
  readonly id: string;
  readonly own: boolean;
  readonly text: string;
  /** what messages call it */
  readonly file: string;
}

/** Ids of the lessons that come with the program. */
export const BUILT_IN: readonly string[] = LESSONS.map(({ id }) => id);

/** Built-in lessons in the order of a course, then own ones. */
export const lessonEntries = (own: readonly OwnLesson[]): readonly LessonEntry[] => [
  ...LESSONS.map(({ id, text }) => ({ id, own: false, text, file: `lesson ${id}` })),
  ...own.map(({ id, text }) => ({ id, own: true, text, file: fileNameOf(id) })),
];

/** Name of an own lesson's file. */
export const fileNameOf = (id: string): string => `${id}.md`;

/** Texts read lately: a list is drawn again at every answer. */
const known = new Map<string, LessonReading>();
const MOST_KNOWN = 60;

/** A lesson's text, read as far as it goes. */
export function readingOf({ text, file }: Pick<LessonEntry, "text" | "file">): LessonReading {
  const name = `${file}\n${text}`;
  const found = known.get(name);
  if (found) return found;
  const reading = readLessonText(text, file);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(name, reading);
  return reading;
}

/** Questions of a lesson. */
export const questionCount = ({ steps }: Lesson): number =>
  steps.reduce((sum, { asks }) => sum + asks.length, 0);

/** Questions of a lesson to which there is an answer. */
export const answeredCount = ({ steps }: Lesson, answers: Readonly<Record<string, string>>): number =>
  steps.flatMap(({ asks }) => asks).filter(({ name }) => Object.hasOwn(answers, name)).length;
