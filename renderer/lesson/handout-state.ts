import { signal } from "@preact/signals";
import { PAPERS, type Paper } from "../../sim/lesson/handout/style.ts";
import { num } from "../state/format.ts";
import { lessonSeed } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import type { HandoutReply, MarkReply } from "../workers/lesson-contract.ts";
import { entry, reading } from "./state.ts";
import { studentsOf, type Whom } from "./students.ts";
import { make } from "./work.ts";

export { PAPERS };

/** For whom the handout is: kept for this visit only, names belong to no project. */
export const whom = signal<Whom>("one");
export const count = signal("20");
export const names = signal("");
export const paper = signal<Paper>("a4");

/** Whether marking refuses names that are not of the handout's class. */
export const onlyClass = signal(false);

/** The class as it is set; null when the number of sheets is none. */
export const students = (): readonly string[] | null =>
  studentsOf(whom.value, count.value, names.value, (n) => t.lesson.handout.student(num(n)));

/** What a handout was made from: when any of it changes, the pages are old. */
const ingredients = (): string =>
  JSON.stringify([entry.value?.text, lessonSeed.value, students(), paper.value]);

interface Made extends HandoutReply {
  readonly id: string;
  readonly from: string;
  readonly sheetCount: number;
}

/** The handout made last. */
export const made = signal<Made | null>(null);

/** The handout of the open lesson; null for none. */
export const madeNow = (): Made | null => (made.value?.id === entry.value?.id ? made.value : null);

/** Whether the pages are still what the form says. */
export const isCurrent = (): boolean => madeNow()?.from === ingredients();

/** Makes the handout of the open lesson. */
export async function makeHandout(): Promise<void> {
  const now = entry.value;
  const read = reading.value;
  const who = students();
  if (!now || !read || who === null) return;
  const from = ingredients();
  const request = {
    lesson: read.lesson,
    file: now.file,
    seed: lessonSeed.value,
    students: who,
    paper: paper.value,
  };
  const reply = await make<HandoutReply>((worker, report) => worker.handout(request, report));
  if (reply) made.value = { ...reply, id: now.id, from, sheetCount: Math.max(1, who.length) };
}

interface Marked extends MarkReply {
  readonly id: string;
  readonly fileName: string;
}

/** The answers marked last; a refused file leaves it as it was. */
export const marked = signal<Marked | null>(null);

/** Marks a file of answers to the open lesson. */
export async function markFile(answers: string, fileName: string): Promise<void> {
  const now = entry.value;
  const read = reading.value;
  if (!now || !read) return;
  const request = {
    lesson: read.lesson,
    file: now.file,
    seed: lessonSeed.value,
    students: onlyClass.value ? students() : null,
    answers,
    fileName,
  };
  const reply = await make<MarkReply>((worker, report) => worker.mark(request, report));
  if (reply) marked.value = { ...reply, id: now.id, fileName };
}
