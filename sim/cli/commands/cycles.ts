import { type CycleInfo, listCycles } from "../../../cycles/catalogue.ts";
import { COMPOSITE_TESTS, type CompositeTest } from "../../../cycles/composite/registry.ts";
import { MANOEUVRES } from "../../../cycles/manoeuvres/catalogue.ts";
import { splitLine } from "../../../cycles/manoeuvres/grammar.ts";
import { phaseStatistics, statistics } from "../../../cycles/statistics/basics.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import type { Around } from "../around.ts";
import { chooseCycle } from "../cycle-choice.ts";
import { CYCLES_OPTIONS } from "../options.ts";
import { readChoice } from "../quantity.ts";
import { cycleReport, testText } from "../report/cycle-report.ts";
import { clock, columns, section } from "../report/text.ts";
import { unitsBy } from "../report/units.ts";
import { cleanFile, refuseCleaning } from "./clean.ts";

/** `cycles list`, `cycles show ID|FILE` and `cycles clean FILE`. */
export function cycles(words: readonly string[], around: Around): void {
  const args = readArguments("cycles", words, CYCLES_OPTIONS);
  const [what = "list", ...rest] = args.words;
  readChoice("cycles", what, ["list", "show", "clean"]);
  if (what === "list") {
    refuseCleaning(args);
    expectWords("cycles list", rest, [], 0);
    around.out(args.has("json") ? json({ cycles: listCycles(), tests: COMPOSITE_TESTS }) : listText());
    return;
  }
  if (what === "clean") {
    expectWords("cycles clean", rest, ["FILE"], 1);
    cleanFile(args, rest[0] ?? "", around);
    return;
  }
  refuseCleaning(args);
  expectWords("cycles show", rest, ["ID|FILE"], 1);
  around.out(show(args, rest[0] ?? ""));
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

function listText(): string {
  const told = (info: CycleInfo): string[] => [
    info.id,
    info.duration === null ? "" : clock(info.duration),
    info.title,
  ];
  const of = (...kinds: CycleInfo["kind"][]): string[][] =>
    listCycles()
      .filter((info) => kinds.includes(info.kind))
      .map(told);
  const lines = [
    ...section("cycles", columns(of("standard", "standard phase", "composite"), "lrl")),
    ...section("manoeuvres, with parameters: see cycles show", columns(of("manoeuvre"), "lrl")),
    ...section(
      "tests of several drives",
      columns(
        COMPOSITE_TESTS.map((t) => [t.id, t.title]),
        "ll",
      ),
    ),
  ];
  return `${lines.slice(1).join("\n")}\n`;
}

function show(args: Arguments, name: string): string {
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const choice = chooseCycle("cycles show", name);
  if (choice.kind === "test") return showTest(args, choice.test);
  const { trace, notes } = choice;
  const info = listCycles().find((known) => known.id === splitLine(name).name) ?? null;
  const manoeuvre = MANOEUVRES.find((known) => known.id === info?.id) ?? null;
  if (!args.has("json")) return cycleReport({ trace, info, manoeuvre, notes }, units);
  return json({ ...figures(trace), info, notes, parameters: manoeuvre?.parameters ?? null });
}

function figures(trace: CycleTrace) {
  const { id, title, source, treatment, soaks } = trace;
  const phases = phaseStatistics(trace);
  return {
    id,
    title,
    source,
    treatment,
    soaks,
    samples: trace.time.length,
    statistics: statistics(trace),
    phases,
  };
}

const showTest = (args: Arguments, test: CompositeTest): string =>
  args.has("json") ? json(test) : testText(test);
