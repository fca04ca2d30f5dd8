import { InputError } from "../../../shared/errors.ts";
import { html, type Markup } from "../../../shared/html.ts";
import { wholePage } from "../../../shared/page.ts";
import { type DrawFor, drawLesson, studentKey } from "../draw.ts";
import { choiceLetter } from "../judge.ts";
import type { Lesson } from "../lesson.ts";
import { engineRuns, type RunSource } from "../runs.ts";
import { plainText } from "../walk.ts";
import { type WorkedAsk, type WorkedLesson, type WorkedStep, workLesson } from "../work.ts";
import { plainTokens } from "../working.ts";
import { blockMarkup, inlineMarkup } from "./content.ts";
import { stageMarkup } from "./scene.ts";
import { type Paper, printStyle } from "./style.ts";

/** How a handout is made. */
export interface HandoutOptions {
  /** whole number, 0 to 4294967295: another one gives everybody other numbers */
  readonly seed: number;
  /** one sheet each, with numbers of their own; none gives one sheet with the lesson's numbers and a line for a name */
  readonly students: readonly string[];
  readonly paper?: Paper;
  /** where runs come from; the engine when left out */
  readonly runs?: RunSource;
}

/** Two documents in one file each: for the class, and for whoever marks. */
export interface Handout {
  readonly sheets: string;
  readonly key: string;
}

/** The usual caution of whatever speaks of real hardware. */
export const CAUTION =
  "Teaching model: the figures are not for calibrating, certifying or repairing a vehicle. Real hybrids carry lethal direct voltage and rotating parts: only people qualified under local rules work on them, by the maker's procedure, isolated, after the wait for the capacitors, with zero volts proven.";

function answerMarkup(ask: WorkedAsk): Markup {
  if (ask.kind === "choice") {
    const items = ask.choices.map(
      ({ text }, place) =>
        html`<li><span class="box"></span>${choiceLetter(place)}) ${inlineMarkup(text)}</li>`,
    );
    return html`<ol>${items}</ol>`;
  }
  const unit = ask.unit === "" ? "" : ` ${ask.unit}`;
  return html`<div><span class="line"></span>${unit} <span class="tol">right within ${ask.toleranceText}</span></div>`;
}

const askMarkup = (ask: WorkedAsk): Markup =>
  html`<div class="q"><span class="name">${ask.name}</span><p><strong>${inlineMarkup(ask.question)}</strong></p>${answerMarkup(ask)}</div>\n`;

function stepMarkup(step: WorkedStep, number: number): Markup {
  const question = (name: string): Markup | null => {
    const ask = step.asks.find((one) => one.name === name);
    return ask ? askMarkup(ask) : null;
  };
  return html`<section><h2>${number}. ${step.title}</h2>\n${stageMarkup(step)}${blockMarkup(step.body, question)}</section>\n`;
}

function sheetMarkup(lesson: WorkedLesson, student: string | null, seed: number): Markup {
  const name = student === null ? html`Name: <span class="line"></span>` : html`<b>${student}</b>`;
  const own =
    student === null
      ? null
      : html`<p class="small">The numbers on this sheet are yours alone. Hand in your answers under this name and the names of the questions.</p>`;
  return html`<article class="sheet"><h1>${lesson.title}</h1>
<div class="who">${name}<span>Sheet ${seed}</span><span>Date: <span class="line" style="width:7rem"></span></span></div>
${own}${blockMarkup(lesson.intro, () => null)}${lesson.steps.map((step, i) => stepMarkup(step, i + 1))}
<p class="foot">${CAUTION}</p></article>\n`;
}

/** A key as text: the number with its unit, or the letter and text of the right choice. */
export function keyWords(ask: WorkedAsk): string {
  if (ask.kind === "number") return ask.keyText;
  const place = ask.choices.findIndex(({ right }) => right);
  return `${choiceLetter(place)}) ${plainText(ask.choices[place]?.text ?? [])}`;
}

/** Working of a key as one line; empty when nothing is computed for it. */
export function workingWords({ working }: WorkedAsk): string {
  if (!working) return "";
  return `${plainTokens([working.symbol])} = ${plainTokens(working.formula)} = ${plainTokens(working.live)} = ${working.result.text}`;
}

function keyTable(lesson: WorkedLesson, student: string | null): Markup {
  const rows = lesson.steps.flatMap((step, i) =>
    step.asks.map(
      (ask) =>
        html`<tr><td>${i + 1}</td><td>${ask.name}</td><td>${keyWords(ask)}</td><td>${ask.kind === "number" ? ask.toleranceText : ""}</td><td>${workingWords(ask)}</td></tr>`,
    ),
  );
  return html`<section class="sheet"><h2>${student ?? "The lesson's own numbers"}</h2>
<table><thead><tr><th>Step</th><th>Question</th><th>Answer</th><th>Right within</th><th>Working</th></tr></thead><tbody>${rows}</tbody></table></section>\n`;
}

/** Longest name of a student, characters. */
const LONGEST_NAME = 100;

/** @throws InputError for a name that is empty, too long or there twice */
export function checkStudents(students: readonly string[], where: string): void {
  const seen = new Map<string, number>();
  students.forEach((student, index) => {
    const key = studentKey(student);
    const fault = (what: string, accepted: string): never => {
      throw new InputError({ what, where: `${where}, name ${index + 1}`, value: student, accepted });
    };
    if (key === "") fault("the name is empty", "a name");
    if (student.length > LONGEST_NAME) fault("the name is too long", `at most ${LONGEST_NAME} characters`);
    if (seen.has(key)) fault("two students have the same name", "names that differ in more than capitals");
    seen.set(key, index);
  });
}

/**
 * Makes a lesson's handout and its key: one self-contained file each, set for printing.
 * @throws InputError when the lesson cannot be computed, with lines; for a name given twice or empty
 */
export function handout(lesson: Lesson, options: HandoutOptions): Handout {
  const { seed, students, paper = "a4", runs = engineRuns() } = options;
  checkStudents(students, "students");
  const file = `lesson ${lesson.id}`;
  const work = (who: DrawFor | null): WorkedLesson =>
    workLesson(who ? drawLesson(lesson, who) : lesson, file, runs);
  const all =
    students.length === 0
      ? [{ student: null, worked: work(null) }]
      : students.map((student) => ({ student, worked: work({ seed, student }) }));
  const key = html`<h1>Key: ${lesson.title}</h1><p class="small">Sheet ${seed}. Not for the class.</p>${all.map(({ student, worked }) => keyTable(worked, student))}`;
  return {
    sheets: wholePage(
      `${lesson.title}: handout`,
      printStyle(paper, `${lesson.title}, sheet ${seed}`),
      all.map(({ student, worked }) => sheetMarkup(worked, student, seed)),
    ),
    key: wholePage(`${lesson.title}: key`, printStyle(paper, `Key, ${lesson.title}, sheet ${seed}`), key),
  };
}
