import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import { balance } from "../../study/balance.ts";
import { distanceOf } from "../../study/optimum/distance.ts";
import { type Grid, type Optimum, optimum, STANDARD_GRID } from "../../study/optimum/optimum.ts";
import { pathCsv } from "../../study/optimum/path-csv.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import { type Around, Interrupted, stopIfCancelled } from "../around.ts";
import { chooseCycle, cycleFile } from "../cycle-choice.ts";
import { OPTIMUM_OPTIONS } from "../options.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { OPTION_UNITS, readChoice, readQuantity, readWhole } from "../quantity.ts";
import { optimumFigures, optimumReport, type StrategyDistance } from "../report/optimum-report.ts";
import { unitsBy } from "../report/units.ts";
import { chooseVehicle, namingOptions, readOptions, type Setup } from "../setup.ts";
import { checkStrategies, makeStrategy, readStrategy } from "../strategy-choice.ts";

/** Comparisons are balanced to this share of the fuel energy. */
const WINDOW = 0.001;

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** `optimum`: the least fuel possible on a cycle, and how far strategies are from it. */
export async function optimumCommand(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("optimum", words, OPTIMUM_OPTIONS);
  expectWords("optimum", args.words, [], 0);
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const name = args.text("cycle") ?? "udds";
  const trace = chooseDrive(name);
  const grid = readGrid(args);
  const vehicle = chooseVehicle(args.text("vehicle") ?? "compact", args.texts("set"));
  const asked = readOptions(args);
  const options = { ...asked, startSoc: asked.startSoc ?? vehicle.battery.socTarget };
  const chosen = args.texts("strategy").map(readStrategy);
  const out = args.text("out");
  const input = cycleFile(name);
  if (out !== undefined) checkTargets([{ where: "--out", path: out }], input === undefined ? [] : [input]);
  await checkStrategies(chosen, vehicle, options);
  const found = findOptimum(args, { vehicle, options }, trace, grid, around);
  const distances: StrategyDistance[] = [];
  for (const one of chosen) {
    const strategy = await makeStrategy(one);
    distances.push(strategyDistance({ vehicle, strategy, options }, trace, grid, around));
    strategy.close?.();
  }
  if (out !== undefined) {
    writeAll([{ where: "--out", path: out, pieces: () => pathCsv(found) }], () => stopIfCancelled(around));
  }
  const figures = optimumFigures(vehicle, trace, found, distances);
  around.out(args.has("json") ? json(figures) : optimumReport(vehicle, trace, found, distances, units));
}

function chooseDrive(name: string): CycleTrace {
  const choice = chooseCycle("--cycle", name);
  if (choice.kind === "cycle") return choice.trace;
  throw new InputError({
    what: `${choice.test.id} is made of several drives, and an optimum belongs to one`,
    where: "--cycle",
    value: name,
    accepted: choice.test.parts.map((part) => part.cycle).join(", "),
  });
}

function readGrid(args: Arguments): Grid {
  const whole = (option: string, usual: number, least: number, most: number): number => {
    const text = args.text(option);
    return text === undefined ? usual : readWhole(`--${option}`, text, least, most);
  };
  const stage = args.text("stage");
  return {
    stage: stage === undefined ? STANDARD_GRID.stage : readQuantity("--stage", stage, OPTION_UNITS.step),
    socSteps: whole("soc-steps", STANDARD_GRID.socSteps, 8, 4000),
    points: whole("points", STANDARD_GRID.points, 4, 1000),
    speeds: STANDARD_GRID.speeds,
  };
}

function findOptimum(
  args: Arguments,
  setup: Omit<Setup, "strategy">,
  trace: CycleTrace,
  grid: Grid,
  around: Around,
): Optimum {
  const endText = args.text("end-soc");
  const end = endText === undefined ? undefined : readQuantity("--end-soc", endText, OPTION_UNITS.soc);
  const options = { run: setup.options, grid, ...(end === undefined ? {} : { endSoc: end }) };
  const work = () => optimum(setup.vehicle, trace, options, watch(around, trace.id));
  const found = namingOptions(args, () => namingGrid(work));
  if (!found) throw new Interrupted();
  return found;
}

/** Options that stand for the optimum's own names. */
const NAMES: Readonly<Record<string, string>> = {
  "optimum endSoc": "--end-soc",
  "optimum startSoc": "--soc",
  "optimum stage": "--stage",
};

/** Tells faults of the optimum by the command line's own names. */
function namingGrid<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(
      error.faults.map((fault) => ({ ...fault, where: NAMES[fault.where] ?? fault.where })),
    );
  }
}

const watch = (around: Around, what: string) => ({
  report: (share: number) => around.progress(`optimum of ${what}`, share),
  cancelled: around.cancelled,
});

/** A strategy's run, charge-balanced, and its distance to the least fuel on the demand that it drove. */
function strategyDistance(setup: Setup, trace: CycleTrace, grid: Grid, around: Around): StrategyDistance {
  const { vehicle, strategy, options } = setup;
  const progress = {
    report: (share: number) => around.progress(`balancing ${strategy.id}`, share),
    cancelled: around.cancelled,
  };
  const balanced = balance(vehicle, trace, strategy, options, WINDOW, progress);
  stopIfCancelled(around);
  const distance = distanceOf(balanced.run, strategy.regeneration, grid, watch(around, strategy.id));
  if (!distance) throw new Interrupted();
  return { strategy: strategy.id, balanced, distance };
}
