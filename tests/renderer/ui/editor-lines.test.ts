import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineAt, lineCount, lineSpan, marksByLine } from "../../../renderer/ui/editor-lines.ts";

const texts = fc.string({ unit: fc.constantFrom("a", "\n", " "), maxLength: 60 });

describe("lines of an editor", () => {
  it("are as many as a text has, split at line feeds", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const lines = text.split("\n");
        expect(lineCount(text)).toBe(lines.length);
        lines.forEach((line, i) => {
          const { start, end } = lineSpan(text, i + 1);
          expect(text.slice(start, end)).toBe(line);
          expect(lineAt(text, start)).toBe(i + 1);
          expect(lineAt(text, end)).toBe(i + 1);
        });
      }),
    );
  });

  it("end at the last one, whatever is asked for", () => {
    expect(lineSpan("a\nbc", 99)).toEqual({ start: 2, end: 4 });
    expect(lineSpan("a\nbc", -3)).toEqual({ start: 0, end: 1 });
  });

  it("gather their marks", () => {
    const marks = [
      { line: 2, text: "one" },
      { line: 2, text: "two" },
      { line: 9, text: "far" },
    ];
    expect([...marksByLine(marks, 3)]).toEqual([
      [2, "one two"],
      [3, "far"],
    ]);
  });
});
