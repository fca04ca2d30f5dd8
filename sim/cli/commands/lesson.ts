import { InputError } from "../../../shared/errors.ts";
import { LESSONS } from "../../lesson/built-in/registry.ts";
import { drawLesson, varies } from "../../lesson/draw.ts";
import { keyWords, workingWords } from "../../lesson/handout/handout.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { readLesson } from "../../lesson/read.ts";
import { engineRuns, type RunSource } from "../../lesson/runs.ts";
import { plainText } from "../../lesson/walk.ts";
import { type WorkedLesson, workLesson } from "../../lesson/work.ts";
import { expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { chooseLesson, type LessonSource, readChosen } from "../lesson-choice.ts";
import { LESSON_OPTIONS } from "../lesson-options.ts";
import { readChoice } from "../quantity.ts";
import { columns, wrap } from "../report/text.ts";

/** Students whose numbers a check draws. */
const CHECKED_DRAWS = 40;

/** `lesson list`, `lesson show ID|FILE` and `lesson check FILE|ID`. */
export function lesson(words: readonly string[], around: Around): void {
  const args = readArguments("lesson", words, LESSON_OPTIONS);
  const [what = "list", ...rest] = args.words;
  const verb = readChoice("lesson", what, ["list", "show", "check"]);
  expectWords(`lesson ${verb}`, rest, verb === "list" ? [] : ["ID|FILE"], verb === "list" ? 0 : 1);
  around.out(textOf(verb, rest[0] ?? "", args.has("json"), around));
}

function textOf(verb: "list" | "show" | "check", name: string, asJson: boolean, around: Around): string {
  if (verb === "list") return list(asJson);
  const source = chooseLesson(`lesson ${verb}`, name);
  return verb === "show" ? show(source, asJson, around) : check(source, around);
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

function list(asJson: boolean): string {
  const all = LESSONS.map(({ id, text }) => {
    const { title, about, minutes, steps } = readLesson(text, id);
    return { id, title, about, minutes, steps: steps.length };
  });
  if (asJson) return json(all);
  return `${columns(
    all.map(({ id, title, minutes }) => [id, `${minutes} min`, title]),
    "lrl",
  ).join("\n")}\n`;
}

/** Runs of the engine that tell what is under way and end when the user asks. */
export function runsSeen(around: Around): RunSource {
  const runs = engineRuns();
  return (spec) => {
    stopIfCancelled(around);
    around.progress(`driving ${spec.cycle}`, 0);
    const figures = runs(spec);
    return {
      ...figures,
      balance: () => {
        stopIfCancelled(around);
        around.progress(`balancing ${spec.cycle}`, 0);
        return figures.balance();
      },
    };
  };
}

function show(source: LessonSource, asJson: boolean, around: Around): string {
  const worked = workLesson(readChosen(source), source.name, runsSeen(around));
  return asJson ? json(worked) : `${lessonLines(worked).join("\n")}\n`;
}

function lessonLines(worked: WorkedLesson): string[] {
  const steps = worked.steps.flatMap((step, i) => [
    "",
    `${i + 1}. ${step.title}`,
    ...step.asks.flatMap((ask) => [
      ...wrap(`${ask.name}: ${plainText(ask.question)}`, "   "),
      ...wrap(`key: ${keyWords(ask)}${ask.kind === "number" ? `, ${ask.toleranceText}` : ""}`, "     "),
      ...(workingWords(ask) === "" ? [] : wrap(workingWords(ask), "     ")),
    ]),
  ]);
  return [`${worked.title} (${worked.id}), ${worked.minutes} min`, ...wrap(worked.about), ...steps];
}

/** Works a lesson with its own numbers and, where it has ranges, with those of many students. */
function check(source: LessonSource, around: Around): string {
  const read = readChosen(source);
  const runs = runsSeen(around);
  const worked = workLesson(read, source.name, runs);
  if (varies(read)) for (let i = 0; i < CHECKED_DRAWS; i += 1) checkDraw(read, source.name, i, runs);
  const questions = worked.steps.reduce((sum, step) => sum + step.asks.length, 0);
  const drawn = varies(read) ? `, good with the numbers of ${CHECKED_DRAWS} students` : "";
  return `${worked.title}: ${worked.steps.length} steps, ${questions} questions, all right${drawn}\n`;
}

function checkDraw(read: Lesson, name: string, index: number, runs: RunSource): void {
  try {
    workLesson(drawLesson(read, { seed: index, student: `student ${index}` }), name, runs);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(
      error.faults.map((fault) => ({
        ...fault,
        what: `${fault.what} (with numbers that a student may draw: narrow the ranges)`,
      })),
    );
  }
}
