import { marksCsv } from "../../lesson/marking/files.ts";
import { type Marking, markAnswers, type Tally } from "../../lesson/marking/mark.ts";
import { expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { readText } from "../files.ts";
import { chooseLesson, readChosen, readClass, readSeed } from "../lesson-choice.ts";
import { MARK_OPTIONS } from "../lesson-options.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { columns, section } from "../report/text.ts";
import { runsSeen } from "./lesson.ts";

/** `mark ID|FILE ANSWERS.csv`: marks what was handed in. */
export function mark(words: readonly string[], around: Around): void {
  const args = readArguments("mark", words, MARK_OPTIONS);
  expectWords("mark", args.words, ["ID|FILE", "ANSWERS.csv"], 2);
  const [name = "", path = ""] = args.words;
  const seed = readSeed(args);
  const source = chooseLesson("mark", name);
  const students = readClass(args);
  const out = args.text("out");
  const targets = out === undefined ? [] : [{ where: "--out", path: out }];
  const inputs = [source.path, path, args.text("students")].filter((one) => typeof one === "string");
  checkTargets(targets, inputs);
  const marking = markAnswers(readChosen(source), readText("answers", path), {
    seed,
    fileName: path,
    ...(students ? { students } : {}),
    runs: runsSeen(around),
  });
  writeAll(
    targets.map((target) => ({ ...target, pieces: () => [marksCsv(marking)] })),
    () => stopIfCancelled(around),
  );
  around.out(args.has("json") ? `${JSON.stringify(marking, null, 2)}\n` : summary(marking));
}

const rows = (tallies: readonly Tally[]): string[] =>
  columns(
    tallies.map(({ name, right, of }) => [name, `${right} of ${of}`]),
    "lr",
  );

function summary({ marks, students, questions }: Marking): string {
  const unread = marks.filter(({ result }) => result === "unreadable");
  const lines = unread.map(({ row, student, question, given, remark }) =>
    `row ${row}: ${student}, ${question}: "${given}": ${remark}`.slice(0, 200),
  );
  return `${[
    ...section("students", rows(students)),
    ...section("questions", rows(questions)),
    ...section("not readable", lines),
  ]
    .slice(1)
    .join("\n")}\n`;
}
