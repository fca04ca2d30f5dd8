import { InputError } from "../../../shared/errors.ts";
import { quantityByName } from "../quantities/registry.ts";
import { DIMENSION, findLessonUnit, LESSON_UNITS, type LessonUnit, sameDimension } from "../units.ts";
import { dimensionOf } from "./dimension.ts";
import type { Expression } from "./tree.ts";

/** Unit that a value is shown in when none is asked for: its own quantity's, else the first of its dimension. */
export function usualUnit(e: Expression): LessonUnit | undefined {
  if (e.kind === "quantity") return quantityByName(e.name)?.unit;
  if (e.kind === "negative" || e.kind === "size") return usualUnit(e.of);
  if (e.kind === "sum" || e.kind === "difference") return usualUnit(e.left) ?? usualUnit(e.right);
  const dimension = dimensionOf(e);
  if (sameDimension(dimension, DIMENSION.number)) return findLessonUnit("") ?? undefined;
  return LESSON_UNITS.find((unit) => sameDimension(DIMENSION[unit.measure], dimension));
}

/**
 * Settles the unit of an expression.
 * @param text unit that was written; empty for none
 * @throws InputError when the unit is unknown or measures something else
 */
export function unitFor(e: Expression, text: string): LessonUnit {
  const unit = text === "" ? usualUnit(e) : (findLessonUnit(text) ?? undefined);
  const dimension = dimensionOf(e);
  if (unit && sameDimension(DIMENSION[unit.measure], dimension)) return unit;
  const fitting = LESSON_UNITS.filter((one) => sameDimension(DIMENSION[one.measure], dimension));
  throw new InputError({
    what: text === "" ? "no unit fits this expression" : "this unit does not fit the expression",
    where: "",
    value: text,
    accepted: fitting.map(({ id }) => id || "no unit").join(" or ") || "another expression",
  });
}
