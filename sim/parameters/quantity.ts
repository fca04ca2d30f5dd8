import { z } from "zod";

/** A number, a whole number, a list of numbers or a table of numbers, as its declaration describes it. */
export interface QuantityMeta {
  readonly kind: "number" | "whole" | "column" | "grid";
  /** Meaning in one phrase. */
  readonly meaning: string;
  /** SI unit, or a unit named in the parameter's own name; "1" for a pure number. */
  readonly unit: string;
  /** Inclusive range, of each element for lists and tables. */
  readonly min: number;
  readonly max: number;
}

/** Everything else that can be declared: yes or no, one of several words, a text. */
export interface WordMeta {
  readonly kind: "flag" | "choice" | "text";
  readonly meaning: string;
  /** The words that are accepted; empty for flags and texts. */
  readonly options: readonly string[];
}

/** What a parameter declares about itself, once: forms, file checks, tables and tooltips read it from here. */
export type ParameterMeta = QuantityMeta | WordMeta;

/** Fewest and most points of a list or table. */
export const LEAST_POINTS = 2;
export const MOST_POINTS = 500;

const declared = z.registry<ParameterMeta>();

/** The declaration of a schema node made by a function of this file; undefined for groups of parameters. */
export const metaOf = (schema: z.core.$ZodType): ParameterMeta | undefined => declared.get(schema);

/** True for numbers and everything made of numbers: those have a unit and a range. */
export const isQuantity = (meta: ParameterMeta): meta is QuantityMeta => "unit" in meta;

function declare<S extends z.ZodType>(schema: S, meta: ParameterMeta): S {
  declared.add(schema, meta);
  return schema;
}

type Range = readonly [number, number];

const points = (range: Range) =>
  z.array(z.number().min(range[0]).max(range[1])).min(LEAST_POINTS).max(MOST_POINTS);

const numeric = (kind: QuantityMeta["kind"], meaning: string, unit: string, range: Range): QuantityMeta => ({
  kind,
  meaning,
  unit,
  min: range[0],
  max: range[1],
});

/**
 * A number with meaning, unit, inclusive range and default.
 * @param range [least, greatest], in the stated unit
 */
export const quantity = (meaning: string, unit: string, range: Range, value: number) =>
  declare(z.number().min(range[0]).max(range[1]).default(value), numeric("number", meaning, unit, range));

/** A whole number with meaning, inclusive range and default. */
export const whole = (meaning: string, unit: string, range: Range, value: number) =>
  declare(
    z.number().int().min(range[0]).max(range[1]).default(value),
    numeric("whole", meaning, unit, range),
  );

/** A list of 2 to 500 numbers, each in the range, with a default. */
export const column = (meaning: string, unit: string, range: Range, value: readonly number[]) =>
  declare(points(range).default([...value]), numeric("column", meaning, unit, range));

/** A list as `column`, without a default: it must be given. */
export const givenColumn = (meaning: string, unit: string, range: Range) =>
  declare(points(range), numeric("column", meaning, unit, range));

/** A table of 2 to 500 rows of numbers, each in the range; it must be given. */
export const givenGrid = (meaning: string, unit: string, range: Range) =>
  declare(z.array(points(range)).min(LEAST_POINTS).max(MOST_POINTS), numeric("grid", meaning, unit, range));

/** Yes or no. */
export const flag = (meaning: string, value: boolean) =>
  declare(z.boolean().default(value), { kind: "flag", meaning, options: [] });

/** One of several words; the first is the default. */
export const choice = <const T extends readonly [string, ...string[]]>(meaning: string, options: T) =>
  declare(z.enum(options).default(options[0] as z.util.NoUndefined<T[number]>), {
    kind: "choice",
    meaning,
    options,
  });

/** A text that a pattern accepts; the meaning says in words what the pattern wants. */
export const text = (meaning: string, pattern: RegExp, value: string) =>
  declare(z.string().regex(pattern).default(value), { kind: "text", meaning, options: [] });
