import { checkCondition, dimensionOf } from "../expression/dimension.ts";
import { parseCondition, parseExpression } from "../expression/parse.ts";
import type { Condition, Expression } from "../expression/tree.ts";
import { unitFor } from "../expression/unit.ts";
import type { LessonFaults } from "../faults.ts";
import type { Ask, ChoiceAsk, NumberAsk, Tolerance } from "../lesson.ts";
import { inlineOf } from "../markdown/blocks.ts";
import { findLessonUnit, type LessonUnit } from "../units.ts";
import { type Field, type Fields, readFields } from "./fields.ts";

/** Fields of an `ask` block; a star marks one that may stand several times. */
export const ASK_FIELDS = ["name", "question", "key", "unit", "tolerance", "choice*"];
const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** When a question says nothing. */
const USUAL: Tolerance = { relative: 0.02, absolute: 0 };

const HOW_FAR = "2 %, 5 rev/min, 2 points (of a share), or two of them: 2 % or 0.5 N·m";

function partOf(text: string, unit: LessonUnit): Tolerance | null {
  const [, digits, name = ""] = /^(\d+\.?\d*|\.\d+)\s*(.*)$/.exec(text.trim()) ?? [];
  if (digits === undefined) return null;
  const value = Number(digits);
  if (name === "%") return { relative: value / 100, absolute: 0 };
  if (name === "points") return { relative: 0, absolute: value / 100 };
  const own = name === "" ? unit : findLessonUnit(name);
  return own && own.measure === unit.measure ? { relative: 0, absolute: own.toSi(value) } : null;
}

function toleranceOf(fields: Fields, unit: LessonUnit): Tolerance {
  const field = fields.one("tolerance");
  if (!field) return USUAL;
  const parts = field.value.split(/\s+or\s+/).map((text) => partOf(text, unit));
  const [first, second] = parts;
  if (!first || second === null || parts.length > 2) {
    fields.faults.add(field.line, "not a tolerance", field.value, HOW_FAR);
    return USUAL;
  }
  const all = {
    relative: first.relative + (second?.relative ?? 0),
    absolute: first.absolute + (second?.absolute ?? 0),
  };
  if (all.relative > 0 || all.absolute > 0) return all;
  fields.faults.add(field.line, "a tolerance of nothing", field.value, HOW_FAR);
  return USUAL;
}

function keyOf(fields: Fields): Expression | null {
  const field = fields.needed("key", "an expression over quantities, such as sun torque");
  if (!field) return null;
  return fields.faults.trying(field.line, () => {
    const key = parseExpression(field.value);
    dimensionOf(key);
    return key;
  });
}

function numberAsk(fields: Fields, base: Pick<Ask, "line" | "name" | "question">): NumberAsk | null {
  const key = keyOf(fields);
  const field = fields.one("unit");
  if (!key) return null;
  const unit = fields.faults.trying(field?.line ?? fields.line, () => unitFor(key, unitText(field)));
  if (!unit) return null;
  const source = fields.one("key")?.value ?? "";
  return { ...base, kind: "number", key, source, unit: unit.id, tolerance: toleranceOf(fields, unit) };
}

const unitText = (field: Field | undefined): string => (field?.value === "none" ? "" : (field?.value ?? ""));

/** Cut before the condition: the last bar of the line. */
function choiceOf(field: Field, faults: LessonFaults): ChoiceAsk["choices"][number] | null {
  const cut = field.value.lastIndexOf("|");
  const condition = cut < 0 ? "" : field.value.slice(cut + 1).trim();
  if (condition === "") {
    const accepted = "choice: what it says | sun power > 0";
    faults.add(field.line, "a choice has no condition behind a bar", field.value, accepted);
    return null;
  }
  const when = faults.trying(field.line, (): Condition => {
    const found = parseCondition(condition.replace(/^when\s+/, ""));
    checkCondition(found);
    return found;
  });
  if (!when) return null;
  const text = inlineOf(field.value.slice(0, cut).trim(), field.line, faults);
  return { text, when, source: condition, line: field.line };
}

function choiceAsk(fields: Fields, base: Pick<Ask, "line" | "name" | "question">): ChoiceAsk | null {
  const written = fields.many("choice");
  const choices = written.flatMap((field) => choiceOf(field, fields.faults) ?? []);
  if (written.length < 2) {
    fields.faults.add(fields.line, "a single choice is none", "", "two choices or more");
    return null;
  }
  for (const name of ["key", "unit", "tolerance"]) {
    const field = fields.one(name);
    if (field) {
      fields.faults.add(field.line, `a choice has no ${name}`, field.value, "conditions behind the bars");
    }
  }
  return { ...base, kind: "choice", choices };
}

/** Reads an `ask` block; null when it is not a question. */
export function readAsk(line: number, text: string, faults: LessonFaults): Ask | null {
  const fields = readFields("ask", line, text, ASK_FIELDS, faults);
  const name = fields.needed("name", "lower-case words joined by hyphens, once in the lesson");
  const question = fields.needed("question", "one sentence");
  if (name && !ID.test(name.value)) {
    faults.add(name.line, "not a name", name.value, "lower-case words joined by hyphens");
  }
  const base = {
    line,
    name: name?.value ?? "",
    question: question ? inlineOf(question.value, question.line, faults) : [],
  };
  return fields.many("choice").length > 0 ? choiceAsk(fields, base) : numberAsk(fields, base);
}
