import type { LessonFaults } from "../faults.ts";
import { readFields } from "./fields.ts";

/** What the `lesson` block says about the whole. */
export interface Head {
  readonly id: string | null;
  readonly about: string;
  readonly minutes: number;
}

/** Fields of a `lesson` block. */
export const LESSON_FIELDS = ["id", "about", "minutes"] as const;

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** Reads a `lesson` block. */
export function readHead(line: number, text: string, faults: LessonFaults): Head {
  const fields = readFields("lesson", line, text, LESSON_FIELDS, faults);
  const id = fields.one("id");
  const minutes = fields.one("minutes");
  if (id && !ID.test(id.value)) {
    faults.add(id.line, "not an id", id.value, "lower-case words joined by hyphens");
  }
  if (minutes && !/^\d{1,3}$/.test(minutes.value)) {
    faults.add(minutes.line, "not a whole number of minutes", minutes.value, "0 to 999");
  }
  return {
    id: id?.value ?? null,
    about: fields.one("about")?.value ?? "",
    minutes: Number(minutes?.value ?? 0) || 0,
  };
}
