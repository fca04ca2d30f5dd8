import { describe, expect, it } from "vitest";
import { FIELDS, NAMES, QUANTITY_LIST, stagesOf } from "../../../renderer/lesson/reference.ts";
import { lessonSnippets } from "../../../renderer/texts/lesson-snippets-en.ts";
import { BLOCKS, readLessonText } from "../../../sim/lesson/read.ts";
import { workLessonText } from "../../../sim/lesson/work.ts";
import { runs } from "../../sim/lesson/works.ts";

const { fresh, freshTitle, lesson, ...blocks } = lessonSnippets;

/** What is wrong with a lesson, read and worked. */
function faultsOf(text: string): readonly string[] {
  const { lesson: read, faults } = readLessonText(text, "t");
  if (faults.length > 0) return faults.map(({ line, what }) => `${line}: ${what}`);
  return workLessonText(read, "t", runs).faults.map(({ line, what }) => `${line}: ${what}`);
}

const STAGE = `# T\n\n## One\n\n${lessonSnippets.bench}\n`;

describe("blocks that an author inserts", () => {
  for (const [name, text] of Object.entries(blocks)) {
    it(`${name}: reads and works without a fault below a step with a bench`, () => {
      expect(faultsOf(`${STAGE}${text}`)).toEqual([]);
    });
  }

  it("lesson: reads without a fault at the top", () => {
    expect(faultsOf(`# T\n\n${lesson}\n## One\n\n${lessonSnippets.bench}`)).toEqual([]);
  });

  it("make a new lesson that works as it is", () => {
    const { lesson: read } = readLessonText(`# ${freshTitle}\n\n${fresh}`, "t");
    expect(faultsOf(`# ${freshTitle}\n\n${fresh}`)).toEqual([]);
    expect(read.steps).toHaveLength(1);
    expect(read.steps[0]?.asks).toHaveLength(1);
  });
});

describe("the reference for authors", () => {
  it("has every block, and the reader takes every field that it names", () => {
    expect(Object.keys(FIELDS).sort()).toEqual([...BLOCKS].sort());
    for (const block of BLOCKS) {
      for (const { name } of FIELDS[block]) {
        const text = `# T\n\n${block === "lesson" ? "" : "## One\n\n"}\`\`\`${block}\n${name}: x\n\`\`\`\n`;
        const unknown = readLessonText(text, "t").faults.filter(({ what }) =>
          what.includes(`has no "${name}"`),
        );
        expect(unknown, `${block}: ${name}`).toEqual([]);
      }
    }
  });

  it("tells of every quantity where it stands", () => {
    for (const quantity of QUANTITY_LIST) expect(stagesOf(quantity).length, quantity.name).toBeGreaterThan(0);
    for (const list of Object.values(NAMES)) expect(list.length).toBeGreaterThan(3);
  });
});
