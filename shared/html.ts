/**
 * HTML and SVG as text, safe by construction: what is put into a template is escaped unless it is markup made by a
 * template itself.
 */

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Control characters that no HTML or SVG may hold. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
const CONTROLS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** A text as it may stand in an element or between quotation marks of an attribute. */
export const escapeHtml = (text: string): string =>
  text.replace(CONTROLS, "\ufffd").replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign);

/** Markup that came out of `html`; nothing else is put into a page unescaped. */
export class Markup {
  /** @param text markup; only `html` and `joined` make it */
  constructor(readonly text: string) {}
}

/** What a template takes: texts and numbers are escaped, markup stays, lists are joined, null and false vanish. */
export type Piece = string | number | Markup | null | false | readonly Piece[];

function textOf(piece: Piece): string {
  if (piece === null || piece === false) return "";
  if (piece instanceof Markup) return piece.text;
  if (typeof piece === "string") return escapeHtml(piece);
  if (typeof piece === "number") return String(piece);
  return piece.map(textOf).join("");
}

/** Template of markup: html`<b>${typed}</b>`. Attributes must stand in quotation marks. */
export function html(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  return new Markup(parts.reduce((all, part, i) => all + textOf(pieces[i - 1] ?? null) + part));
}

/** Pieces put together, a separator of markup between them. */
export const joined = (pieces: readonly Piece[], between = ""): Markup =>
  new Markup(pieces.map(textOf).join(between));
