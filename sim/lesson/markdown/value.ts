import { parseExpression } from "../expression/parse.ts";
import { unitFor } from "../expression/unit.ts";
import type { Inline } from "../lesson.ts";
import { findLessonUnit } from "../units.ts";

const REGIME = /^regime(?:\s+of\s+([a-z][a-z0-9-]*))?$/;
const IN = /^(.*\S)\s+in\s+(\S.*)$/;

/**
 * Reads what stands between braces in a text: `sun torque`, `sun torque in N·m`, `regime`.
 * @throws InputError without a place
 */
export function readValue(source: string, line: number): Inline {
  const regime = REGIME.exec(source.trim());
  if (regime) {
    return { kind: "value", source, expression: null, run: regime[1] ?? null, unit: "", line, text: "" };
  }
  const [, inner, unitText] = IN.exec(source.trim()) ?? [];
  const asUnit = inner !== undefined && unitText !== undefined && findLessonUnit(unitText) !== null;
  const expression = parseExpression(asUnit ? inner : source.trim());
  const unit = unitFor(expression, asUnit ? unitText : "");
  return { kind: "value", source, expression, run: null, unit: unit.id, line, text: "" };
}
