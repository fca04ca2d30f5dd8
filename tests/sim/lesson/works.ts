import { lessonById } from "../../../sim/lesson/built-in/registry.ts";
import { type DrawFor, drawLesson } from "../../../sim/lesson/draw.ts";
import { engineRuns } from "../../../sim/lesson/runs.ts";
import { unitById } from "../../../sim/lesson/units.ts";
import {
  type WorkedAsk,
  type WorkedLesson,
  type WorkedNumber,
  workLesson,
} from "../../../sim/lesson/work.ts";

/** One store of runs for a whole test file: each run is made once. */
export const runs = engineRuns();

/** A built-in lesson with its keys. */
export function worked(id: string, who: DrawFor | null = null): WorkedLesson {
  const lesson = lessonById(id);
  return workLesson(who ? drawLesson(lesson, who) : lesson, id, runs);
}

/** All questions of a lesson. */
export const asksOf = (lesson: WorkedLesson): readonly WorkedAsk[] =>
  lesson.steps.flatMap((step) => step.asks);

/** A key in the unit in which it is asked for. */
export function keyOf(lesson: WorkedLesson, name: string): number {
  const ask = asksOf(lesson).find((one) => one.name === name);
  if (ask?.kind !== "number") throw new Error(`no question for a number is called ${name}`);
  return shown(ask);
}

/** The key of a question in its unit. */
export const shown = (ask: WorkedNumber): number => unitById(ask.unit).fromSi(ask.key);

/** Place of the right choice. */
export function rightOf(lesson: WorkedLesson, name: string): number {
  const ask = asksOf(lesson).find((one) => one.name === name);
  if (ask?.kind !== "choice") throw new Error(`no question with choices is called ${name}`);
  return ask.choices.findIndex(({ right }) => right);
}

/** A lesson's text from steps alone. */
export const lessonText = (...steps: string[]): string => `# Test\n\n${steps.join("\n\n")}\n`;

/** A fenced block. */
export const fence = (name: string, ...lines: string[]): string =>
  `\`\`\`${name}\n${lines.join("\n")}\n\`\`\``;
