import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readNames } from "../../../renderer/lesson/students.ts";
import { lessonWork } from "../../../renderer/workers/lesson-work.ts";
import { lessonById } from "../../../sim/lesson/built-in/registry.ts";
import { succeed, temporaryFolder, textIn } from "../../sim/cli/command.ts";

const lesson = lessonById("three-shafts");
const request = { lesson, file: "lesson three-shafts", seed: 11 };
const CLASS = "Ada Lindqvist\nBen Okoro\n";
const students = readNames(CLASS);

describe("the worker's handout and marks", () => {
  it("are the same bytes as the command line's", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "class.txt"), CLASS);
    const who = ["three-shafts", "--seed", "11", "--students", "class.txt"];
    succeed(folder, "handout", ...who, "--out", "s.html", "--key", "k.html", "--form", "f.csv");
    const made = lessonWork.handout({ ...request, students, paper: "a4" }, () => undefined);
    if (!made.done) throw new Error("refused");
    expect(made.value.sheets).toBe(textIn(folder, "s.html"));
    expect(made.value.key).toBe(textIn(folder, "k.html"));
    expect(made.value.form).toBe(textIn(folder, "f.csv"));
    const answers = made.value.form.replace("Ada Lindqvist,basic-ratio,,", "Ada Lindqvist,basic-ratio,2.5,");
    writeFileSync(join(folder, "a.csv"), answers);
    const [name = "", ...rest] = who;
    succeed(folder, "mark", name, "a.csv", ...rest, "--out", "m.csv");
    const marked = lessonWork.mark({ ...request, students, answers, fileName: "a.csv" }, () => undefined);
    if (!marked.done) throw new Error("refused");
    expect(marked.value.csv).toBe(textIn(folder, "m.csv"));
    expect(marked.value.marking.students[0]).toEqual({ name: "Ada Lindqvist", right: 1, of: 6 });
  });

  it("tell what they refuse with row and column, as data", () => {
    const answers = "student,question,value\nAda Lindqvist,basic-ratoi,2\n";
    const refused = lessonWork.mark(
      { ...request, students: null, answers, fileName: "a.csv" },
      () => undefined,
    );
    if (refused.done) throw new Error("taken");
    expect(refused.faults[0]?.where).toBe('a.csv, row 2, column "question"');
    const twice = lessonWork.handout(
      { ...request, students: ["Ada", "ada "], paper: "letter" },
      () => undefined,
    );
    expect(twice).toMatchObject({ done: false });
  });

  it("work a lesson, telling of its drives, and give a run as a copy that can be read again", () => {
    const heard: number[] = [];
    const starting = lessonById("starting-the-engine");
    const reply = lessonWork.lesson({ lesson: starting, file: "t" }, (runs) => heard.push(runs));
    expect(reply.faults).toEqual([]);
    expect(heard.length).toBeGreaterThan(0);
    const spec = {
      vehicle: { preset: "compact", settings: [] },
      cycle: "launch:speed=30km/h",
      strategy: "rules",
      options: {},
    };
    const run = lessonWork.lessonRun(spec);
    expect(run.log.rows).toBe(lessonWork.lessonRun(spec).log.rows);
    expect(run.regime.length).toBeGreaterThanOrEqual(run.log.rows);
  });
});
