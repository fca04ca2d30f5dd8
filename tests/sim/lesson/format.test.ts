import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../shared/errors.ts";
import { readLesson, readLessonText } from "../../../sim/lesson/read.ts";
import { workLessonText } from "../../../sim/lesson/work.ts";
import { fence, lessonText } from "./works.ts";

const BENCH = fence("bench", "carrier: 2000 rev/min", "ring: 1000 rev/min", "engine torque: 50 N·m");

/** Faults of a text, each as "line: what". */
const faultsOf = (text: string): string[] =>
  readLessonText(text, "test").faults.map(({ line, what }) => `${line}: ${what}`);

describe("the lesson format", () => {
  it("reads title, head, steps, blocks and texts", () => {
    const text = lessonText(
      fence("lesson", "id: mine", "minutes: 5", "about: One sentence."),
      "Before *all*.",
      `## First\n\n${BENCH}\n\nThe [sun](part:sun) in [B](view:B) turns at {sun speed}, or {sun speed in rad/s}.`,
      fence("point", "view: B", "quantity: sun speed", "say: Here."),
      fence(
        "ask",
        "name: a",
        "question: How *fast*?",
        "key: ring speed × 2",
        "unit: rev/min",
        "tolerance: 5 rev/min",
      ),
      `### Part\n\n1. one\n2. two\n\n> quoted\n\n---\n\n    code`,
    );
    const lesson = readLesson(text, "test");
    expect(lesson).toMatchObject({ id: "mine", title: "Test", minutes: 5, about: "One sentence." });
    expect(lesson.intro).toHaveLength(1);
    const [step] = lesson.steps;
    expect(step?.body.map(({ kind }) => kind)).toEqual([
      "paragraph",
      "question",
      "heading",
      "list",
      "quote",
      "rule",
      "code",
    ]);
    expect(step?.points[0]).toMatchObject({ view: "B", quantity: "sun speed", say: "Here." });
    const { worked, faults } = workLessonText(lesson, "test");
    expect(faults).toEqual([]);
    const [paragraph] = worked.steps[0]?.body ?? [];
    // 3.5 × 2000 − 2.5 × 1000 = 4500 rev/min = 471.2 rad/s.
    expect(JSON.stringify(paragraph)).toContain("4\u202f500\u00a0rev/min");
    expect(JSON.stringify(paragraph)).toContain("471.2\u00a0rad/s");
    expect(worked.steps[0]?.asks[0]).toMatchObject({ keyText: "2\u202f000\u00a0rev/min" });
  });

  it("is what the README says: its example reads, works and needs no mending", () => {
    const readme = readFileSync(join(import.meta.dirname, "..", "..", "..", "README.md"), "utf8");
    const example = /\n````\n([\s\S]*?)\n````\n/.exec(readme)?.[1] ?? "";
    const lesson = readLesson(example, "README");
    const { worked, faults } = workLessonText(lesson, "README");
    expect(faults).toEqual([]);
    // −100/3.5.
    expect(worked.steps[0]?.asks[0]).toMatchObject({ keyText: "−28.6\u00a0N·m" });
    const section = readme.slice(readme.indexOf("## Writing a lesson"), readme.indexOf("## What is in it"));
    const names = [...section.matchAll(/`\{([^}]+)\}`/g)].map(([, source]) => source ?? "");
    expect(names).toHaveLength(4);
  });

  it("is plain data after reading and after working", () => {
    const lesson = readLesson(lessonText(`## A\n\n${BENCH}`), "test");
    expect(structuredClone(lesson)).toEqual(lesson);
    const { worked } = workLessonText(lesson, "test");
    expect(JSON.parse(JSON.stringify(worked))).toEqual(worked);
  });

  const cases: readonly (readonly [name: string, text: string, expected: readonly RegExp[]])[] = [
    ["an empty text", "", [/^1: there is no title/, /^1: there are no steps/]],
    ["a block before the steps", `# T\n\n${BENCH}\n\n## A\n`, [/^3: the bench block stands before/]],
    ["an unknown block", "# T\n\n## A\n\n```bnch\n```\n", [/^5: no fenced block is called this/]],
    [
      "HTML",
      "# T\n\n## A\n\nhello <b>you</b>\n\n<script>x</script>\n",
      [/^5: .*HTML/, /^5: .*HTML/, /^7: .*HTML/],
    ],
    ["a link outside", "# T\n\n## A\n\n[x](https://example.org)\n", [/^5: a link leads to a part or a view/]],
    ["a script link", "# T\n\n## A\n\n[x](javascript:alert(1))\n", [/^5: a link leads/]],
    ["a picture", "# T\n\n## A\n\n![x](a.png)\n", [/^5: .*no pictures/]],
    [
      "an unknown line",
      "# T\n\n## A\n\n```bench\ncarrier: 1 rev/min\nring: 2\nengin torque: 3\n```\n",
      [/^8: the bench block has no "engin torque"; the nearest is "engine torque"/],
    ],
    ["one shaft only", "# T\n\n## A\n\n```bench\nsun: 5\n```\n", [/^5: fewer than two shafts/]],
    ["all three shafts", "# T\n\n## A\n\n```bench\nsun: 5\ncarrier: 1\nring: 1\n```\n", [/^5: three shafts/]],
    [
      "a wrong unit",
      "# T\n\n## A\n\n```bench\nsun: 5 kW\nring: 1\n```\n",
      [/^6: this unit measures something else/],
    ],
    ["a bad range", "# T\n\n## A\n\n```bench\nsun: 5 (9 to 1 by 1)\nring: 1\n```\n", [/^6: not a range/]],
    [
      "a number outside its range",
      "# T\n\n## A\n\n```bench\nsun: 5 (10 to 20 by 1)\nring: 1\n```\n",
      [/^6: the number lies outside/],
    ],
    [
      "an unknown situation",
      "# T\n\n## A\n\n```bench\nsituation: engine-strat\n```\n",
      [/^6: .*nearest is engine-start/, /^5: fewer/],
    ],
    [
      "a gear set that does not mesh",
      "# T\n\n## A\n\n```bench\nsituation: one-to-one\ngear set: 40/30/101\n```\n",
      [/^7: gearSet.*ring/, /^7: gearSet.planets/],
    ],
    ["an unknown cycle", "# T\n\n## A\n\n```run\ncycle: uds\n```\n", [/^6: /]],
    [
      "an unknown strategy",
      "# T\n\n## A\n\n```run\ncycle: udds\nstrategy: magic\n```\n",
      [/^7: .*unknown strategy/],
    ],
    [
      "a charge out of range",
      "# T\n\n## A\n\n```run\ncycle: udds\ncharge: 120 %\n```\n",
      [/^7: out of range/],
    ],
    ["a point at nothing", "# T\n\n## A\n\n```point\nsay: x\n```\n", [/^5: .*points at nothing/]],
    ["a value without a stage", "# T\n\n## A\n\nNow {sun speed}.\n", [/^5: nothing stands on the stage/]],
    [
      "an unknown quantity",
      `# T\n\n## A\n\n${BENCH}\n\nNow {sun sped}.\n`,
      [/^11: .*nearest is "sun speed"/],
    ],
    [
      "a run's quantity on the bench",
      `# T\n\n## A\n\n${BENCH}\n\nNow {engine starts}.\n`,
      [/^11: this is no quantity of the bench/],
    ],
    [
      "an instant's quantity of a whole run",
      "# T\n\n## A\n\n```run\ncycle: launch\n```\n\nNow {sun speed}.\n",
      [/^9: this belongs to an instant/],
    ],
    [
      "an unknown run",
      `# T\n\n## A\n\n${BENCH}\n\nNow {fuel raw of other}.\n`,
      [/^11: no run is called this/],
    ],
    [
      "a question without a key",
      `# T\n\n## A\n\n${BENCH}\n\n\`\`\`ask\nname: a\nquestion: b\n\`\`\`\n`,
      [/^11: the ask block has no key/],
    ],
    [
      "a unit that does not fit",
      `# T\n\n## A\n\n${BENCH}\n\n\`\`\`ask\nname: a\nquestion: b\nkey: sun speed\nunit: kW\n\`\`\`\n`,
      [/^15: this unit does not fit/],
    ],
    [
      "apples and pears",
      `# T\n\n## A\n\n${BENCH}\n\n\`\`\`ask\nname: a\nquestion: b\nkey: sun speed + sun torque\n\`\`\`\n`,
      [/^14: .*measure different things/],
    ],
    [
      "a name twice",
      `# T\n\n## A\n\n${BENCH}\n\n${fence("ask", "name: a", "question: b", "key: sun speed")}\n\n${fence("ask", "name: a", "question: b", "key: sun speed")}\n`,
      [/^17: a second question of this name/],
    ],
    [
      "a single choice",
      `# T\n\n## A\n\n${BENCH}\n\n${fence("ask", "name: a", "question: b", "choice: c | always")}\n`,
      [/^11: a single choice/],
    ],
    [
      "a choice without a condition",
      `# T\n\n## A\n\n${BENCH}\n\n${fence("ask", "name: a", "question: b", "choice: c", "choice: d | never")}\n`,
      [/^14: a choice has no condition/],
    ],
  ];

  it.each(cases)("tells the line of %s", (_, text, expected) => {
    const found = faultsOf(text).sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10));
    const left = [...found];
    for (const pattern of expected) {
      const place = left.findIndex((fault) => pattern.test(fault));
      expect(place, `${pattern} in ${found.join(" | ")}`).toBeGreaterThanOrEqual(0);
      left.splice(place, 1);
    }
    expect(left).toEqual([]);
    expect(() => readLesson(text, "test")).toThrow(InputError);
  });

  it("tells at its line what cannot be computed", () => {
    const faults = (steps: string): string[] =>
      workLessonText(readLesson(lessonText(steps), "test"), "test").faults.map(
        ({ line, what }) => `${line}: ${what}`,
      );
    expect(faults(`## A\n\n${fence("bench", "carrier: 4000", "ring: 0")}`)).toEqual([
      expect.stringMatching(/^5: the sun would turn beyond its limit/),
    ]);
    expect(faults(`## A\n\n${fence("bench", "carrier: 2000", "ring: 0", "engine torque: 300")}`)).toEqual([
      expect.stringMatching(/^5: the engine cannot give this torque/),
    ]);
    const two = fence("ask", "name: a", "question: b", "choice: c | always", "choice: d | sun speed > 0");
    expect(faults(`## A\n\n${BENCH}\n\n${two}`)).toEqual([expect.stringMatching(/^11: 2 choices are true/)]);
    const zero = fence("ask", "name: a", "question: b", "key: sun speed", "tolerance: 2 %");
    const rest = fence("bench", "sun: 0", "carrier: 2000");
    expect(faults(`## A\n\n${rest}\n\n${zero}`)).toEqual([expect.stringMatching(/^10: the key is 0/)]);
    expect(faults(`## A\n\n${fence("run", "cycle: launch", "at: 900 s")}\n\n{sun speed}`)).toEqual([
      expect.stringMatching(/^5: the run has no such instant/),
    ]);
  });

  it("never does anything but tell faults, whatever the text", () => {
    const piece = fc.constantFrom(
      ..."# |## |\n|\n\n|```bench\n|```ask\n|```run\n|```\n|sun: |ring: |key: |{|}|sun speed|name: a|choice: | | |<b>|[x](|part:sun|)|of|2 kW|(1 to 3 by 1)|\u0000|−|∞|\\".split(
        "|",
      ),
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(piece, fc.string({ maxLength: 8 })), { maxLength: 40 }), (parts) => {
        const { faults, lesson } = readLessonText(parts.join(""), "any");
        for (const { line, accepted } of faults) {
          expect(line).toBeGreaterThanOrEqual(1);
          expect(accepted).not.toBe("");
        }
        expect(lesson.title).toBeTypeOf("string");
      }),
      { numRuns: 300 },
    );
  });
});
