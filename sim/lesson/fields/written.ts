import { InputError } from "../../../shared/errors.ts";
import type { Written } from "../lesson.ts";
import { findLessonUnit, interchangeable, type LessonUnit, type Measure, unitsOfMeasure } from "../units.ts";

/** Most values that one number of a handout may be drawn from. */
const MOST_CHOICES = 1000;

const SHAPE = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*([^()]*?)\s*(?:\(([^()]*)\))?$/;
const RANGE = /^([+-]?(?:\d+\.?\d*|\.\d+))\s+to\s+([+-]?(?:\d+\.?\d*|\.\d+))\s+by\s+(\d+\.?\d*|\.\d+)$/;

const minus = (text: string): string => text.replace(/[−–]/g, "-");

/** Unit behind a number; the first one of the measure when there is none. */
function unitOf(text: string, measure: Measure, usual: LessonUnit): LessonUnit {
  if (text === "") return usual;
  const unit = findLessonUnit(text);
  if (unit && interchangeable(unit.measure, measure)) return unit;
  throw new InputError({
    what: unit ? "this unit measures something else" : "the unit is not known",
    where: "",
    value: text,
    accepted: unitsOfMeasure(measure),
  });
}

function choicesOf(range: string, unit: LessonUnit, value: number): readonly number[] {
  const [, from, to, by] = RANGE.exec(range.trim()) ?? [];
  const [low, high, step] = [Number(from), Number(to), Number(by)];
  const count = Math.floor((high - low) / step + 1e-9) + 1;
  const good = from !== undefined && high > low && step > 0 && count <= MOST_CHOICES;
  if (!good || value < low - 1e-9 || value > high + 1e-9) {
    throw new InputError({
      what: good ? "the number lies outside its own range" : "not a range",
      where: "",
      value: range,
      accepted: "(60 to 110 by 10): rising, at most 1000 values, the number before the bracket among them",
    });
  }
  return Array.from({ length: count }, (_, i) => unit.toSi(low + i * step));
}

/**
 * Reads a number with its unit and, in brackets, the values that a handout may draw: `100 N·m (60 to 110 by 10)`.
 * @param usual unit when none is written
 * @throws InputError without a place
 */
export function readWritten(text: string, usual: LessonUnit): Written {
  const [, digits, unitText = "", range] = SHAPE.exec(minus(text.trim())) ?? [];
  if (digits === undefined) {
    throw new InputError({
      what: "not a number",
      where: "",
      value: text,
      accepted: `a number with its unit (${unitsOfMeasure(usual.measure)}), and perhaps a range such as (60 to 110 by 10)`,
    });
  }
  const unit = unitOf(unitText, usual.measure, usual);
  const value = Number(digits);
  return {
    value: unit.toSi(value),
    choices: range === undefined ? [] : choicesOf(range, unit, value),
  };
}

/** A number that does not vary. */
export const fixedNumber = (value: number): Written => ({ value, choices: [] });
