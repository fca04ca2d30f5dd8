import { InputError } from "../../../shared/errors.ts";
import { handout as makeHandout } from "../../lesson/handout/handout.ts";
import { PAPERS } from "../../lesson/handout/style.ts";
import { answerForm } from "../../lesson/marking/files.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { chooseLesson, readChosen, readClass, readSeed } from "../lesson-choice.ts";
import { HANDOUT_OPTIONS } from "../lesson-options.ts";
import { checkTargets, type Output, writeAll } from "../outputs.ts";
import { readChoice } from "../quantity.ts";
import { runsSeen } from "./lesson.ts";

/** `handout ID|FILE`: the sheets of a lesson, its key, and a form for the answers. */
export function handout(words: readonly string[], around: Around): void {
  const args = readArguments("handout", words, HANDOUT_OPTIONS);
  expectWords("handout", args.words, ["ID|FILE"], 1);
  const paper = readChoice("--paper", args.text("paper") ?? "a4", PAPERS);
  const seed = readSeed(args);
  const source = chooseLesson("handout", args.words[0] ?? "");
  const students = [...args.texts("student"), ...(readClass(args) ?? [])];
  const targets = targetsOf(args);
  const inputs = [source.path, args.text("students")].filter((path) => typeof path === "string");
  checkTargets(targets, inputs);
  const lesson = readChosen(source);
  const made = makeHandout(lesson, { seed, students, paper, runs: runsSeen(around) });
  const texts = { out: made.sheets, key: made.key, form: answerForm(lesson, students) };
  const outputs = targets.map((target): Output => ({ ...target, pieces: () => [texts[target.name]] }));
  writeAll(outputs, () => stopIfCancelled(around));
  const sheets = students.length === 0 ? "one sheet" : `${students.length} sheets`;
  around.out(`${lesson.title}: ${sheets}, seed ${seed}, in ${targets.map(({ path }) => path).join(", ")}\n`);
}

type Name = "out" | "key" | "form";

function targetsOf(args: Arguments): { name: Name; where: string; path: string }[] {
  const targets = (["out", "key", "form"] as const).flatMap((name) => {
    const path = args.text(name);
    return path === undefined ? [] : [{ name, where: `--${name}`, path }];
  });
  if (targets.length > 0) return targets;
  const accepted = "--out FILE, --key FILE or --form FILE";
  throw new InputError({ what: "nothing to write", where: "handout", value: "", accepted });
}
