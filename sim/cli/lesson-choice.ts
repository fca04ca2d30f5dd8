import { LESSONS, lessonTextById } from "../lesson/built-in/registry.ts";
import { checkStudents } from "../lesson/handout/handout.ts";
import type { Lesson } from "../lesson/lesson.ts";
import { readLesson } from "../lesson/read.ts";
import type { Arguments } from "./arguments.ts";
import { looksLikeFile, readText } from "./files.ts";
import { readWhole } from "./quantity.ts";
import { withNearest } from "./suggest.ts";
import type { NameList } from "./verbs.ts";

/** A lesson's text and what messages call it. */
export interface LessonSource {
  readonly text: string;
  readonly name: string;
  /** path when it was read from a file */
  readonly path: string | null;
}

const IDS = LESSONS.map(({ id }) => id);

/** The built-in lessons that can be named. */
export const lessonNames = (): readonly NameList[] => [
  { title: "lessons", rows: LESSONS.map(({ id, text }) => [id, readLesson(text, id).title]) },
];

/**
 * The text of a built-in lesson or of a file.
 * @throws InputError for an unknown id or a file that cannot be read
 */
export function chooseLesson(verb: string, name: string): LessonSource {
  if (IDS.includes(name)) return { text: lessonTextById(name).text, name: `lesson ${name}`, path: null };
  if (looksLikeFile(name)) return { text: readText(verb, name), name, path: name };
  throw withNearest(verb, name, IDS, "a Markdown file", () => lessonTextById(name));
}

/** The lesson, read. @throws InputError with line numbers for what is wrong in it */
export const readChosen = (source: LessonSource): Lesson => readLesson(source.text, source.name);

/** The seed of the numbers. */
export const readSeed = (args: Arguments): number => {
  const text = args.text("seed") ?? "1";
  return /^\d{10}$/.test(text) && Number(text) <= 4_294_967_295
    ? Number(text)
    : readWhole("--seed", text, 0, 999_999_999);
};

/** The names of `--students`, one a line; undefined when there is no such option. */
export function readClass(args: Arguments): readonly string[] | undefined {
  const path = args.text("students");
  if (path === undefined) return undefined;
  const names = readText("--students", path)
    .split(/\r?\n|\r/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  checkStudents(names, `--students ${path}`);
  return names;
}
