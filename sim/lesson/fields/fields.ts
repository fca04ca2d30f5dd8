import { nearest } from "../../vehicle/nearest.ts";
import type { LessonFaults } from "../faults.ts";

/** One `name: value` line of a fenced block. */
export interface Field {
  readonly line: number;
  readonly name: string;
  readonly value: string;
}

/** Fields of a block, each looked up by its name. */
export class Fields {
  constructor(
    readonly block: string,
    readonly line: number,
    readonly all: readonly Field[],
    readonly faults: LessonFaults,
  ) {}

  /** The field, or undefined; a second one of the name is refused when the block is read. */
  one(name: string): Field | undefined {
    return this.all.find((field) => field.name === name);
  }

  /** All fields of a name. */
  many(name: string): readonly Field[] {
    return this.all.filter((field) => field.name === name);
  }

  /** The field; books a fault when it is missing. */
  needed(name: string, accepted: string): Field | undefined {
    const found = this.one(name);
    if (!found) this.faults.add(this.line, `the ${this.block} block has no ${name}`, "", accepted);
    return found;
  }
}

/**
 * Reads the lines of a fenced block. A line that starts with a blank goes on with the value before; lines that start
 * with # are remarks.
 * @param line of the opening fence
 * @param known names that the block may have, those with a star more than once
 */
export function readFields(
  block: string,
  line: number,
  text: string,
  known: readonly string[],
  faults: LessonFaults,
): Fields {
  const names = known.map((name) => name.replace("*", ""));
  const fields: Field[] = [];
  text.split("\n").forEach((raw, index) => {
    const at = line + 1 + index;
    const content = raw.trim();
    if (content === "" || content.startsWith("#")) return;
    const last = fields.at(-1);
    if (/^\s/.test(raw) && last) {
      fields[fields.length - 1] = { ...last, value: `${last.value} ${content}` };
      return;
    }
    const cut = content.indexOf(":");
    const name = cut < 0 ? "" : content.slice(0, cut).trim().toLowerCase();
    if (cut < 0) {
      faults.add(at, "not a line of the form name: value", content, `${block} lines: ${names.join(", ")}`);
    } else if (!names.includes(name)) {
      const what = `the ${block} block has no "${name}"; the nearest is "${nearest(name, names)}"`;
      faults.add(at, what, content, names.join(", "));
    } else if (!known.includes(`${name}*`) && fields.some((field) => field.name === name)) {
      faults.add(at, `"${name}" stands twice`, content, `one line ${name}:`);
    } else fields.push({ line: at, name, value: content.slice(cut + 1).trim() });
  });
  return new Fields(block, line, fields, faults);
}
