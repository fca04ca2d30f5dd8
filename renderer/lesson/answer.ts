import { InputError, type InputFault } from "../../shared/errors.ts";
import { type Hint, hintLevels, hintOf } from "../../sim/lesson/hint.ts";
import { judge, readAnswer, type Verdict } from "../../sim/lesson/judge.ts";
import { interchangeable, LESSON_UNITS, type LessonUnit, unitById } from "../../sim/lesson/units.ts";
import type { WorkedAsk, WorkedNumber } from "../../sim/lesson/work.ts";

/** Units in which an answer may be given: the question's own first. */
export function unitsFor(ask: WorkedNumber): readonly LessonUnit[] {
  const own = unitById(ask.unit);
  const others = LESSON_UNITS.filter((unit) => unit !== own && interchangeable(unit.measure, own.measure));
  return [own, ...others];
}

/** True when what was typed names a unit itself. */
const namesUnit = (typed: string): boolean => /[^\d\s.,'’eE+\-−–\u00a0\u202f\u2009]/.test(typed);

/**
 * An answer as it is judged and kept: what was typed, with the unit that was chosen beside it unless it names one.
 * @param unit id of one of `unitsFor`
 */
export function answerText(ask: WorkedNumber, typed: string, unit: string): string {
  const plain = typed.trim();
  if (unit === ask.unit || plain === "" || namesUnit(plain)) return plain;
  if (unit !== "") return `${plain} ${unit}`;
  // A bare number in place of a share has no word to put behind it.
  try {
    const [value = Number.NaN] = readAnswer(plain, unitById("")).values;
    return `${unitById(ask.unit).fromSi(value)} ${ask.unit}`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return plain;
  }
}

/** What became of an answer: judged, or not to be read at all. */
export type Judged =
  | { readonly kind: "judged"; readonly verdict: Verdict }
  | { readonly kind: "unreadable"; readonly fault: InputFault };

/** Judges an answer as it is kept. */
export function judged(ask: WorkedAsk, answer: string): Judged {
  try {
    return { kind: "judged", verdict: judge(ask, answer) };
  } catch (error) {
    const [fault] = error instanceof InputError ? error.faults : [];
    if (!fault) throw error;
    return { kind: "unreadable", fault };
  }
}

/** True when there is an answer and it is right. */
export function isRight(ask: WorkedAsk, answer: string | undefined): boolean {
  if (answer === undefined) return false;
  const found = judged(ask, answer);
  return found.kind === "judged" && found.verdict.right;
}

/**
 * The hint after some wrong answers, from the working: formula first, then number by number; the result is left out
 * until the working is shown.
 * @param wrong answers so far, at least 1
 * @returns null for a question without a working
 */
export function hintAfter(ask: WorkedAsk, wrong: number): Hint | null {
  if (!ask.working) return null;
  return hintOf(ask.working, Math.min(Math.max(1, wrong), hintLevels(ask.working) - 1));
}

/** The whole working, with its result. */
export const wholeWorking = (ask: WorkedAsk): Hint | null =>
  ask.working && hintOf(ask.working, hintLevels(ask.working));
