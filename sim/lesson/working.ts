import type { Shaft } from "../bench/shafts.ts";

/** A piece of a working: plain text, a symbol, or a live number that a hint may leave blank. */
export interface WorkToken {
  readonly text: string;
  readonly kind: "text" | "symbol" | "number";
  /** subscript of a symbol */
  readonly sub?: string;
  /** whose colour it takes */
  readonly shaft?: Shaft;
}

/** How a number comes about, in three lines: symbol = formula, = with live numbers, = result. */
export interface Working {
  readonly symbol: WorkToken;
  readonly formula: readonly WorkToken[];
  readonly live: readonly WorkToken[];
  readonly result: WorkToken;
  /** where its parts come from, one sentence */
  readonly note: string;
}

/** Plain text of a working. */
export const text = (words: string): WorkToken => ({ kind: "text", text: words });

const SUBS: Readonly<Record<Shaft, string>> = { sun: "s", carrier: "c", ring: "r" };

/** A symbol of a shaft, such as ω with subscript s. */
export const ofShaft = (letter: string, shaft: Shaft): WorkToken => ({
  kind: "symbol",
  text: letter,
  sub: SUBS[shaft],
  shaft,
});

/** A symbol with a subscript of its own. */
export const symbol = (letter: string, sub = ""): WorkToken =>
  sub === "" ? { kind: "symbol", text: letter } : { kind: "symbol", text: letter, sub };

/** A live number. */
export const live = (words: string, shaft?: Shaft): WorkToken =>
  shaft === undefined ? { kind: "number", text: words } : { kind: "number", text: words, shaft };

/** A row of pieces; words become plain text. */
export const row = (...pieces: readonly (string | WorkToken)[]): readonly WorkToken[] =>
  pieces.map((piece) => (typeof piece === "string" ? text(piece) : piece));

/** Tokens as plain text, subscripts behind an underscore. */
export const plainTokens = (tokens: readonly WorkToken[]): string =>
  tokens.map((token) => (token.sub ? `${token.text}_${token.sub}` : token.text)).join("");
