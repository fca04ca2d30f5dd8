import { InputError, type InputFault } from "../../../shared/errors.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { drawLesson, studentKey } from "../draw.ts";
import { keyWords } from "../handout/handout.ts";
import { judge, type Verdict } from "../judge.ts";
import type { Lesson } from "../lesson.ts";
import { engineRuns, type RunSource } from "../runs.ts";
import { type WorkedAsk, workLesson } from "../work.ts";
import { type AnswerRow, readAnswers } from "./csv.ts";

/** How answers are marked. */
export interface MarkOptions {
  /** of the handout */
  readonly seed: number;
  /** for messages */
  readonly fileName: string;
  /** the class, if known: a name that is not in it is refused, and who handed in nothing is told */
  readonly students?: readonly string[];
  readonly runs?: RunSource;
}

/** What became of one question of one student. */
export interface Mark {
  readonly student: string;
  readonly question: string;
  /** row of the file, from 1; 0 when nothing was handed in */
  readonly row: number;
  readonly given: string;
  readonly key: string;
  readonly tolerance: string;
  /** "missing" when nothing was handed in, "unreadable" when it is no answer at all */
  readonly result: "right" | "wrong" | "missing" | "unreadable";
  /** what may have gone wrong, one phrase */
  readonly remark: string;
}

/** Points of a student or of a question. */
export interface Tally {
  readonly name: string;
  readonly right: number;
  readonly of: number;
}

/** A file of answers, marked. */
export interface Marking {
  readonly marks: readonly Mark[];
  /** in the order in which they first appear, or of the class */
  readonly students: readonly Tally[];
  /** in the order of the lesson */
  readonly questions: readonly Tally[];
}

const REMARKS: Readonly<Record<Verdict["remark"], string>> = {
  "": "",
  sign: "the size is right, the sign is not",
  unit: "right if meant in another unit",
  thousand: "off by a factor of 1000",
};

interface Sheet {
  readonly student: string;
  readonly answers: Map<string, AnswerRow>;
}

function fault(fileName: string, row: number, column: string): Pick<InputFault, "where"> {
  return { where: `${fileName}, row ${row}, column "${column}"` };
}

/** Sorts the rows by student and question. @throws InputError with row and column of what fits nowhere */
function sheetsOf(
  rows: readonly AnswerRow[],
  names: readonly string[],
  { fileName, students }: MarkOptions,
): readonly Sheet[] {
  const sheets = new Map<string, Sheet>();
  for (const student of students ?? []) sheets.set(studentKey(student), { student, answers: new Map() });
  const faults: InputFault[] = [];
  for (const answer of rows) {
    const key = studentKey(answer.student);
    const question = names.find((name) => name === answer.question.toLowerCase());
    if (students && !sheets.has(key)) {
      const near = nearest(answer.student, students) ?? "";
      faults.push({
        ...fault(fileName, answer.row, "student"),
        what: `nobody of the class is called this; the nearest is "${near}"`,
        value: answer.student,
        accepted: "a name of the class",
      });
      continue;
    }
    if (question === undefined) {
      faults.push({
        ...fault(fileName, answer.row, "question"),
        what: `the lesson has no such question; the nearest is "${nearest(answer.question, names)}"`,
        value: answer.question,
        accepted: names.join(", "),
      });
      continue;
    }
    const sheet = sheets.get(key) ?? { student: answer.student, answers: new Map<string, AnswerRow>() };
    sheets.set(key, sheet);
    const before = sheet.answers.get(question);
    if (before) {
      faults.push({
        ...fault(fileName, answer.row, "question"),
        what: `answered twice: row ${before.row} has it too`,
        value: answer.question,
        accepted: "one row for each student and question",
      });
    } else sheet.answers.set(question, answer);
  }
  if (faults.length > 0) throw new InputError(faults.slice(0, 30));
  return [...sheets.values()];
}

function markOne(student: string, ask: WorkedAsk, answer: AnswerRow | undefined): Mark {
  const base = {
    student,
    question: ask.name,
    row: answer?.row ?? 0,
    given: answer?.value ?? "",
    key: keyWords(ask),
    tolerance: ask.kind === "number" ? ask.toleranceText : "",
  };
  if (!answer || answer.value === "") return { ...base, result: "missing", remark: "nothing handed in" };
  try {
    const { right, remark } = judge(ask, answer.value);
    return { ...base, result: right ? "right" : "wrong", remark: REMARKS[remark] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const [first] = error.faults;
    return {
      ...base,
      result: "unreadable",
      remark: first ? `${first.what}; accepted: ${first.accepted}` : "",
    };
  }
}

const tally = (name: string, marks: readonly Mark[]): Tally => ({
  name,
  right: marks.filter(({ result }) => result === "right").length,
  of: marks.length,
});

/**
 * Marks a file of answers against everybody's own numbers.
 * @param text CSV with student, question, value and perhaps unit
 * @throws InputError with row and column for what fits neither the class nor the lesson; an answer that cannot be read
 * is no error, it is marked so
 */
export function markAnswers(lesson: Lesson, text: string, options: MarkOptions): Marking {
  const names = lesson.steps.flatMap(({ asks }) => asks.map(({ name }) => name));
  const sheets = sheetsOf(readAnswers(text, options.fileName), names, options);
  const runs = options.runs ?? engineRuns();
  const marks = sheets.flatMap(({ student, answers }) => {
    const drawn = drawLesson(lesson, { seed: options.seed, student });
    const asks = workLesson(drawn, `lesson ${lesson.id}`, runs).steps.flatMap((step) => step.asks);
    return asks.map((ask) => markOne(student, ask, answers.get(ask.name)));
  });
  return {
    marks,
    students: sheets.map(({ student }) =>
      tally(
        student,
        marks.filter((mark) => mark.student === student),
      ),
    ),
    questions: names.map((name) =>
      tally(
        name,
        marks.filter(({ question }) => question === name),
      ),
    ),
  };
}
