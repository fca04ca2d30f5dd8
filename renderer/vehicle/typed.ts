import { isQuantity, type ParameterMeta, type QuantityMeta } from "../../sim/parameters/quantity.ts";
import { shownValue, toSi } from "./shown-range.ts";
import { shownUnit } from "./shown-units.ts";

const numbersIn = (value: unknown): readonly number[] =>
  Array.isArray(value) ? value.filter((entry) => typeof entry === "number") : [];

/** A value, SI, as it is typed and shown; words stay as they are. */
export function textOf(path: string, meta: ParameterMeta, value: unknown): string {
  if (!isQuantity(meta)) return String(value);
  const unit = shownUnit(path, meta);
  const one = (entry: number): string => shownValue(unit, meta, entry);
  if (typeof value === "number") return one(value);
  return Array.isArray(value) ? numbersIn(value).map(one).join("  ") : "";
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
  const unit = shownUnit(path, meta);
  const one = (part: string): number | string => {
    const read = typedNumber(part);
    return typeof read === "number" ? toSi(unit, meta, read) : read;
  };
  if (meta.kind !== "column") return one(text);
  const before = numbersIn(now);
  const shown = before.map((value) => shownValue(unit, meta, value));
  return text
    .trim()
    .split(/[\s;]+/)
    .map((part, i) => {
      // At its own place first: two of a list may be shown alike.
      const place = shown[i] === part ? i : shown.indexOf(part);
      return before[place] ?? one(part);
    });
}
