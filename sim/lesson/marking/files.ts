import type { Lesson } from "../lesson.ts";
import { writeCsv } from "./csv.ts";
import type { Marking } from "./mark.ts";

/** The marks as CSV: one row for each student and question. */
export const marksCsv = ({ marks }: Marking): string =>
  writeCsv([
    ["student", "question", "given", "key", "tolerance", "result", "points", "remark"],
    ...marks.map((mark) => [
      mark.student,
      mark.question,
      mark.given,
      mark.key,
      mark.tolerance,
      mark.result,
      mark.result === "right" ? 1 : 0,
      mark.remark,
    ]),
  ]);

/** An empty file of answers to fill in: a row for each student and question. */
export const answerForm = (lesson: Lesson, students: readonly string[]): string =>
  writeCsv([
    ["student", "question", "value", "unit"],
    ...students.flatMap((student) =>
      lesson.steps.flatMap(({ asks }) =>
        asks.map((ask) => [student, ask.name, "", ask.kind === "number" ? ask.unit : ""]),
      ),
    ),
  ]);
