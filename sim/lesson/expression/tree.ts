import type { Dimension } from "../units.ts";

/** An expression over quantities. Plain data. */
export type Expression =
  | {
      readonly kind: "number";
      readonly value: number;
      readonly written: string;
      readonly dimension: Dimension;
    }
  | {
      readonly kind: "quantity";
      readonly name: string;
      /** name of a run, or null for the stage of the step */
      readonly run: string | null;
    }
  | { readonly kind: "negative" | "size"; readonly of: Expression }
  | {
      readonly kind: "sum" | "difference" | "product" | "quotient";
      readonly left: Expression;
      readonly right: Expression;
    };

/** How two values compare. */
export type Relation = "<" | ">" | "≤" | "≥" | "=" | "≠";

/** What a choice's truth is decided by. Plain data. */
export type Condition =
  | { readonly kind: "always" | "never" }
  | { readonly kind: "regime"; readonly is: string; readonly run: string | null }
  | {
      readonly kind: "compare";
      readonly relation: Relation;
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: "and"; readonly all: readonly Condition[] };

/** All quantities that an expression names. */
export function quantitiesIn(e: Expression): readonly (Expression & { kind: "quantity" })[] {
  switch (e.kind) {
    case "number":
      return [];
    case "quantity":
      return [e];
    case "negative":
    case "size":
      return quantitiesIn(e.of);
    default:
      return [...quantitiesIn(e.left), ...quantitiesIn(e.right)];
  }
}

/** All quantities that a condition names; a regime counts as none. */
export function quantitiesOf(c: Condition): readonly (Expression & { kind: "quantity" })[] {
  if (c.kind === "compare") return [...quantitiesIn(c.left), ...quantitiesIn(c.right)];
  return c.kind === "and" ? c.all.flatMap(quantitiesOf) : [];
}
