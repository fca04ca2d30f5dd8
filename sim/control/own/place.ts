/** A place in a strategy's text; null where it is not known. Both count from 1. */
export interface Place {
  readonly line: number | null;
  readonly column: number | null;
}

/** Name that the sandbox gives the strategy's file in its traces. */
export const OWN_FILE = "strategy.js";

/** No place known. */
export const NOWHERE: Place = { line: null, column: null };

/** The innermost place in the strategy that a trace names. @param trace text of an error's stack */
export function placeIn(trace: string): Place {
  const found = /strategy\.js:(\d+)(?::(\d+))?/.exec(trace);
  if (!found) return NOWHERE;
  return { line: Number(found[1]), column: found[2] === undefined ? null : Number(found[2]) };
}

/** Where `decide` is written, for faults of its answer, which no trace tells. */
export function placeOfDecide(text: string): Place {
  const lines = text.split("\n");
  const index = lines.findIndex((line) => /\bdecide\b\s*(\(|=)/.test(line) && !/^\s*(\/\/|\*)/.test(line));
  return index < 0 ? NOWHERE : { line: index + 1, column: null };
}

/** Where a module is named in an import. */
export function placeOfImport(text: string, name: string): Place {
  const index = text.split("\n").findIndex((line) => line.includes("import") && line.includes(name));
  return index < 0 ? NOWHERE : { line: index + 1, column: null };
}

/** Comments and plain texts, which are passed over, or a whole number of any size, such as 12n. */
const HUGE =
  /\/\*[\s\S]*?\*\/|\/\/.*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|(?<![\w$.])((?:0[xob][\da-f_]+|\d[\d_]*)n\b)/gi;

/** The first whole number of any size (12n) that a text names, and its place; null where there is none. */
export function hugeNumberIn(text: string): { readonly found: string; readonly place: Place } | null {
  for (const match of text.matchAll(HUGE)) {
    const found = match[1];
    if (found === undefined) continue;
    const before = text.slice(0, match.index).split("\n");
    return { found, place: { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 } };
  }
  return null;
}
