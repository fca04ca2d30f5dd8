import type { BlockContent, DefinitionContent, RootContent } from "mdast";
import { fromMarkdown } from "mdast-util-from-markdown";
import type { LessonFaults } from "../faults.ts";
import type { Block, Inline } from "../lesson.ts";
import { lineOf, readInlines } from "./inline.ts";

type Content = RootContent | BlockContent | DefinitionContent;

const HOW = "paragraphs, ### headings, lists, > quotes, and fenced blocks";

/** Nodes of a lesson's text, top level. */
export const nodesOf = (source: string): readonly RootContent[] => fromMarkdown(source).children;

/**
 * Running text of a single line, such as a question.
 * @param line on which it stands
 */
export function inlineOf(source: string, line: number, faults: LessonFaults): readonly Inline[] {
  const [first, ...more] = fromMarkdown(source).children;
  if (first?.type === "paragraph" && more.length === 0) {
    return readInlines(first.children, line - 1, faults);
  }
  faults.add(line, source === "" ? "the text is empty" : "not a plain line of text", source, "one sentence");
  return [];
}

/** Blocks of Markdown as our own; what a lesson may not hold is booked as a fault. */
export function readBlocks(nodes: readonly Content[], faults: LessonFaults): readonly Block[] {
  return nodes.flatMap((node): Block[] => {
    const line = lineOf(node, 0);
    switch (node.type) {
      case "paragraph":
        return [{ kind: "paragraph", line, children: readInlines(node.children, 0, faults) }];
      case "heading":
        if (node.depth < 3) {
          faults.add(line, "this heading stands inside something", "", "# and ## at the start of a line");
        }
        return [{ kind: "heading", line, children: readInlines(node.children, 0, faults) }];
      case "blockquote":
        return [{ kind: "quote", line, children: readBlocks(node.children, faults) }];
      case "list":
        return [
          {
            kind: "list",
            line,
            ordered: node.ordered === true,
            items: node.children.map((item) => readBlocks(item.children, faults)),
          },
        ];
      case "code":
        return [{ kind: "code", line, text: node.value }];
      case "thematicBreak":
        return [{ kind: "rule", line }];
      case "html":
        faults.add(line, "a lesson holds no HTML", node.value, HOW);
        return [];
      default:
        faults.add(line, "this kind of Markdown has no meaning in a lesson", node.type, HOW);
        return [];
    }
  });
}
