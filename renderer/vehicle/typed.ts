import { isQuantity, type ParameterMeta, type QuantityMeta } from "../../sim/parameters/quantity.ts";
import { digits, shownUnit } from "./shown-units.ts";

/** Numbers of a list as they are typed and shown. */
const listText = (values: readonly number[]): string => values.map(digits).join("  ");

const numbersIn = (value: unknown): readonly number[] =>
  Array.isArray(value) ? value.filter((entry) => typeof entry === "number") : [];

/** A value, SI, as it is typed and shown; words stay as they are. */
export function textOf(path: string, meta: ParameterMeta, value: unknown): string {
  if (!isQuantity(meta)) return String(value);
  const { toShown } = shownUnit(path, meta);
  if (typeof value === "number") return digits(toShown(value));
  return Array.isArray(value) ? listText(numbersIn(value).map(toShown)) : "";
}

/** A typed number: decimal comma and true minus count; whatever is none stays text, which the vehicle refuses. */
const typedNumber = (text: string): number | string => {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  return plain !== "" && Number.isFinite(Number(plain)) ? Number(plain) : text;
};

/**
 * What was typed, SI. A number of a list that was not touched keeps its value to the last digit, though fewer are shown.
 * @param now the value in force
 */
export function readTyped(path: string, meta: QuantityMeta, text: string, now: unknown): unknown {
  const { fromShown, toShown } = shownUnit(path, meta);
  const one = (part: string): number | string => {
    const read = typedNumber(part);
    return typeof read === "number" ? fromShown(read) : read;
  };
  if (meta.kind !== "column") return one(text);
  const before = numbersIn(now);
  return text
    .trim()
    .split(/[\s;]+/)
    .map((part) => before.find((value) => digits(toShown(value)) === part) ?? one(part));
}
