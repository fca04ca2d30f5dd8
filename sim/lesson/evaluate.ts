import type { Condition, Expression, Relation } from "./expression/tree.ts";
import { usualUnit } from "./expression/unit.ts";
import type { Quantity, Stage } from "./quantities/quantity.ts";
import { quantityByName } from "./quantities/registry.ts";
import { sayNumber } from "./say.ts";
import { regimeOn } from "./stage.ts";
import type { LessonUnit } from "./units.ts";
import { live, row, symbol, text, type Working, type WorkToken } from "./working.ts";

/** Finds the stage that an expression reads from. */
export type StageFor = (run: string | null) => Stage;

/** What of a quantity applies on a stage. */
function read(quantity: Quantity, stage: Stage): { value: number; working: Omit<Working, "result"> } {
  if (stage.kind === "bench" && quantity.bench) {
    const { of, working } = quantity.bench;
    return { value: of(stage), working: working(stage) };
  }
  if (stage.kind === "run" && stage.row !== null && quantity.moment) {
    const here = { ...stage, row: stage.row };
    return { value: quantity.moment.of(here), working: quantity.moment.working(here) };
  }
  if (stage.kind === "run" && quantity.run) {
    return { value: quantity.run.of(stage), working: quantity.run.working(stage) };
  }
  throw new Error(`${quantity.name} cannot be read here`);
}

function readNamed(e: Expression & { kind: "quantity" }, stages: StageFor) {
  const quantity = quantityByName(e.name);
  if (!quantity) throw new Error(`no quantity ${e.name}`);
  return { quantity, ...read(quantity, stages(e.run)) };
}

/** Value of an expression, SI. Not a number where it has none. */
export function evaluate(e: Expression, stages: StageFor): number {
  switch (e.kind) {
    case "number":
      return e.value;
    case "quantity":
      return readNamed(e, stages).value;
    case "negative":
      return -evaluate(e.of, stages);
    case "size":
      return Math.abs(evaluate(e.of, stages));
    case "sum":
      return evaluate(e.left, stages) + evaluate(e.right, stages);
    case "difference":
      return evaluate(e.left, stages) - evaluate(e.right, stages);
    case "product":
      return evaluate(e.left, stages) * evaluate(e.right, stages);
    case "quotient":
      return evaluate(e.left, stages) / evaluate(e.right, stages);
  }
}

/** Sides this close, as a share of the larger, are equal: rounding, not physics. */
const EQUAL = 1e-9;

const RELATED: Readonly<Record<Relation, (order: number) => boolean>> = {
  "<": (order) => order < 0,
  ">": (order) => order > 0,
  "≤": (order) => order <= 0,
  "≥": (order) => order >= 0,
  "=": (order) => order === 0,
  "≠": (order) => order !== 0,
};

/** Truth of a condition; false where a side is no number. */
export function holds(c: Condition, stages: StageFor): boolean {
  switch (c.kind) {
    case "always":
      return true;
    case "never":
      return false;
    case "regime":
      return regimeOn(stages(c.run)) === c.is;
    case "and":
      return c.all.every((part) => holds(part, stages));
    case "compare": {
      const [a, b] = [evaluate(c.left, stages), evaluate(c.right, stages)];
      if (Number.isNaN(a) || Number.isNaN(b)) return false;
      // In the unit that people read, 1e-9 is nothing, whatever is measured.
      const unit = usualUnit(c.left) ?? usualUnit(c.right);
      const gap = unit ? unit.fromSi(a) - unit.fromSi(b) : a - b;
      const size = unit ? Math.max(Math.abs(unit.fromSi(a)), Math.abs(unit.fromSi(b))) : Math.abs(a);
      return RELATED[c.relation](Math.abs(gap) <= EQUAL * Math.max(1, size) ? 0 : gap);
    }
  }
}

const SIGNS = { sum: " + ", difference: " − ", product: " × ", quotient: " / " } as const;

/** Names, and beside them values, of an expression made of several quantities. */
function lines(
  e: Expression,
  stages: StageFor,
): { names: readonly WorkToken[]; values: readonly WorkToken[] } {
  switch (e.kind) {
    case "number":
      return { names: [text(e.written)], values: [text(e.written)] };
    case "quantity": {
      const { quantity, value } = readNamed(e, stages);
      const { unit } = quantity;
      const words = e.run === null ? e.name : `${e.name} of ${e.run}`;
      return {
        names: [symbol(words)],
        values: row(live(sayNumber(value, unit)), unit.id === "" ? "" : ` ${unit.id}`),
      };
    }
    case "negative":
    case "size": {
      const inner = lines(e.of, stages);
      const [before, behind] = e.kind === "negative" ? ["−(", ")"] : ["|", "|"];
      return { names: row(before, ...inner.names, behind), values: row(before, ...inner.values, behind) };
    }
    default: {
      const [a, b] = [lines(e.left, stages), lines(e.right, stages)];
      const sign = SIGNS[e.kind];
      const tight = e.kind === "product" || e.kind === "quotient" || e.kind === "difference";
      const wrap = (side: Expression, tokens: readonly WorkToken[], right: boolean): readonly WorkToken[] =>
        tight && (side.kind === "sum" || side.kind === "difference") && (right || e.kind !== "difference")
          ? row("(", ...tokens, ")")
          : tokens;
      return {
        names: [...wrap(e.left, a.names, false), text(sign), ...wrap(e.right, b.names, true)],
        values: [...wrap(e.left, a.values, false), text(sign), ...wrap(e.right, b.values, true)],
      };
    }
  }
}

/** Negative numbers behind something stand in brackets. */
const bracketed = (tokens: readonly WorkToken[]): readonly WorkToken[] =>
  tokens.map((token, i) =>
    token.kind === "number" && i > 0 && token.text.startsWith("−")
      ? { ...token, text: `(${token.text})` }
      : token,
  );

/** How the value of an expression comes about, the result in a unit. */
export function workingFor(e: Expression, stages: StageFor, unit: LessonUnit): Working {
  const value = evaluate(e, stages);
  const result = live(unit.id === "" ? sayNumber(value, unit) : `${sayNumber(value, unit)} ${unit.id}`);
  if (e.kind === "quantity") {
    const { working } = readNamed(e, stages);
    return { ...working, live: bracketed(working.live), result };
  }
  const { names, values } = lines(e, stages);
  return {
    symbol: symbol("answer"),
    formula: names,
    live: bracketed(values),
    result,
    note: "Each part can be read off the stage.",
  };
}
