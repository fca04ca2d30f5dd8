/// <reference path="../raw.d.ts" />
import { InputError } from "../../../shared/errors.ts";
import type { Lesson } from "../lesson.ts";
import { readLesson } from "../read.ts";
import chargeBalance from "./charge-balance.md?raw";
import comparingStrategies from "./comparing-strategies.md?raw";
import mechanicalPoint from "./mechanical-point.md?raw";
import pullingAway from "./pulling-away.md?raw";
import regeneration from "./regeneration.md?raw";
import startingTheEngine from "./starting-the-engine.md?raw";
import threeShafts from "./three-shafts.md?raw";
import torqueSplit from "./torque-split.md?raw";

/** A built-in lesson as it stands in the registry. */
export interface LessonText {
  /** the same as in its `lesson` block (a test holds it) */
  readonly id: string;
  readonly text: string;
}

/** The lessons that come with the program, in the order of a course. */
export const LESSONS: readonly LessonText[] = [
  { id: "three-shafts", text: threeShafts },
  { id: "torque-split", text: torqueSplit },
  { id: "starting-the-engine", text: startingTheEngine },
  { id: "pulling-away", text: pullingAway },
  { id: "mechanical-point", text: mechanicalPoint },
  { id: "regeneration", text: regeneration },
  { id: "charge-balance", text: chargeBalance },
  { id: "comparing-strategies", text: comparingStrategies },
];

const read = new Map<string, Lesson>();

/** @throws InputError naming the known lessons */
export function lessonTextById(id: string): LessonText {
  const found = LESSONS.find((lesson) => lesson.id === id);
  if (found) return found;
  throw new InputError({
    what: "unknown lesson",
    where: "lesson",
    value: id,
    accepted: LESSONS.map((lesson) => lesson.id).join(", "),
  });
}

/**
 * A built-in lesson, read and checked once.
 * @throws InputError naming the known lessons
 */
export function lessonById(id: string): Lesson {
  const kept = read.get(id);
  if (kept) return kept;
  const lesson = readLesson(lessonTextById(id).text, `lesson ${id}`);
  read.set(id, lesson);
  return lesson;
}
