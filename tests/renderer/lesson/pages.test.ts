import { describe, expect, it } from "vitest";
import { splitPageRules, withoutStyles } from "../../../renderer/lesson/paper.ts";
import { lessonById } from "../../../sim/lesson/built-in/registry.ts";
import { handout } from "../../../sim/lesson/handout/handout.ts";
import { runs } from "../../sim/lesson/works.ts";

const made = handout(lessonById("torque-split"), {
  seed: 1,
  students: ['Ada style="x" Lindqvist', "</style><b>Ben"],
  runs,
});

describe("a printed page shown inside the app", () => {
  for (const [name, page] of Object.entries({ sheets: made.sheets, key: made.key })) {
    it(`${name}: all of its style is taken out, and nothing else`, () => {
      const { css, bare } = withoutStyles(page);
      expect(css).toContain("@page");
      expect(bare).not.toMatch(/<style|[^-]style="/);
      expect(bare).toContain("Lindqvist");
      // What a person typed stays text.
      expect(bare).toContain("&lt;/style&gt;&lt;b&gt;Ben");
      expect(bare).toContain("style=&quot;x&quot;");
    });
  }

  it("has its rules for pages apart, margin boxes and all", () => {
    const { css } = withoutStyles(made.sheets);
    const { pages, rules } = splitPageRules(css);
    expect(pages).toMatch(/^@page \{[\s\S]*@bottom-right[\s\S]*\}$/);
    expect(rules).not.toContain("@page");
    expect(rules).not.toContain(":root");
    expect(rules).toContain(":host { color-scheme: light;");
    const braces = (text: string) => [text.split("{").length, text.split("}").length];
    for (const part of [pages, rules]) expect(braces(part)[0]).toBe(braces(part)[1]);
  });
});
