import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../shared/errors.ts";
import { lessonById } from "../../../sim/lesson/built-in/registry.ts";
import { drawLesson, numbersOf, studentKey, varies } from "../../../sim/lesson/draw.ts";
import { handout } from "../../../sim/lesson/handout/handout.ts";
import { judge, readAnswer } from "../../../sim/lesson/judge.ts";
import { readAnswers, writeCsv } from "../../../sim/lesson/marking/csv.ts";
import { answerForm, marksCsv } from "../../../sim/lesson/marking/files.ts";
import { markAnswers } from "../../../sim/lesson/marking/mark.ts";
import { readLesson } from "../../../sim/lesson/read.ts";
import { unitById } from "../../../sim/lesson/units.ts";
import { asksOf, fence, keyOf, lessonText, runs, worked } from "./works.ts";

const lesson = lessonById("torque-split");
const ask = (name: string) => {
  const found = asksOf(worked("torque-split")).find((one) => one.name === name);
  if (!found) throw new Error(name);
  return found;
};

describe("numbers from a seed", () => {
  it("are the same for the same seed and name, in capitals or not", () => {
    const a = drawLesson(lesson, { seed: 7, student: "Ada Lindqvist" });
    expect(drawLesson(lesson, { seed: 7, student: "  ada   LINDQVIST " })).toEqual(a);
    expect(drawLesson(lesson, { seed: 8, student: "Ada Lindqvist" })).not.toEqual(a);
    expect(studentKey("E\u0301lise")).toBe(studentKey("\u00c9lise"));
  });

  it("stay the same over versions: what a class has in its hands must be marked", () => {
    const [first] = drawLesson(lesson, { seed: 7, student: "Ada Lindqvist" }).steps;
    const [scene] = first?.scenes ?? [];
    expect(scene?.kind === "bench" ? scene.engineTorque.value : 0).toBe(85);
  });

  it("come from the range, and all of it is used", () => {
    const scenes = lesson.steps.flatMap((step) => step.scenes);
    const choices = scenes.flatMap(numbersOf).find((number) => number.choices.length === 11)?.choices ?? [];
    const seen = new Set<number>();
    for (let i = 0; i < 300; i += 1) {
      const drawn = drawLesson(lesson, { seed: 1, student: `s${i}` }).steps[0]?.scenes[0];
      if (drawn?.kind === "bench") seen.add(drawn.engineTorque.value);
    }
    expect([...seen].sort((a, b) => a - b)).toEqual([...choices].sort((a, b) => a - b));
    expect(varies(lesson)).toBe(true);
    expect(varies(lessonById("charge-balance"))).toBe(false);
  });
});

describe("answers", () => {
  it.each([
    ["-28.57", "right"],
    ["−28,6 N·m", "right"],
    ["-28.6 Nm", "right"],
    ["-21.07 lb·ft", "right"],
    ["- 28.6", "right"],
    ["-2.857e1", "right"],
    ["28.57", "sign"],
    ["-0.02857", "thousand"],
    ["-30", ""],
  ])("reads %s", (typed, expected) => {
    const { right, remark } = judge(ask("sun-torque"), typed);
    expect(right ? "right" : remark).toBe(expected);
  });

  it("takes a number in every way that it can be meant", () => {
    const rpm = unitById("rev/min");
    const read = (typed: string): number[] =>
      readAnswer(typed, rpm).values.map((v) => Math.round(rpm.fromSi(v) * 1e6) / 1e6);
    expect(read("5900")).toEqual([5900]);
    expect(read("5 900")).toEqual([5900]);
    expect(read("5\u202f900,5")).toEqual([5900.5]);
    expect(read("5,900").sort()).toEqual([5.9, 5900]);
    expect(read("1.234,5")).toEqual([1234.5]);
    expect(read("1,234.5")).toEqual([1234.5]);
    for (const bad of ["", "x", "1.2.3", "--1", "5 kW", "5 parsec", "1".repeat(80)]) {
      expect(() => readAnswer(bad, rpm), bad).toThrow(InputError);
    }
  });

  it("is right up to the tolerance and wrong beyond", () => {
    const sun = ask("sun-torque");
    // 2 % of 28.571 is 0.571.
    expect(judge(sun, String(-(100 / 3.5) * 1.0199)).right).toBe(true);
    expect(judge(sun, String(-(100 / 3.5) * 1.0201)).right).toBe(false);
  });

  it("tells the unit that was meant", () => {
    const speed = asksOf(worked("three-shafts")).find(({ name }) => name === "ring-held");
    // 3500 rev/min are 366.5 rad/s.
    expect(speed && judge(speed, "366.5")).toMatchObject({ right: false, remark: "unit" });
    expect(judge(ask("ring-share"), "0.714")).toMatchObject({ right: false, remark: "unit" });
  });

  it("takes a choice by its letter or its text", () => {
    const direction = ask("direction");
    for (const typed of ["a", "A", "a)", "both against the engine."])
      expect(judge(direction, typed).right).toBe(true);
    expect(judge(direction, "b").right).toBe(false);
    expect(() => judge(direction, "d")).toThrow(InputError);
  });
});

const NAMES = ["Ada Lindqvist", "Ben <script>alert(1)</script> Okoro", '=HYPERLINK("x")'];

describe("handouts", () => {
  const made = handout(lesson, { seed: 7, students: NAMES, runs });

  it("are one file each, without script or network, and escape what people type", () => {
    for (const page of [made.sheets, made.key]) {
      expect(page).not.toMatch(/<script|https?:|url\(|<link|<img|<iframe|\son\w+=|@import/i);
      expect(page).toContain("default-src &#39;none&#39;".replaceAll("&#39;", "'"));
      expect(page).toContain("Ben &lt;script&gt;");
    }
  });

  it("give each student a sheet with own numbers, set for paper", () => {
    expect(made.sheets.match(/<article class="sheet">/g)).toHaveLength(3);
    expect(made.sheets).toContain("@page { size: A4;");
    expect(made.sheets).toContain("break-before: page");
    expect(made.sheets).toContain("break-inside: avoid");
    expect(handout(lesson, { seed: 7, students: [], paper: "letter", runs }).sheets).toContain(
      "size: letter",
    );
    // Ada's engine gives 85 N·m, so her sun machine must hold 85/3.5 = 24.3 N·m.
    expect(made.sheets).toContain("85.0\u00a0N·m");
    expect(made.key).toContain("−24.3\u00a0N·m");
  });

  it("keep the key apart", () => {
    expect(made.sheets).not.toContain("24.3");
    const all = worked("torque-split", { seed: 7, student: "Ada Lindqvist" });
    for (const one of asksOf(all)) expect(made.key).toContain(one.name);
  });

  it("are the same text every time", () => {
    expect(handout(lesson, { seed: 7, students: NAMES, runs })).toEqual(made);
  });

  it("refuse a class with a name twice or none", () => {
    expect(() => handout(lesson, { seed: 1, students: ["A b", "a  B"], runs })).toThrow(/same name/);
    expect(() => handout(lesson, { seed: 1, students: [" "], runs })).toThrow(/empty/);
  });

  it("do not print a speed that is asked for", () => {
    const text = lessonText(
      "## A",
      fence("bench", "carrier: 2000", "ring: 1000"),
      fence("ask", "name: a", "question: How fast?", "key: sun speed", "unit: rev/min"),
    );
    const { sheets } = handout(readLesson(text, "t"), { seed: 1, students: [], runs });
    expect(sheets).not.toContain("4\u202f500</text><");
    expect(sheets).toContain(">?</text>");
    expect(sheets).toContain("sun asked for");
  });
});

describe("marking", () => {
  const options = { seed: 7, fileName: "answers.csv", runs };
  const mark = (text: string, more = {}) => markAnswers(lesson, text, { ...options, ...more });
  const resultOf = (text: string, question: string): string =>
    mark(text).marks.find((one) => one.question === question)?.result ?? "";

  it("marks everybody by their own numbers", () => {
    const ben = keyOf(worked("torque-split", { seed: 7, student: "Ben Okoro" }), "sun-torque");
    const text = `student;question;value\nAda Lindqvist;sun-torque;-24,3\nBen Okoro;sun-torque;${ben.toFixed(1).replace(".", ",")} N·m\n`;
    const { marks, students, questions } = mark(text);
    const sun = marks.filter(({ question }) => question === "sun-torque");
    expect(sun.map(({ result }) => result)).toEqual(["right", "right"]);
    expect(students).toEqual([
      { name: "Ada Lindqvist", right: 1, of: 8 },
      { name: "Ben Okoro", right: 1, of: 8 },
    ]);
    expect(questions.find(({ name }) => name === "sun-torque")).toEqual({
      name: "sun-torque",
      right: 2,
      of: 2,
    });
    expect(marks.filter(({ result }) => result === "missing")).toHaveLength(14);
  });

  it("reads RFC 4180: quotes, commas, line ends, a mark at the start, columns in any order", () => {
    const row =
      '\uFEFFvalue,note,question,student\r\n"-24,3 N·m","a ""quoted"", one\r\nbroken",sun-torque,Ada Lindqvist\r\n';
    expect(resultOf(row, "sun-torque")).toBe("right");
    expect(
      resultOf("name\tquestion\tanswer\tunit\nada lindqvist\tSUN-TORQUE\t-17.92\tlb·ft\n", "sun-torque"),
    ).toBe("right");
  });

  it("marks what cannot be read, with its row, and goes on", () => {
    const found = mark(
      "student,question,value\nAda Lindqvist,sun-torque,about 24\nAda Lindqvist,direction,a\n",
    ).marks;
    expect(found.find(({ question }) => question === "sun-torque")).toMatchObject({
      result: "unreadable",
      row: 2,
    });
    expect(found.find(({ question }) => question === "direction")).toMatchObject({ result: "right", row: 3 });
  });

  it.each([
    ["", /answers.csv: the file is empty/],
    ["a,b\n1,2\n", /row 1: no column is called student, question, value/],
    ["student,question,value\nAda,sun-torqe,1\n", /row 2, column "question".*nearest is "sun-torque"/],
    ["student,question,value\n,sun-torque,1\n", /row 2, column "student": the cell is empty/],
    [
      "student,question,value\nA,sun-torque,1\n\na,sun-torque,2\n",
      /row 4, column "question": answered twice: row 2/,
    ],
    ['student,question,value\nA,sun-torque,"1\n', /row 2/],
  ])("refuses %j with row and column", (text, expected) => {
    expect(() => mark(text)).toThrow(expected);
  });

  it("knows the class: strange names are refused, and who handed in nothing is told", () => {
    const text = "student,question,value\nAda Lindqvst,sun-torque,1\n";
    expect(() => mark(text, { students: ["Ada Lindqvist"] })).toThrow(
      /row 2, column "student".*nearest is "Ada Lindqvist"/,
    );
    const none = mark("student,question,value\n", { students: ["Ada Lindqvist"] });
    expect(none.students).toEqual([{ name: "Ada Lindqvist", right: 0, of: 8 }]);
  });

  it("writes a form that comes back as a file of answers", () => {
    const rows = readAnswers(answerForm(lesson, ["Ada Lindqvist", '"Q", Ben']), "form.csv");
    expect(rows).toHaveLength(16);
    expect(rows[8]?.student).toBe('"Q", Ben');
  });

  it("writes no formula that a spreadsheet would run, and leaves numbers alone", () => {
    expect(writeCsv([["=1+1", "@x", "+a", "-28.6", "-x", '"', "a,b"]])).toBe(
      `'=1+1,'@x,'+a,-28.6,'-x,"""","a,b"\n`,
    );
    const text = `student,question,value\n"=HYPERLINK(""x"")",sun-torque,1\n`;
    expect(marksCsv(mark(text))).toContain(`"'=HYPERLINK(""x"")"`);
  });

  it("reads back every text that it writes", () => {
    const name = fc
      .string({ minLength: 1, maxLength: 20 })
      .filter((text) => text.trim() !== "" && !text.includes("\u0000") && !text.includes("\r"));
    fc.assert(
      fc.property(fc.array(name, { minLength: 1, maxLength: 5 }), (names) => {
        const text = writeCsv([
          ["student", "question", "value"],
          ...names.map((one) => [`n${one}`, "q", "1"]),
        ]);
        expect(readAnswers(text, "x").map(({ student }) => student)).toEqual(
          names.map((one) => `n${one}`.trim()),
        );
      }),
      { numRuns: 100 },
    );
  });
});
