import type { z } from "zod";
import type { InputFault } from "./errors.ts";
import { fieldsAt } from "./project-fields.ts";

type Issue = z.core.$ZodIssue;

/** Told at once; a file with more is better mended from the top. */
const MOST_FAULTS = 10;
const LONGEST = 60;

/**
 * What a schema found wrong in a file, as faults with the field's path.
 * @param issues as the schema gives them
 * @param schema that gave them
 * @param input what was parsed
 * @param where the file's name
 */
export function faultsOf(
  issues: readonly Issue[],
  schema: z.core.$ZodType,
  input: unknown,
  where: string,
): InputFault[] {
  return issues
    .flatMap((issue) =>
      issue.code === "unrecognized_keys" ? unknownFields(issue, schema, input) : [one(issue, input)],
    )
    .slice(0, MOST_FAULTS)
    .map((fault) => ({ ...fault, where: fault.where === "" ? where : `${where}: ${fault.where}` }));
}

function one(issue: Issue, input: unknown): InputFault {
  const value = valueAt(input, issue.path);
  return { ...tell(issue, value), where: pathText(issue.path), value: show(value) };
}

function unknownFields(
  issue: z.core.$ZodIssueUnrecognizedKeys,
  schema: z.core.$ZodType,
  input: unknown,
): InputFault[] {
  const accepted = fieldsAt(schema, input, issue.path).join(", ");
  return issue.keys.map((key) => {
    const path = [...issue.path, key];
    return { what: "unknown field", where: pathText(path), value: show(valueAt(input, path)), accepted };
  });
}

/** What is wrong, and what would be right. */
function tell(issue: Issue, value: unknown): Pick<InputFault, "what" | "accepted"> {
  if (issue.code === "custom") {
    return { what: String(issue.params?.what), accepted: String(issue.params?.accepted) };
  }
  const what = value === undefined ? "missing" : wrong(issue);
  return { what, accepted: right(issue) };
}

function wrong(issue: Issue): string {
  switch (issue.code) {
    case "too_small":
      return issue.origin === "string" || issue.origin === "array" ? "too short" : "too small";
    case "too_big":
      return issue.origin === "string" || issue.origin === "array" ? "too long" : "too large";
    case "invalid_type":
      return `not ${withArticle(issue.expected)}`;
    case "invalid_format":
      return "not a text of this form";
    default:
      return "not one of the known words";
  }
}

function right(issue: Issue): string {
  switch (issue.code) {
    case "too_small":
      return `${issue.minimum} or more${unitOf(issue.origin)}`;
    case "too_big":
      return `${issue.maximum} or less${unitOf(issue.origin)}`;
    case "invalid_type":
      return withArticle(issue.expected);
    case "invalid_format":
      return issue.message;
    case "invalid_value":
      return issue.values.map(String).join(" or ");
    case "invalid_union":
      return unionText(issue);
    default:
      return issue.message;
  }
}

function unionText(issue: z.core.$ZodIssueInvalidUnion): string {
  if ("options" in issue && Array.isArray(issue.options)) return issue.options.map(String).join(" or ");
  return issue.errors.map((part) => part.map(right).join(", ")).join(" or ");
}

const unitOf = (origin: string): string =>
  origin === "string" ? " characters" : origin === "array" ? " entries" : "";

const NOUNS: Readonly<Record<string, string>> = {
  object: "an object",
  record: "an object",
  array: "a list",
  int: "a whole number",
  boolean: "true or false",
  string: "a text",
};

const withArticle = (expected: string): string => NOUNS[expected] ?? `a ${expected}`;

/** A path as people write it: `cycle.time[12]`. */
const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`))
    .join("")
    .replace(/^\./, "");

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const name of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, name)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[name];
  }
  return value;
}

function show(value: unknown): string {
  if (value === undefined) return "";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
