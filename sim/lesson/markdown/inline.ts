import type { PhrasingContent } from "mdast";
import type { LessonFaults } from "../faults.ts";
import { type Inline, LESSON_PARTS, VIEWS } from "../lesson.ts";
import { readValue } from "./value.ts";

/** Line of the file on which a node starts. @param offset lines before the text that was parsed */
export const lineOf = (
  node: { readonly position?: { readonly start: { readonly line: number } } | undefined },
  offset: number,
): number => (node.position?.start.line ?? 1) + offset;

/** A text with its values in braces taken out. */
function textPieces(text: string, line: number, faults: LessonFaults): Inline[] {
  const pieces: Inline[] = [];
  let from = 0;
  for (const match of text.matchAll(/\{([^{}]*)\}/g)) {
    const before = text.slice(0, match.index);
    const at = line + (before.match(/\n/g)?.length ?? 0);
    if (match.index > from) pieces.push(plain(text.slice(from, match.index)));
    const value = faults.trying(at, () => readValue(match[1] ?? "", at));
    if (value) pieces.push(value);
    from = match.index + match[0].length;
  }
  if (from < text.length) pieces.push(plain(text.slice(from)));
  return pieces;
}

const plain = (text: string): Inline => ({ kind: "text", text: text.replace(/\s*\n\s*/g, " ") });

const HOW = "text, *emphasis*, **strong**, `code`, [sun](part:sun), [B](view:B), {sun speed}";

/** A link names a part or a view; nothing leads out of a lesson. */
function target(url: string, children: readonly Inline[]): Inline | null {
  const [scheme, name = ""] = url.split(":");
  const part = LESSON_PARTS.find((one) => one === name);
  const view = VIEWS.find((one) => one === name);
  if (scheme === "part" && part) return { kind: "part", part, children };
  if (scheme === "view" && view) return { kind: "view", view, children };
  return null;
}

/** Running text of Markdown as our own; what a lesson may not hold is booked as a fault. */
export function readInlines(
  nodes: readonly PhrasingContent[],
  offset: number,
  faults: LessonFaults,
): readonly Inline[] {
  return nodes.flatMap((node): Inline[] => {
    const line = lineOf(node, offset);
    switch (node.type) {
      case "text":
        return textPieces(node.value, line, faults);
      case "strong":
      case "emphasis":
        return [{ kind: node.type, children: readInlines(node.children, offset, faults) }];
      case "inlineCode":
        return [{ kind: "code", text: node.value }];
      case "break":
        return [{ kind: "break" }];
      case "link": {
        const children = readInlines(node.children, offset, faults);
        const found = target(node.url, children);
        if (found) return [found];
        const accepted = `part: with ${LESSON_PARTS.join(", ")}; or view: with ${VIEWS.join(", ")}`;
        faults.add(line, "a link leads to a part or a view only", node.url, accepted);
        return [...children];
      }
      case "html":
        faults.add(line, "a lesson holds no HTML", node.value, HOW);
        return [];
      case "image":
      case "imageReference":
        faults.add(line, "a lesson holds no pictures: it shows the stage", "", HOW);
        return [];
      default:
        faults.add(line, "this kind of Markdown has no meaning in a lesson", node.type, HOW);
        return [];
    }
  });
}
