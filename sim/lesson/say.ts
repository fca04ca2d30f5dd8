import { brief, readable } from "../../shared/readable.ts";
import type { LessonUnit } from "./units.ts";

/** A value, SI, in a unit, without the unit's name. */
export const sayNumber = (value: number, unit: LessonUnit): string =>
  unit.measure === "number" ? brief(unit.fromSi(value)) : readable(unit.fromSi(value), unit.decimals);

/** A value, SI, with its unit. */
export const sayValue = (value: number, unit: LessonUnit): string =>
  unit.id === "" ? sayNumber(value, unit) : `${sayNumber(value, unit)}\u00a0${unit.id}`;
