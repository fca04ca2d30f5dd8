import type { Token } from "../../../renderer/ui/WorkingLines.tsx";

/** What a number that was written down may have been. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Units in SI: factors as in NIST SP 811, from memory; ours are pure numbers here. */
const UNITS: Readonly<Record<string, number>> = {
  "kWh/100 km": 3.6e6 / 1e5,
  "L/100 km": 1e-3 / 1e5,
  "rad/s²": 1,
  "rev/min": Math.PI / 30,
  "kg·m²": 1,
  "MJ/kg": 1e6,
  "m²/s²": 1,
  "rad/s": 1,
  "m/s²": 1,
  "kg/L": 1000,
  "km/h": 1 / 3.6,
  "g/km": 1e-6,
  A·s: 1,
  N·m: 1,
  "m/s": 1,
  mph: 0.44704,
  mi: 1609.344,
  kW: 1000,
  kJ: 1000,
  km: 1000,
  kg: 1,
  W: 1,
  J: 1,
  N: 1,
  V: 1,
  A: 1,
  Ω: 1,
  m: 1,
  s: 1,
  "%": 0.01,
};
const NAMES = Object.keys(UNITS).sort((a, b) => b.length - a.length);
const POWERS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

type Piece =
  | { readonly kind: "number"; readonly span: Span }
  | { readonly kind: "sign"; readonly text: string };

interface Read {
  readonly pieces: readonly Piece[];
  readonly units: boolean;
}

function readNumber(text: string, constant: boolean): { span: Span; length: number } | null {
  const match = /^\d[\d\u202f]*(\.\d+)?/.exec(text);
  if (!match) return null;
  const plain = match[0].replaceAll("\u202f", "");
  let value = Number(plain);
  const last = constant
    ? 10 ** (Math.floor(Math.log10(value || 1)) - 3)
    : 10 ** -((match[1]?.length ?? 1) - 1);
  let half = 0.5 * last;
  let { length } = match[0];
  const raised = /^ × 10(⁻?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/.exec(text.slice(length));
  if (raised) {
    const digits = [...(raised[2] ?? "")].map((c) => POWERS.indexOf(c)).join("");
    const factor = 10 ** (Number(digits) * (raised[1] ? -1 : 1));
    value *= factor;
    half *= factor;
    length += raised[0].length;
  }
  return { span: { low: value - half, high: value + half }, length };
}

/** Reads texts into numbers and signs; a unit is a factor of what stands before it. */
function read(tokens: readonly Token[]): Read {
  const pieces: Piece[] = [];
  let units = false;
  for (const { text, constant = false } of tokens) {
    let rest = text;
    while (rest.length > 0) {
      const number = readNumber(rest, constant);
      const unit = NAMES.find(
        (name) => rest.startsWith(` ${name}`) && !/^[\p{L}]/u.test(rest.slice(name.length + 1)),
      );
      if (number) {
        pieces.push({ kind: "number", span: number.span });
        rest = rest.slice(number.length);
      } else if (unit) {
        const factor = UNITS[unit] ?? Number.NaN;
        pieces.push({ kind: "sign", text: "·" }, { kind: "number", span: { low: factor, high: factor } });
        units = true;
        rest = rest.slice(unit.length + 1);
      } else if (/^[\s]/.test(rest)) rest = rest.slice(1);
      else if (/^[+−×/()√²³]/.test(rest)) {
        pieces.push({ kind: "sign", text: rest.slice(0, 1) });
        rest = rest.slice(1);
      } else throw new Error(`cannot read "${rest}" of "${tokens.map((t) => t.text).join("")}"`);
    }
  }
  return { pieces, units };
}

const span = (...ends: readonly number[]): Span => ({ low: Math.min(...ends), high: Math.max(...ends) });
const times = (a: Span, b: Span): Span =>
  span(a.low * b.low, a.low * b.high, a.high * b.low, a.high * b.high);
function over(a: Span, b: Span): Span {
  if (b.low <= 0 && b.high >= 0) return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  return times(a, span(1 / b.low, 1 / b.high));
}

/** Interval arithmetic over + − × / √ ² ³ and brackets, as one reads it. */
class Reader {
  private place = 0;
  constructor(private readonly pieces: readonly Piece[]) {}

  private sign(...texts: readonly string[]): string | null {
    const piece = this.pieces[this.place];
    if (piece?.kind !== "sign" || !texts.includes(piece.text)) return null;
    this.place += 1;
    return piece.text;
  }

  all(): Span {
    const value = this.sum();
    if (this.place < this.pieces.length) throw new Error(`unread after ${this.place}`);
    return value;
  }

  private sum(): Span {
    let value = this.sign("−") ? times(this.product(), { low: -1, high: -1 }) : this.product();
    for (let joint = this.sign("+", "−"); joint; joint = this.sign("+", "−")) {
      const next = this.product();
      value =
        joint === "+"
          ? { low: value.low + next.low, high: value.high + next.high }
          : { low: value.low - next.high, high: value.high - next.low };
    }
    return value;
  }

  private product(): Span {
    let value = this.power();
    for (let joint = this.sign("×", "/"); joint; joint = this.sign("×", "/")) {
      value = joint === "×" ? times(value, this.power()) : over(value, this.power());
    }
    return value;
  }

  private power(): Span {
    let value = this.one();
    for (let joint = this.sign("·", "²", "³"); joint; joint = this.sign("·", "²", "³")) {
      if (joint === "·") value = times(value, this.one());
      else if (joint === "²") value = times(value, value);
      else value = times(times(value, value), value);
    }
    return value;
  }

  private one(): Span {
    if (this.sign("−")) return times(this.one(), { low: -1, high: -1 });
    if (this.sign("√")) {
      const inner = this.one();
      return { low: Math.sqrt(Math.max(0, inner.low)), high: Math.sqrt(inner.high) };
    }
    if (this.sign("(")) {
      const inner = this.sum();
      if (!this.sign(")")) throw new Error("a bracket stays open");
      return inner;
    }
    const piece = this.pieces[this.place];
    if (piece?.kind !== "number") throw new Error(`no number at ${this.place}`);
    this.place += 1;
    return piece.span;
  }
}

/** What a line of numbers may come to, given how each was rounded; in SI if it has units. */
export function evaluate(tokens: readonly Token[]): Span & { readonly units: boolean } {
  const { pieces, units } = read(tokens);
  return { ...new Reader(pieces).all(), units };
}

/** What a result may have been; its unit counts only when the line that leads to it has units. */
export function resultSpan(token: Token, units: boolean): Span {
  const { pieces } = read([token]);
  return new Reader(
    units
      ? pieces
      : pieces.filter(
          (_, i) =>
            i < pieces.findIndex((p) => p.kind === "sign" && p.text === "·") ||
            pieces.every((p) => p.kind !== "sign" || p.text !== "·"),
        ),
  ).all();
}
