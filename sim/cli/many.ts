import { basename } from "node:path";
import { version } from "../../package.json";
import type { CycleTrace } from "../../shared/cycle.ts";
import { InputError } from "../../shared/errors.ts";
import { runSettings } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import type { ComparedStrategy } from "../study/compare/job.ts";
import type { SweepAxis } from "../study/sweep/axis.ts";
import { missing, resultsJson, type SweepResults } from "../study/sweep/file.ts";
import { countIn, type Part, type SweepPlan, sweepJobs, WHOLE } from "../study/sweep/plan.ts";
import type { SweepRow } from "../study/sweep/run-sweep-job.ts";
import { sweepCsv } from "../study/sweep/table.ts";
import type { Arguments } from "./arguments.ts";
import { type Around, Interrupted } from "./around.ts";
import { chooseCycle, cycleFile } from "./cycle-choice.ts";
import { checkTargets, type Output, writeAll } from "./outputs.ts";
import { coreCount, doAll } from "./pool.ts";
import { readWhole } from "./quantity.ts";
import { resultsReport } from "./report/results-report.ts";
import { chooseVehicle, namingOptions, readOptions } from "./setup.ts";
import { checkStrategies, readStrategy, usualStrategy } from "./strategy-choice.ts";

/** Many runs as the command line asks for them. */
export interface Many {
  readonly plan: SweepPlan;
  readonly part: Part | null;
  readonly threads: number;
  readonly targets: readonly { readonly where: string; readonly path: string }[];
}

const texts = (args: Arguments, name: string, usual: string): readonly string[] => {
  const given = args.texts(name);
  return given.length > 0 ? given : [usual];
};

/** The drives named; a test made of several stands for its parts. */
function readCycles(args: Arguments): readonly CycleTrace[] {
  return texts(args, "cycle", "udds").map((name) => {
    const choice = chooseCycle("--cycle", name);
    if (choice.kind === "cycle") return choice.trace;
    throw new InputError({
      what: `${choice.test.id} is made of several drives, and a row tells one`,
      where: "--cycle",
      value: name,
      accepted: choice.test.parts.map((part) => `--cycle ${part.cycle}`).join(" "),
    });
  });
}

/** The strategies named; own texts that are named alike would not be told apart in the table. */
function readStrategies(args: Arguments, vehicle: Vehicle): readonly ComparedStrategy[] {
  const names = texts(args, "strategy", usualStrategy(vehicle));
  const shown = names.map((name) => basename(name));
  const double = shown.findIndex((name, i) => shown.indexOf(name) !== i);
  if (double < 0) return names.map(readStrategy);
  throw new InputError({
    what: "two strategies of one name",
    where: "--strategy",
    value: names[double] ?? "",
    accepted: "each name once",
  });
}

/** Reads "3/20". @throws InputError for what is no part */
function readPart(text: string | undefined): Part | null {
  if (text === undefined) return null;
  const [, number, of] = /^(\d{1,6})\/(\d{1,6})$/.exec(text.trim()) ?? [];
  const part = { number: Number(number), of: Number(of) };
  if (part.number >= 1 && part.number <= part.of) return part;
  throw new InputError({ what: "not a part", where: "--part", value: text, accepted: "such as 3/20" });
}

/** The files asked for. */
export const targetsOf = (args: Arguments): Many["targets"] =>
  ["out", "csv"].flatMap((name) => {
    const path = args.text(name);
    return path === undefined ? [] : [{ where: `--${name}`, path }];
  });

/**
 * Reads what is to be driven, and checks all of it before anything is.
 * @param axes what is varied; none for a comparison
 * @throws InputError for the first thing that is wrong
 */
export async function readMany(args: Arguments, axes: readonly SweepAxis[]): Promise<Many> {
  const vehicles = texts(args, "vehicle", "compact").map((name) => chooseVehicle(name, args.texts("set")));
  const [first] = vehicles;
  if (!first) throw new Error("no vehicle");
  const options = readOptions(args);
  const strategies = readStrategies(args, first);
  const drives = { vehicles, axes, cycles: readCycles(args), strategies, options };
  const plan = args.has("optimum") ? { ...drives, optimum: true } : drives;
  const cores = args.text("cores");
  const threads = cores === undefined ? coreCount() : readWhole("--cores", cores, 1, 256);
  const targets = targetsOf(args);
  const inputs = [...args.texts("cycle").map(cycleFile), ...args.texts("strategy")].filter(
    (path) => path !== undefined,
  );
  checkTargets(targets, inputs);
  for (const { battery, auxiliary } of vehicles) {
    const usual = { startSoc: battery.socStart, auxiliaryPower: auxiliary.power };
    namingOptions(args, () => runSettings(options, usual));
  }
  await checkStrategies(strategies, first, options);
  return { plan, part: readPart(args.text("part")), threads, targets };
}

/** The files of some results: JSON with everything to repeat them, and a table. */
export function resultOutputs(targets: Many["targets"], results: SweepResults): readonly Output[] {
  return targets.map(({ where, path }) => ({
    where,
    path,
    pieces: () => [where === "--csv" ? sweepCsv(results.plan.axes, results.rows) : resultsJson(results)],
  }));
}

/**
 * Drives all of it on all cores, writes the files asked for and prints the table. When stopped, what was done so far is
 * written.
 * @throws Interrupted when the user stops it
 */
export async function driveMany(many: Many, args: Arguments, around: Around): Promise<void> {
  const { plan, part, threads, targets } = many;
  const jobs = sweepJobs(plan, part ?? WHOLE);
  const count = countIn(plan, part ?? WHOLE);
  const rows: SweepRow[] = [];
  const began = `driving ${count} ${count === 1 ? "run" : "runs"}`;
  around.progress(began, 0);
  await doAll(jobs, {
    threads: Math.min(threads, count),
    cancelled: around.cancelled,
    done: (row) => {
      rows.push(row);
      around.progress(`${began}, ${rows.length} done`, rows.length / count);
    },
  });
  rows.sort((a, b) => a.index - b.index);
  const results = { plan, part, rows, version };
  const some = rows.length > 0 && targets.length > 0;
  if (rows.length === count || some) writeAll(resultOutputs(targets, results), () => {});
  if (missing(results).missing > 0) {
    throw new Interrupted(
      some ? `${rows.length} of ${count} runs were kept and written` : "nothing was written",
    );
  }
  around.out(args.has("json") ? resultsJson(results) : resultsReport(results));
}
