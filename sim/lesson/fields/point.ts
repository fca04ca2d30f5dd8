import type { LessonFaults } from "../faults.ts";
import { LESSON_PARTS, type Pointer, VIEWS } from "../lesson.ts";
import { QUANTITIES } from "../quantities/registry.ts";
import { readFields } from "./fields.ts";
import { wordsOf } from "./names.ts";

/** Fields of a `point` block. */
export const POINT_FIELDS = ["view", "part", "quantity", "say"] as const;

/** Reads a `point` block. */
export function readPoint(line: number, text: string, faults: LessonFaults): Pointer {
  const fields = readFields("point", line, text, POINT_FIELDS, faults);
  const [view = null] = wordsOf(fields, "view", VIEWS);
  const [part = null] = wordsOf(fields, "part", LESSON_PARTS);
  const shown = QUANTITIES.filter(({ at }) => at !== "").map(({ name }) => name);
  const [quantity = null] = wordsOf(fields, "quantity", shown);
  if (!fields.one("view") && !fields.one("part") && !fields.one("quantity")) {
    faults.add(line, "the point block points at nothing", "", "a view, a part or a quantity");
  }
  return { line, view, part, quantity, say: fields.one("say")?.value ?? "" };
}
