/** Where a text stops being JSON. Line and column count from 1. */
export interface JsonPlace {
  readonly line: number;
  readonly column: number;
  /** What stands there, shortened. */
  readonly found: string;
}

const BLANK = String.raw`[\t\n\r ]*`;
const MARK = String.raw`([{}[\],:])`;
const PLAIN = String.raw`[ !#-\[\]-\uffff]*`;
const TEXT = String.raw`("${PLAIN}(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})${PLAIN})*")`;
const WORD = String.raw`(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-])`;
const TOKEN = new RegExp(`${BLANK}(?:${MARK}|${TEXT}|${WORD})`, "y");

/** What may come next: a value, a value or the end of a list, a name, and so on. */
type Awaited = "value" | "value or ]" | "name" | "name or }" | ":" | "next" | "end";

/**
 * Finds the first place where a text is not JSON. For texts that a JSON reader has refused: its own message does not
 * always tell the place.
 */
export function firstJsonFault(text: string): JsonPlace {
  const open: string[] = [];
  let awaited: Awaited = "value";
  let offset = 0;
  for (;;) {
    TOKEN.lastIndex = offset;
    const match = TOKEN.exec(text);
    const next: Awaited | null = match
      ? follow(awaited, match[1] ?? (match[2] === undefined ? "word" : "text"), open)
      : null;
    if (next === null) return place(text, offset);
    awaited = next;
    offset = TOKEN.lastIndex;
  }
}

/** What is awaited after a token, or null when the token is out of place. @param open brackets not yet closed */
function follow(awaited: Awaited, token: string, open: string[]): Awaited | null {
  const closed = (): Awaited => {
    open.pop();
    return open.length === 0 ? "end" : "next";
  };
  if (awaited === ":") return token === ":" ? "value" : null;
  if (awaited === "next") {
    const inObject = open.at(-1) === "{";
    if (token === ",") return inObject ? "name" : "value";
    return token === (inObject ? "}" : "]") ? closed() : null;
  }
  if (awaited === "name" || awaited === "name or }") {
    if (token === "text") return ":";
    return token === "}" && awaited === "name or }" ? closed() : null;
  }
  if (awaited === "end") return null;
  if (token === "]" && awaited === "value or ]") return closed();
  if (token === "{" || token === "[") {
    open.push(token);
    return token === "{" ? "name or }" : "value or ]";
  }
  if (token !== "text" && token !== "word") return null;
  return open.length === 0 ? "end" : "next";
}

function place(text: string, from: number): JsonPlace {
  const blanks = /^[\t\n\r ]*/.exec(text.slice(from))?.[0].length ?? 0;
  const offset = from + blanks;
  const before = text.slice(0, offset);
  const line = before.split("\n").length;
  const rest = text.slice(offset, offset + 20).split(/[\n\r]/)[0] ?? "";
  return {
    line,
    column: offset - before.lastIndexOf("\n"),
    found: rest === "" ? "the end of the file" : rest,
  };
}
