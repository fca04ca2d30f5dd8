import type { CompositeTest } from "../../../cycles/composite/registry.ts";
import { InputError } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { runCsv } from "../../run/export.ts";
import { regimes } from "../../run/regimes.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { type CycleChoice, chooseCycle, cycleFile } from "../cycle-choice.ts";
import { drive } from "../drive.ts";
import { RUN_OPTIONS } from "../options.ts";
import { checkTargets, type Output, writeAll } from "../outputs.ts";
import { readChoice } from "../quantity.ts";
import { driveReport } from "../report/drive-report.ts";
import { testReport } from "../report/test-report.ts";
import { type ReportUnits, unitsBy } from "../report/units.ts";
import { namingOptions, readSetup, type Setup } from "../setup.ts";
import { driveTest } from "../test-run.ts";

/** A run as the command line asks for it. */
interface Asked {
  readonly args: Arguments;
  readonly setup: Setup;
  readonly balanced: boolean;
  readonly units: ReportUnits;
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** `run`: drives a cycle or a test, prints what happened and writes the files asked for. */
export async function run(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("run", words, RUN_OPTIONS);
  expectWords("run", args.words, [], 0);
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const name = args.text("cycle") ?? "udds";
  const cycle = chooseCycle("--cycle", name);
  const asked: Asked = { args, setup: await readSetup(args), balanced: args.has("balance"), units };
  if (cycle.kind === "test") refuseLog(args, cycle.test);
  const input = cycleFile(name);
  checkTargets(targets(args), input === undefined ? [] : [input]);
  if (cycle.kind === "test") runTest(asked, cycle.test, around);
  else runCycle(asked, cycle, around);
}

function targets(args: Arguments): { where: string; path: string }[] {
  return ["out", "summary", "vehicle-out"].flatMap((name) => {
    const path = args.text(name);
    return path === undefined ? [] : [{ where: `--${name}`, path }];
  });
}

function refuseLog(args: Arguments, test: CompositeTest): void {
  const path = args.text("out");
  if (path === undefined) return;
  throw new InputError({
    what: `${test.id} is made of several drives, and a log holds one`,
    where: "--out",
    value: path,
    accepted: `a run of its own for each: --cycle ${test.parts.map((part) => part.cycle).join(", --cycle ")}`,
  });
}

function runCycle(asked: Asked, cycle: CycleChoice & { kind: "cycle" }, around: Around): void {
  const { args, setup, balanced, units } = asked;
  const done = namingOptions(args, () => drive(setup, cycle.trace, balanced, around));
  const { log, p } = done.run;
  const outputs = [
    ...output(args, "out", () => runCsv(log, regimes(log, p))),
    ...output(args, "summary", () => [json(done.summary)]),
    ...vehicleOutput(args, setup.vehicle),
  ];
  writeAll(outputs, () => stopIfCancelled(around));
  around.out(args.has("json") ? json(done.summary) : driveReport(done, units, cycle.notes));
}

function runTest(asked: Asked, test: CompositeTest, around: Around): void {
  const { args, setup, balanced, units } = asked;
  const summary = namingOptions(args, () => driveTest(setup, test, balanced, around));
  const outputs = [...output(args, "summary", () => [json(summary)]), ...vehicleOutput(args, setup.vehicle)];
  writeAll(outputs, () => stopIfCancelled(around));
  around.out(args.has("json") ? json(summary) : testReport(summary, units));
}

const vehicleOutput = (args: Arguments, vehicle: Vehicle): Output[] =>
  output(args, "vehicle-out", () => [json(vehicle)]);

function output(args: Arguments, name: string, pieces: Output["pieces"]): Output[] {
  const path = args.text(name);
  return path === undefined ? [] : [{ where: `--${name}`, path, pieces }];
}
