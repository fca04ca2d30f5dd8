import type { Block, Inline, Step } from "./lesson.ts";

/** A live value of a text. */
export type ValueNode = Inline & { readonly kind: "value" };

/** Changes every live value of a running text. */
export function mapInlines(
  inlines: readonly Inline[],
  change: (value: ValueNode) => Inline,
): readonly Inline[] {
  return inlines.map((node): Inline => {
    if (node.kind === "value") return change(node);
    return "children" in node ? { ...node, children: mapInlines(node.children, change) } : node;
  });
}

/** Changes every live value of blocks. */
export function mapBlocks(blocks: readonly Block[], change: (value: ValueNode) => Inline): readonly Block[] {
  return blocks.map((block): Block => {
    switch (block.kind) {
      case "paragraph":
      case "heading":
        return { ...block, children: mapInlines(block.children, change) };
      case "quote":
        return { ...block, children: mapBlocks(block.children, change) };
      case "list":
        return { ...block, items: block.items.map((item) => mapBlocks(item, change)) };
      default:
        return block;
    }
  });
}

/** Every live value of a step: its text, its questions, its choices. */
export function valuesOf(step: Step): readonly ValueNode[] {
  const found: ValueNode[] = [];
  const keep = (value: ValueNode): Inline => {
    found.push(value);
    return value;
  };
  mapBlocks(step.body, keep);
  for (const ask of step.asks) {
    mapInlines(ask.question, keep);
    if (ask.kind === "choice") for (const { text } of ask.choices) mapInlines(text, keep);
  }
  return found;
}

/** A running text without its marks. */
export const plainText = (inlines: readonly Inline[]): string =>
  inlines
    .map((node) => {
      if ("children" in node) return plainText(node.children);
      return node.kind === "break" ? " " : node.text;
    })
    .join("");
