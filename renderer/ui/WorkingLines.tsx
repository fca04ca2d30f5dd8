import type { Shaft } from "../../sim/bench/shafts.ts";

/** Whose colour a piece of a formula has. */
export type WorkingInk = Shaft | "battery" | "fuel" | "loss";

/** A piece of a formula: a symbol, a live number in its owner's colour, or plain text. */
export interface Token {
  readonly text: string;
  readonly ink?: WorkingInk;
  /** subscript of a symbol */
  readonly sub?: string;
  /** a constant written to four figures, needless zeros left out */
  readonly constant?: true;
}

/** A working: formula in symbols, with live numbers, result, and where constants come from. */
export interface WorkingText {
  readonly title: string;
  /** symbol before the equals signs */
  readonly left: Token;
  readonly formula: readonly Token[];
  readonly live: readonly Token[];
  readonly result: Token;
  readonly note: string;
}

const STARTS_WITH_NUMBER = /^[(−]*\d/;

const Piece = ({ token }: { token: Token }) => {
  const { text, ink, sub } = token;
  const whole = STARTS_WITH_NUMBER.test(text) ? "whole" : "";
  return (
    <span class={ink ? `ink ${ink} ${whole}` : whole}>
      {text}
      {sub && <sub>{sub}</sub>}
    </span>
  );
};

const Pieces = ({ tokens }: { tokens: readonly Token[] }) => (
  <>
    {tokens.map((token, i) => (
      <Piece key={i} token={token} />
    ))}
  </>
);

/** The three lines: in symbols, with live numbers, the result. */
export const WorkingLines = ({ shown }: { shown: WorkingText }) => (
  <div class="lines">
    <span class="formula">
      <Piece token={shown.left} />
    </span>
    <span class="formula">
      = <Pieces tokens={shown.formula} />
    </span>
    <span />
    <span>
      = <Pieces tokens={shown.live} />
    </span>
    <span />
    <span class="result">
      = <Piece token={shown.result} />
    </span>
  </div>
);
