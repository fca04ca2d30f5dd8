import { InputError } from "./errors.ts";

/**
 * Parses JSON; where it is broken, the error names line, column, what stands there and what was expected. The runtimes'
 * own messages differ and often have no place.
 * @param where the file's name
 * @throws InputError
 */
export function parseJson(text: string, where: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    const broken = firstBreak(text);
    // The runtime refused what the walk below accepts: never seen, told without a place rather than wrongly.
    if (!broken) throw new InputError({ what: String(error), where, value: "", accepted: "JSON" });
    throw new InputError({
      what: broken.at >= text.length ? "The file ends too early." : "The file is not JSON.",
      where: `${where}, ${placeText(text, broken.at)}`,
      value: found(text, broken.at),
      accepted: broken.expected,
    });
  }
}

/** What may come next. */
type Wanted = "value" | "first entry" | "first key" | "key" | "colon" | "comma" | "end";

const EXPECTED: Readonly<Record<Wanted, string>> = {
  value: "a value",
  "first entry": "a value or ]",
  "first key": "a field's name in quotation marks or }",
  key: "a field's name in quotation marks",
  colon: "a colon",
  comma: "a comma or the closing bracket",
  end: "nothing more",
};

const SPACE = /[ \t\r\n]*/y;
/** Between the quotation marks: anything from the blank on but quotation mark and backslash, or an escape. */
const STRING = /"[ !#-[\]-\u{10FFFF}]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[ !#-[\]-\u{10FFFF}]*)*"/uy;
const SCALAR = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?/y;

/** Walks through the text with a list of open brackets, so that no depth can exhaust the stack. */
class Walk {
  readonly open: ("[" | "{")[] = [];
  wanted: Wanted = "value";
  at = 0;

  constructor(readonly text: string) {}

  /** Goes past what matches here. @returns false, and stays, when nothing does */
  skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    if (!pattern.test(this.text)) return false;
    this.at = pattern.lastIndex;
    return true;
  }

  /** One token. @returns false when it is not what is wanted */
  step(): boolean {
    const sign = this.text[this.at];
    if (this.wanted === "colon") return this.sign(sign === ":", "value");
    if (this.wanted === "comma") return this.separator(sign);
    if (this.wanted === "first key" && sign === "}") return this.close();
    if (this.wanted === "first entry" && sign === "]") return this.close();
    if (this.wanted === "key" || this.wanted === "first key") return this.skip(STRING) && this.want("colon");
    return this.wanted !== "end" && this.value(sign);
  }

  private value(sign: string | undefined): boolean {
    if (sign !== "{" && sign !== "[") return this.skip(sign === '"' ? STRING : SCALAR) && this.afterValue();
    this.open.push(sign);
    return this.sign(true, sign === "{" ? "first key" : "first entry");
  }

  private separator(sign: string | undefined): boolean {
    const inside = this.open.at(-1);
    if (sign === (inside === "{" ? "}" : "]")) return this.close();
    return this.sign(sign === ",", inside === "{" ? "key" : "value");
  }

  private close(): boolean {
    this.open.pop();
    this.at += 1;
    return this.afterValue();
  }

  private afterValue(): boolean {
    return this.want(this.open.length === 0 ? "end" : "comma");
  }

  private sign(right: boolean, next: Wanted): boolean {
    if (!right) return false;
    this.at += 1;
    return this.want(next);
  }

  private want(next: Wanted): boolean {
    this.wanted = next;
    return true;
  }
}

/** First place where the text stops being JSON, and what could have stood there; null when all of it is. */
function firstBreak(text: string): { at: number; expected: string } | null {
  const walk = new Walk(text);
  for (;;) {
    walk.skip(SPACE);
    if (walk.wanted === "end" && walk.at >= text.length) return null;
    if (!walk.step()) return { at: walk.at, expected: EXPECTED[walk.wanted] };
  }
}

function placeText(text: string, at: number): string {
  const before = text.slice(0, at);
  const lines = before.split(/\r\n|\r|\n/);
  const last = lines.at(-1) ?? "";
  return `line ${lines.length}, column ${last.length + 1}`;
}

/** The word, string or sign at a place, shortened. */
function found(text: string, at: number): string {
  const word = /^(?:"[^\r\n]{0,20}|[\w.+-]{1,20}|.)/u.exec(text.slice(at, at + 24));
  return word ? word[0] : "";
}
