import { InputError } from "../../../shared/errors.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { QUANTITIES } from "../quantities/registry.ts";
import { LESSON_UNITS, type LessonUnit } from "../units.ts";

/** A word, number or sign of an expression. */
export type Token =
  | { readonly kind: "sign"; readonly text: string }
  | { readonly kind: "word"; readonly text: string }
  | { readonly kind: "name"; readonly text: string }
  | {
      readonly kind: "number";
      readonly text: string;
      readonly value: number;
      readonly unit: LessonUnit | null;
    };

/** Words that are no quantities. */
const WORDS = ["always", "never", "and", "is", "of", "abs", "regime"] as const;

const SAME: Readonly<Record<string, string>> = {
  "−": "-",
  "*": "×",
  "·": "×",
  "/": "÷",
  "<=": "≤",
  ">=": "≥",
  "!=": "≠",
};

const NAMES = QUANTITIES.map(({ name }) => name).sort((a, b) => b.length - a.length);
const UNIT_IDS = LESSON_UNITS.map(({ id }) => id)
  .filter((id) => id !== "")
  .sort((a, b) => b.length - a.length);

/** True where a word ends: no letter, digit or hyphen with a letter follows. */
const endsWord = (text: string, at: number): boolean => !/^(?:[a-z0-9]|-[a-z])/i.test(text.slice(at));

const NUMBER = /^(?:\d+\.?\d*|\.\d+)/;

interface Step {
  readonly token: Token;
  readonly length: number;
}

function numberStep(rest: string): Step | null {
  const digits = NUMBER.exec(rest)?.[0];
  if (digits === undefined) return null;
  const blanks = /^\s*/.exec(rest.slice(digits.length))?.[0].length ?? 0;
  const behind = rest.slice(digits.length + blanks);
  const unit = UNIT_IDS.find((id) => behind.startsWith(id) && endsWord(behind, id.length));
  const length = unit === undefined ? digits.length : digits.length + blanks + unit.length;
  const found = LESSON_UNITS.find(({ id }) => id === unit) ?? null;
  const text = rest.slice(0, length);
  return { token: { kind: "number", text, value: Number(digits), unit: found }, length };
}

function wordStep(rest: string): Step | null {
  const name = NAMES.find((one) => rest.toLowerCase().startsWith(one) && endsWord(rest, one.length));
  if (name !== undefined) return { token: { kind: "name", text: name }, length: name.length };
  const word = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*/i.exec(rest)?.[0];
  if (word === undefined) return null;
  const known = WORDS.find((one) => one === word.toLowerCase());
  return { token: { kind: "word", text: known ?? word }, length: word.length };
}

function signStep(rest: string): Step | null {
  const sign = /^(?:<=|>=|!=|[-−+*·×/÷()<>=≤≥≠])/.exec(rest)?.[0];
  return sign === undefined
    ? null
    : { token: { kind: "sign", text: SAME[sign] ?? sign }, length: sign.length };
}

/**
 * Takes an expression apart.
 * @throws InputError at a sign that means nothing here
 */
export function tokensOf(source: string): readonly Token[] {
  const tokens: Token[] = [];
  for (let i = 0; i < source.length; ) {
    const rest = source.slice(i);
    const blank = /^\s+/.exec(rest)?.[0].length ?? 0;
    if (blank > 0) {
      i += blank;
      continue;
    }
    const step = numberStep(rest) ?? signStep(rest) ?? wordStep(rest);
    if (!step) {
      throw new InputError({
        what: "this sign means nothing here",
        where: "",
        value: rest.slice(0, 12),
        accepted: "quantities, numbers with units, + − × / ( ) and < > = ≤ ≥ ≠",
      });
    }
    tokens.push(step.token);
    i += step.length;
  }
  return tokens;
}

/** The error for words that are no quantity. */
export function unknownName(words: string): InputError {
  const near = nearest(words, NAMES);
  return new InputError({
    what: `no quantity is called this; the nearest is "${near}"`,
    where: "",
    value: words,
    accepted: "a quantity, such as sun speed, ring torque or fuel balanced",
  });
}
