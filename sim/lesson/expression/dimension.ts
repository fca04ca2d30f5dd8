import { InputError } from "../../../shared/errors.ts";
import { quantityByName } from "../quantities/registry.ts";
import { DIMENSION, type Dimension, sameDimension } from "../units.ts";
import type { Condition, Expression } from "./tree.ts";

const combined = (a: Dimension, b: Dimension, sign: 1 | -1): Dimension => [
  a[0] + sign * b[0],
  a[1] + sign * b[1],
  a[2] + sign * b[2],
];

const isZero = (e: Expression): boolean => e.kind === "number" && e.value === 0;

/** True where the sides may be compared or added: same dimension, or a bare 0. */
function match(left: Expression, right: Expression, what: string): Dimension {
  const [a, b] = [dimensionOf(left), dimensionOf(right)];
  if (isZero(left)) return b;
  if (!isZero(right) && !sameDimension(a, b)) {
    throw new InputError({
      what: `${what} measure different things`,
      where: "",
      value: "",
      accepted: "the same kind on both sides, numbers with their unit",
    });
  }
  return a;
}

/**
 * Dimension of an expression's value.
 * @throws InputError where unlike things are added
 */
export function dimensionOf(e: Expression): Dimension {
  switch (e.kind) {
    case "number":
      return e.dimension;
    case "quantity":
      return DIMENSION[quantityByName(e.name)?.unit.measure ?? "number"];
    case "negative":
    case "size":
      return dimensionOf(e.of);
    case "product":
      return combined(dimensionOf(e.left), dimensionOf(e.right), 1);
    case "quotient":
      return combined(dimensionOf(e.left), dimensionOf(e.right), -1);
    default:
      return match(e.left, e.right, "the two that are added");
  }
}

/** @throws InputError where unlike things are compared */
export function checkCondition(c: Condition): void {
  if (c.kind === "and") for (const part of c.all) checkCondition(part);
  if (c.kind === "compare") match(c.left, c.right, "the two that are compared");
}
