import { nearest } from "../../vehicle/nearest.ts";
import { QUANTITIES } from "../quantities/registry.ts";
import type { Field, Fields } from "./fields.ts";

/** Words parted by commas. */
export const listed = (field: Field | undefined): readonly string[] =>
  field === undefined
    ? []
    : field.value
        .split(",")
        .map((word) => word.trim())
        .filter((word) => word !== "");

/** Words of a field that are all of a set; books a fault for each that is not. */
export function wordsOf<const T extends string>(
  fields: Fields,
  name: string,
  known: readonly T[],
): readonly T[] {
  const field = fields.one(name);
  return listed(field).flatMap((word) => {
    const found = known.find((one) => one.toLowerCase() === word.toLowerCase());
    if (found !== undefined) return [found];
    const near = nearest(word, known);
    fields.faults.add(
      field?.line ?? fields.line,
      `unknown word; the nearest is "${near}"`,
      word,
      known.length > 30 ? "a quantity, such as sun torque; several parted by commas" : known.join(", "),
    );
    return [];
  });
}

/** Names of quantities that a step hides. */
export const hiddenNames = (fields: Fields): readonly string[] =>
  wordsOf(fields, "hide", [...QUANTITIES.map(({ name }) => name), "regime"]);
