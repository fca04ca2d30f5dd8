import type { FileKind } from "../../shared/bridge.ts";
import { LONGEST_LESSON } from "../../sim/lesson/read.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { num } from "../state/format.ts";
import { addLesson } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { lessonSnippets } from "../texts/lesson-snippets-en.ts";
import { BUILT_IN, fileNameOf, readingOf } from "./catalogue.ts";
import { openById } from "./state.ts";

const l = t.lesson;

const MARKDOWN: FileKind = { title: l.write.kind, mime: "text/markdown", extensions: ["md"] };
const HTML: FileKind = { title: l.handout.kinds.html, mime: "text/html", extensions: ["html"] };
const CSV: FileKind = { title: l.handout.kinds.csv, mime: "text/csv", extensions: ["csv"] };

/** Largest file of a lesson that is read, bytes. */
export const MOST_LESSON_BYTES = 2 * 1024 * 1024;

/** Largest file of answers that is read, bytes: a hundred thousand rows. */
export const MOST_ANSWER_BYTES = 8 * 1024 * 1024;

async function save(name: string, kind: FileKind, content: string): Promise<void> {
  const result = await bridge.exportFile({ suggestedName: name, kinds: [kind], content });
  take(result, (saved) => tell(l.write.saved(saved.name)), t.notice.notSaved);
}

/** Saves a lesson as its Markdown file. */
export const saveLesson = (id: string, text: string): Promise<void> => save(fileNameOf(id), MARKDOWN, text);

/** Saves a page of a handout. */
export const savePage = (name: string, content: string): Promise<void> => save(name, HTML, content);

/** Saves a table. */
export const saveTable = (name: string, content: string): Promise<void> => save(name, CSV, content);

/** Adds an own lesson and opens it to be written; tells when there are too many. */
function addAndOpen(title: string, text: string): boolean {
  const id = addLesson(title, text, BUILT_IN);
  if (id === null) tell(l.list.full, true);
  else openById(id, "write");
  return id !== null;
}

/** A new lesson of one's own, with one step and one question to begin from. */
export function newLesson(): void {
  const title = lessonSnippets.freshTitle;
  addAndOpen(title, `# ${title}\n\n${lessonSnippets.fresh}`);
}

/** An own lesson that begins as a copy of another. */
export function copyLesson(title: string, text: string): void {
  if (addAndOpen(l.write.copyTitle(title), text)) tell(l.write.copied(title));
}

/** Takes a lesson's file as an own lesson, also one with faults: the editor tells them. */
export function takeLessonFile(text: string, name: string): void {
  if (text.includes("\u0000") || text.includes("\uFFFD")) {
    tell(l.list.notText(name), true);
    return;
  }
  if (text.length > LONGEST_LESSON) {
    tell(l.list.tooLong(name), true);
    return;
  }
  const { title } = readingOf({ text, file: name }).lesson;
  if (addAndOpen(title, text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n"))) tell(l.list.opened(name));
}

const megabytes = (bytes: number): string => num(bytes / 1e6, 1);

/** Tells that a lesson's file is too large. */
export const refuseLargeLesson = (name: string, bytes: number, most: number): void =>
  tell(l.list.tooLarge(name, megabytes(bytes), megabytes(most)), true);

/** Tells that a file of answers is too large. */
export const refuseLargeAnswers = (name: string, bytes: number, most: number): void =>
  tell(l.mark.tooLarge(name, megabytes(bytes), megabytes(most)), true);
