import { z } from "zod";

/** What a parameter declares about itself, once: forms, file checks, tables and tooltips read it from here. */
export interface QuantityMeta {
  /** Meaning in one phrase. */
  readonly meaning: string;
  /** SI unit, or a unit named in the parameter's own name; "1" for a pure number. */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

const declared = z.registry<QuantityMeta>();

/** The declaration of a schema node made by `quantity`, `whole` or `column`; undefined for others. */
export const metaOf = (schema: z.ZodType): QuantityMeta | undefined => declared.get(schema);

function declare<S extends z.ZodType>(schema: S, meta: QuantityMeta): S {
  declared.add(schema, meta);
  return schema;
}

/**
 * A number with meaning, unit, inclusive range and default.
 * @param range [least, greatest], in the stated unit
 */
export function quantity(meaning: string, unit: string, range: readonly [number, number], value: number) {
  const [min, max] = range;
  return declare(z.number().min(min).max(max).default(value), { meaning, unit, min, max });
}

/** A whole number with meaning, inclusive range and default. */
export function whole(meaning: string, unit: string, range: readonly [number, number], value: number) {
  const [min, max] = range;
  return declare(z.number().int().min(min).max(max).default(value), { meaning, unit, min, max });
}

/** A list of numbers, each in the range. */
export function column(
  meaning: string,
  unit: string,
  range: readonly [number, number],
  value: readonly number[],
) {
  const [min, max] = range;
  return declare(
    z
      .array(z.number().min(min).max(max))
      .min(2)
      .max(500)
      .default([...value]),
    {
      meaning,
      unit,
      min,
      max,
    },
  );
}
