import { z } from "zod";
import { isQuantity, metaOf, type ParameterMeta } from "../parameters/quantity.ts";
import { vehicleSchema } from "../parameters/schema.ts";

/** A parameter's default; null where it has none and must be given, or is absent as a whole (the engine map). */
export type DefaultValue = number | string | boolean | readonly number[] | null;

/** One declared parameter of a vehicle. */
export interface Declaration {
  /** Dotted path, such as "engine.startFuel". */
  readonly path: string;
  readonly meta: ParameterMeta;
  readonly schema: z.core.$ZodType;
  readonly value: DefaultValue;
}

type Node = z.core.$ZodType;

/** The schema inside wrappers that only say what happens when a value is left out. */
function bare(node: Node): Node {
  if (node instanceof z.ZodDefault || node instanceof z.ZodPrefault || node instanceof z.ZodOptional) {
    return bare(node.unwrap());
  }
  return node;
}

/** Fields of a group of parameters; undefined when the node is no group. */
function fieldsOf(node: Node): Readonly<Record<string, Node>> | undefined {
  const inner = bare(node);
  return inner instanceof z.ZodObject ? inner.shape : undefined;
}

const defaultOf = (node: Node): DefaultValue =>
  node instanceof z.ZodDefault ? (node.def.defaultValue as DefaultValue) : null;

function collect(node: Node, path: string): Declaration[] {
  const meta = metaOf(node);
  if (meta) return [{ path, meta, schema: node, value: defaultOf(node) }];
  return Object.entries(fieldsOf(node) ?? {}).flatMap(([name, field]) =>
    collect(field, path === "" ? name : `${path}.${name}`),
  );
}

/** Every parameter of a vehicle, in the order of the schema. */
export const DECLARATIONS: readonly Declaration[] = collect(vehicleSchema, "");

const byPath = new Map(DECLARATIONS.map((declaration) => [declaration.path, declaration]));

/** The declaration at a dotted path, or undefined. */
export const declarationAt = (path: string): Declaration | undefined => byPath.get(path);

/** Names of the fields of the group at a path ("" is the vehicle itself); empty when there is no such group. */
export function groupFields(path: string): readonly string[] {
  let node: Node | undefined = vehicleSchema;
  for (const name of path === "" ? [] : path.split(".")) {
    const fields: Readonly<Record<string, Node>> | undefined = node && fieldsOf(node);
    node = fields && Object.hasOwn(fields, name) ? fields[name] : undefined;
  }
  return node && metaOf(node) === undefined ? Object.keys(fieldsOf(node) ?? {}) : [];
}

/** One parameter as documents, tooltips and lists show it. */
export interface ParameterRow {
  readonly path: string;
  readonly kind: ParameterMeta["kind"];
  readonly meaning: string;
  /** SI unit, "1" for a pure number, "" for what is no number. */
  readonly unit: string;
  /** Inclusive range, of each element for lists; null for what is no number. */
  readonly min: number | null;
  readonly max: number | null;
  /** Words that a choice accepts. */
  readonly options: readonly string[];
  readonly default: DefaultValue;
}

/** Every parameter with meaning, unit, range and default, straight from the declarations. */
export const parameterTable = (): readonly ParameterRow[] =>
  DECLARATIONS.map(({ path, meta, value }) => ({
    path,
    kind: meta.kind,
    meaning: meta.meaning,
    unit: isQuantity(meta) ? meta.unit : "",
    min: isQuantity(meta) ? meta.min : null,
    max: isQuantity(meta) ? meta.max : null,
    options: isQuantity(meta) ? [] : meta.options,
    default: value,
  }));
