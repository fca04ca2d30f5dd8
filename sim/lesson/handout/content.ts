import { html, type Markup } from "../../../shared/html.ts";
import type { Shaft } from "../../bench/shafts.ts";
import type { Block, Inline, LessonPart } from "../lesson.ts";

/** Whose colour a part takes; null for parts of no shaft. */
const SHAFT_OF_PART: Readonly<Partial<Record<LessonPart, Shaft>>> = {
  sun: "sun",
  "sun-machine": "sun",
  carrier: "carrier",
  engine: "carrier",
  ring: "ring",
  "output-machine": "ring",
};

function inlineOne(node: Inline): Markup {
  switch (node.kind) {
    case "text":
      return html`${node.text}`;
    case "code":
      return html`<code>${node.text}</code>`;
    case "break":
      return html`<br>`;
    case "strong":
      return html`<strong>${inlineMarkup(node.children)}</strong>`;
    case "emphasis":
      return html`<em>${inlineMarkup(node.children)}</em>`;
    case "part":
      return html`<b class="${SHAFT_OF_PART[node.part] ?? "part"}">${inlineMarkup(node.children)}</b>`;
    case "view":
      return html`<span class="tag">${inlineMarkup(node.children)}</span>`;
    case "value":
      return html`<b>${node.text}</b>`;
  }
}

/** Running text as markup. */
export const inlineMarkup = (inlines: readonly Inline[]): readonly Markup[] => inlines.map(inlineOne);

/** Makes the frame of a question from its name; null for none. */
export type QuestionMarkup = (name: string) => Markup | null;

function listMarkup(block: Block & { kind: "list" }, question: QuestionMarkup): Markup {
  const items = block.items.map((item) => html`<li>${blockMarkup(item, question)}</li>`);
  return block.ordered ? html`<ol>${items}</ol>\n` : html`<ul>${items}</ul>\n`;
}

function blockOne(block: Block, question: QuestionMarkup): Markup | null {
  switch (block.kind) {
    case "paragraph":
      return html`<p>${inlineMarkup(block.children)}</p>\n`;
    case "heading":
      return html`<h3>${inlineMarkup(block.children)}</h3>\n`;
    case "quote":
      return html`<blockquote>${blockMarkup(block.children, question)}</blockquote>\n`;
    case "list":
      return listMarkup(block, question);
    case "code":
      return html`<pre><code>${block.text}</code></pre>\n`;
    case "rule":
      return html`<hr>\n`;
    case "question":
      return question(block.name);
  }
}

/** Blocks as markup. */
export const blockMarkup = (blocks: readonly Block[], question: QuestionMarkup): readonly (Markup | null)[] =>
  blocks.map((block) => blockOne(block, question));
