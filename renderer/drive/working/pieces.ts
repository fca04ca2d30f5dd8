import { num } from "../../state/format.ts";
import type { Token, WorkingInk, WorkingText } from "../../ui/WorkingLines.tsx";

/** A working without its title. */
export type Lines = Omit<WorkingText, "title">;

/** Plain text of a formula. */
export const txt = (text: string): Token => ({ text });

/** A symbol with its subscript, in its owner's colour. */
export const sym = (text: string, sub = "", ink?: WorkingInk): Token => ({
  text,
  ...(sub ? { sub } : {}),
  ...(ink ? { ink } : {}),
});

/** A live number with its unit; a negative one behind an operator stands in brackets. */
export function val(value: number, decimals: number, unit = "", ink?: WorkingInk): Token {
  const text = `${num(value, decimals)}${unit ? ` ${unit}` : ""}`;
  return { text, ...(ink ? { ink } : {}) };
}

/** The same in brackets when it is negative, to follow an operator. */
export function after(value: number, decimals: number, unit = "", ink?: WorkingInk): Token {
  const token = val(value, decimals, unit, ink);
  return token.text.startsWith("−") ? { ...token, text: `(${token.text})` } : token;
}

/** A constant with four significant figures, without needless zeros. */
export function constant(value: number, unit = ""): Token {
  const size = Math.abs(value);
  const decimals = size === 0 ? 0 : Math.max(0, 3 - Math.floor(Math.log10(size)));
  const text = num(value, Math.min(9, decimals));
  const plain = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return { text: `${plain}${unit ? ` ${unit}` : ""}`, constant: true };
}

/** One term of a sum: its symbol, how it counts, and its value. */
export interface Term {
  readonly symbol: Token;
  readonly sign: 1 | -1;
  readonly value: number;
}

/** A sum in symbols. */
export const sumSymbols = (terms: readonly Term[]): Token[] =>
  terms.flatMap(({ symbol, sign }, i) => {
    const joint = i === 0 ? (sign < 0 ? "−" : "") : sign < 0 ? " − " : " + ";
    return joint ? [txt(joint), symbol] : [symbol];
  });

/** The same sum with numbers: signs are drawn together, so that nothing is subtracted twice. */
export const sumValues = (terms: readonly Term[], decimals: number, scale: number): Token[] =>
  terms.flatMap(({ symbol, sign, value }, i) => {
    const signed = sign * value * scale;
    const shown = num(signed, decimals);
    // What rounds to nothing keeps the sign of its term.
    const down = shown.startsWith("−") || (sign < 0 && !/[1-9]/.test(shown));
    const joint = i === 0 ? (down ? "−" : "") : down ? " − " : " + ";
    const token = { ...val(Math.abs(signed), decimals), ...(symbol.ink ? { ink: symbol.ink } : {}) };
    return joint ? [txt(joint), token] : [token];
  });

/** A power in kW as views show it: one decimal, two where there is little. */
export const kw = (watts: number): string => num(watts / 1000, Math.abs(watts) < 1000 ? 2 : 1);

/** A result in kW. */
export const kwResult = (watts: number, ink?: WorkingInk): Token => ({
  text: `${kw(watts)} kW`,
  ...(ink ? { ink } : {}),
});

/** A way to come to a number, and what it comes to. */
export interface Way {
  readonly value: number;
  readonly lines: () => Lines;
}

/**
 * The first way that comes to what the log says, within a tolerance: a formula is only shown where it holds. The last
 * way is taken as it is.
 */
export function firstThatHolds(
  truth: number,
  tolerance: number,
  ways: readonly Way[],
  last: () => Lines,
): Lines {
  const way = ways.find(({ value }) => Math.abs(value - truth) <= tolerance + 1e-5 * Math.abs(truth));
  return way ? way.lines() : last();
}
