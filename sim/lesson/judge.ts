import { InputError } from "../../shared/errors.ts";
import { findLessonUnit, interchangeable, type LessonUnit, unitById, unitsOfMeasure } from "./units.ts";
import { plainText } from "./walk.ts";
import type { WorkedAsk, WorkedChoice, WorkedNumber } from "./work.ts";

/** How an answer compares with its key. */
export interface Verdict {
  readonly right: boolean;
  /** what was read: a number in SI, or the place of a choice from 0 */
  readonly read: number;
  /** what may have gone wrong; "" when there is nothing to tell */
  readonly remark: "" | "sign" | "unit" | "thousand";
}

/** Longest answer that is read as a number, characters. */
const LONGEST_ANSWER = 60;

const SHAPE = /^([+-]?)\s*([\d.,' ]*\d[\d.,' ]*?)(?:e([+-]?\d{1,3}))?\s*([^\d\s.,'].*)?$/i;

/** A written number in every way that it can be meant: "1,234" is 1.234 or 1234. */
function readingsOf(digits: string): readonly number[] {
  const tight = digits.replace(/[' ]/g, "");
  const asPoint = /^\d*\.?\d*$/.test(tight) ? [Number(tight)] : [];
  const asComma = /^\d*,?\d*$/.test(tight) ? [Number(tight.replace(",", "."))] : [];
  const grouped = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(tight) ? [Number(tight.replaceAll(",", ""))] : [];
  const dotted = /^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/.test(tight)
    ? [Number(tight.replaceAll(".", "").replace(",", "."))]
    : [];
  return [...new Set([...asPoint, ...asComma, ...grouped, ...dotted])].filter(Number.isFinite);
}

/** A typed number, every reading of it in SI. */
interface Typed {
  readonly values: readonly number[];
  readonly unit: LessonUnit;
}

/**
 * Reads an answer: a number with decimal point or comma, true or plain minus, blanks in thousands, and perhaps a unit.
 * @throws InputError without a place
 */
export function readAnswer(typed: string, usual: LessonUnit): Typed {
  const plain = typed
    .replace(/[−–]/g, "-")
    .replace(/[\s\u00a0\u202f\u2009]+/g, " ")
    .trim();
  const fits = plain.length <= LONGEST_ANSWER;
  const [, sign = "", digits, exponent, unitText = ""] = (fits && SHAPE.exec(plain)) || [];
  const values = digits === undefined ? [] : readingsOf(digits);
  if (values.length === 0) {
    throw new InputError({
      what: "not a number",
      where: "",
      value: typed,
      accepted: `a number, alone or with ${unitsOfMeasure(usual.measure)}`,
    });
  }
  const unit = unitText === "" ? usual : findLessonUnit(unitText);
  if (!unit || !interchangeable(unit.measure, usual.measure)) {
    throw new InputError({
      what: unit ? "this unit measures something else" : "the unit is not known",
      where: "",
      value: typed,
      accepted: unitsOfMeasure(usual.measure),
    });
  }
  const factor = (sign === "-" ? -1 : 1) * 10 ** Number(exponent ?? 0);
  return { values: values.map((value) => unit.toSi(factor * value)), unit };
}

/** Slack for decimal fractions at the very edge of a tolerance. */
const EDGE = 1e-9;

function judgeNumber(ask: WorkedNumber, typed: string): Verdict {
  const usual = unitById(ask.unit);
  const { values } = readAnswer(typed, usual);
  const room = ask.tolerance * (1 + EDGE) + EDGE * Math.abs(ask.key);
  const near = (value: number): boolean => Math.abs(value - ask.key) <= room;
  const right = values.find(near);
  if (right !== undefined) return { right: true, read: right, remark: "" };
  const [read = Number.NaN] = values;
  if (values.some((value) => near(-value))) return { right: false, read, remark: "sign" };
  const thousand = values.some((value) => near(value * 1000) || near(value / 1000));
  if (thousand) return { right: false, read, remark: "thousand" };
  const others = otherUnits(usual);
  const unit = values.some((value) => others.some((other) => near(other.toSi(usual.fromSi(value)))));
  return { right: false, read, remark: unit ? "unit" : "" };
}

const otherUnits = (usual: LessonUnit): readonly LessonUnit[] =>
  ["rev/min", "rad/s", "km/h", "m/s", "mph", "kJ", "kWh", "kW", "W", "N·m", "lb·ft", "%", ""]
    .map(unitById)
    .filter((unit) => unit.id !== usual.id && interchangeable(unit.measure, usual.measure));

/** Letters of choices as they are printed. */
export const choiceLetter = (place: number): string => String.fromCharCode(97 + place);

function judgeChoice(ask: WorkedChoice, typed: string): Verdict {
  const word = typed.trim().toLowerCase().replace(/[).]$/, "");
  const texts = ask.choices.map(({ text }) => plainText(text).trim().toLowerCase());
  const byLetter = ask.choices.findIndex((_, place) => choiceLetter(place) === word);
  const read = byLetter >= 0 ? byLetter : texts.indexOf(typed.trim().toLowerCase());
  if (read < 0) {
    const letters = ask.choices.map((_, place) => choiceLetter(place)).join(", ");
    throw new InputError({ what: "none of the choices", where: "", value: typed, accepted: letters });
  }
  return { right: ask.choices[read]?.right === true, read, remark: "" };
}

/**
 * Compares an answer with its key.
 * @param typed number with or without unit; for a choice its letter or its text
 * @throws InputError without a place, when it cannot be read at all
 */
export const judge = (ask: WorkedAsk, typed: string): Verdict =>
  ask.kind === "number" ? judgeNumber(ask, typed) : judgeChoice(ask, typed);
