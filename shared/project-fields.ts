import type { z } from "zod";

/**
 * Names of the fields that a schema knows at a path, for messages.
 * @param schema of the whole file
 * @param input what was parsed; its `kind` picks between alternatives
 * @param path to an object
 * @returns empty where the path leads to no object of the schema
 */
export function fieldsAt(schema: z.core.$ZodType, input: unknown, path: readonly PropertyKey[]): string[] {
  let here: z.core.$ZodType | undefined = objectOf(schema, input);
  let data = input;
  for (const name of path) {
    if (!here) return [];
    data = part(data, name);
    const inner = innerOf(here, name);
    here = inner && objectOf(inner, data);
  }
  const def = here && defOf(here);
  return def?.type === "object" ? Object.keys(def.shape) : [];
}

type Def = z.core.$ZodTypes["_zod"]["def"];

const defOf = (schema: z.core.$ZodType): Def => (schema as z.core.$ZodTypes)._zod.def;

const part = (data: unknown, name: PropertyKey): unknown =>
  typeof data === "object" && data !== null && Object.hasOwn(data, name)
    ? (data as Record<PropertyKey, unknown>)[name]
    : undefined;

/** Without defaults and the like, and of alternatives the one that the data names. */
function objectOf(schema: z.core.$ZodType, data: unknown): z.core.$ZodType | undefined {
  const def = defOf(schema);
  switch (def.type) {
    case "default":
    case "prefault":
    case "nullable":
      return objectOf(def.innerType, data);
    case "union":
      return def.options.find((option) => kindOf(option) === part(data, "kind"));
    default:
      return schema;
  }
}

function kindOf(schema: z.core.$ZodType): unknown {
  const def = defOf(schema);
  const kind = def.type === "object" ? def.shape.kind : undefined;
  const inner = kind && defOf(kind);
  return inner?.type === "literal" ? inner.values[0] : undefined;
}

function innerOf(schema: z.core.$ZodType, name: PropertyKey): z.core.$ZodType | undefined {
  const def = defOf(schema);
  if (def.type === "array") return def.element;
  return def.type === "object" ? def.shape[String(name)] : undefined;
}
