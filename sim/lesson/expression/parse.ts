import { InputError } from "../../../shared/errors.ts";
import { REGIMES } from "../../run/regimes.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { DIMENSION } from "../units.ts";
import { type Token, tokensOf, unknownName } from "./tokens.ts";
import type { Condition, Expression, Relation } from "./tree.ts";

const RELATIONS: readonly string[] = ["<", ">", "≤", "≥", "=", "≠"];

/** Deepest nesting of brackets. */
const DEEPEST = 40;

const refuse = (what: string, value: string, accepted: string): never => {
  throw new InputError({ what, where: "", value, accepted });
};

/** Reads tokens one after the other. */
class Reader {
  private place = 0;
  private depth = 0;

  constructor(
    private readonly tokens: readonly Token[],
    private readonly source: string,
  ) {}

  private get next(): Token | undefined {
    return this.tokens[this.place];
  }

  get done(): boolean {
    return this.place >= this.tokens.length;
  }

  private takes(kind: Token["kind"], ...texts: string[]): Token | null {
    const token = this.next;
    if (token?.kind !== kind || !texts.includes(token.text)) return null;
    this.place += 1;
    return token;
  }

  /** @throws InputError when something is left over */
  end(): void {
    if (!this.done) refuse("the expression should end here", this.next?.text ?? "", "one expression");
  }

  condition(): Condition {
    const all = [this.simple()];
    while (this.takes("word", "and")) all.push(this.simple());
    const [first] = all;
    return all.length === 1 && first ? first : { kind: "and", all };
  }

  private simple(): Condition {
    if (this.takes("word", "always")) return { kind: "always" };
    if (this.takes("word", "never")) return { kind: "never" };
    if (this.takes("word", "regime")) return this.regime();
    const left = this.sum();
    const relation = this.next;
    if (relation?.kind !== "sign" || !RELATIONS.includes(relation.text)) {
      return refuse(
        "a comparison is missing",
        relation?.text ?? this.source,
        "a condition such as sun power > 0, regime is direct, always or never",
      );
    }
    this.place += 1;
    return { kind: "compare", relation: relation.text as Relation, left, right: this.sum() };
  }

  private regime(): Condition {
    const run = this.run();
    if (!this.takes("word", "is")) refuse('"is" is missing', this.next?.text ?? "", "regime is direct");
    const word = this.next?.text ?? "";
    this.place += 1;
    const known = REGIMES.map(({ id }) => id);
    if (!known.includes(word)) {
      refuse(`no regime is called this; the nearest is ${nearest(word, known)}`, word, known.join(", "));
    }
    return { kind: "regime", is: word, run };
  }

  sum(): Expression {
    let left = this.product();
    for (;;) {
      if (this.takes("sign", "+")) left = { kind: "sum", left, right: this.product() };
      else if (this.takes("sign", "-")) left = { kind: "difference", left, right: this.product() };
      else return left;
    }
  }

  private product(): Expression {
    let left = this.unary();
    for (;;) {
      if (this.takes("sign", "×")) left = { kind: "product", left, right: this.unary() };
      else if (this.takes("sign", "÷")) left = { kind: "quotient", left, right: this.unary() };
      else return left;
    }
  }

  private unary(): Expression {
    this.depth += 1;
    if (this.depth > DEEPEST) refuse("nested too deeply", this.source, `at most ${DEEPEST} levels`);
    const found: Expression = this.takes("sign", "-")
      ? { kind: "negative", of: this.unary() }
      : this.primary();
    this.depth -= 1;
    return found;
  }

  private primary(): Expression {
    if (this.takes("word", "abs")) {
      if (!this.takes("sign", "(")) refuse("a bracket is missing", this.next?.text ?? "", "abs(sun speed)");
      return { kind: "size", of: this.closed() };
    }
    if (this.takes("sign", "(")) return this.closed();
    const token = this.next;
    this.place += 1;
    if (token?.kind === "number") return numberOf(token);
    if (token?.kind === "name") return { kind: "quantity", name: token.text, run: this.run() };
    if (token?.kind === "word") throw unknownName(this.wordsFrom(this.place - 1));
    return refuse(
      "a quantity or a number is missing",
      token?.text ?? this.source,
      "a quantity such as sun torque, or a number with its unit",
    );
  }

  private closed(): Expression {
    const inner = this.sum();
    if (!this.takes("sign", ")")) refuse("a bracket is not closed", this.source, "as many ) as (");
    return inner;
  }

  private run(): string | null {
    if (!this.takes("word", "of")) return null;
    const token = this.next;
    this.place += 1;
    if (token?.kind === "word") return token.text;
    return refuse("the name of a run is missing", token?.text ?? "", 'the name: of a run block behind "of"');
  }

  private wordsFrom(place: number): string {
    const words: string[] = [];
    for (let i = place; i < this.tokens.length; i += 1) {
      const token = this.tokens[i];
      if (token?.kind !== "word" && token?.kind !== "name") break;
      words.push(token.text);
    }
    return words.join(" ");
  }
}

const numberOf = (token: Token & { kind: "number" }): Expression => ({
  kind: "number",
  value: token.unit ? token.unit.toSi(token.value) : token.value,
  written: token.text,
  dimension: DIMENSION[token.unit?.measure ?? "number"],
});

/**
 * Reads an expression such as `ring torque × 2` or `fuel balanced of a - fuel balanced of b`.
 * @throws InputError without a place: the caller knows the line
 */
export function parseExpression(source: string): Expression {
  const reader = new Reader(tokensOf(source), source);
  const found = reader.sum();
  reader.end();
  return found;
}

/**
 * Reads a condition such as `sun power > 0 and regime is direct`.
 * @throws InputError without a place
 */
export function parseCondition(source: string): Condition {
  const reader = new Reader(tokensOf(source), source);
  const found = reader.condition();
  reader.end();
  return found;
}
