import type { OptionDeclaration } from "./arguments.ts";
import type { Around } from "./around.ts";
import { HANDOUT_OPTIONS, LESSON_OPTIONS, MARK_OPTIONS, REPORT_OPTIONS } from "./lesson-options.ts";
import { COMPARE_OPTIONS, MERGE_OPTIONS, SWEEP_OPTIONS } from "./many-options.ts";
import {
  BENCH_OPTIONS,
  CYCLES_OPTIONS,
  LIMITS_OPTIONS,
  OPTIMUM_OPTIONS,
  RUN_OPTIONS,
  VEHICLES_OPTIONS,
} from "./options.ts";
import { REGENERATION_OPTIONS } from "./regeneration-options.ts";

/** What a verb does with the words behind it. */
export type Command = (words: readonly string[], around: Around) => void | Promise<void>;

/** Names and what they mean, under a title. */
export interface NameList {
  readonly title: string;
  readonly rows: readonly (readonly string[])[];
}

const none = async (): Promise<readonly NameList[]> => [];
const lessonNames = async (): Promise<readonly NameList[]> =>
  (await import("./lesson-choice.ts")).lessonNames();
const setupNames = async (): Promise<readonly NameList[]> => (await import("./names.ts")).setupNames();

/** One verb of the command line. */
export interface Verb {
  readonly name: string;
  readonly about: string;
  /** What stands behind the verb. */
  readonly usage: readonly string[];
  readonly options: readonly OptionDeclaration[];
  readonly examples: readonly string[];
  /** Lists of names that its options take, for the help. */
  readonly names: () => Promise<readonly NameList[]>;
  /** True for long work, which is done beside the thread that listens to Ctrl-C. */
  readonly long: boolean;
  /** Loads the command; only the one that is wanted. */
  readonly load: () => Promise<Command>;
}

/** All verbs but `help`, in the order of the help. */
export const VERBS: readonly Verb[] = [
  {
    name: "run",
    about: "drive a cycle and report where the energy went",
    usage: ["[options]"],
    options: RUN_OPTIONS,
    examples: [
      "run --cycle udds --strategy rules --balance --out run.csv --summary run.json --vehicle-out vehicle.json",
      'run --cycle "cruise:speed=100km/h,grade=2%,for=5min" --set engine.startFuel=8000',
      "run --vehicle family --cycle ftp75 --cold --balance --units us",
      "run --cycle combined --balance --summary combined.json",
    ],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/run.ts")).run,
  },
  {
    name: "compare",
    about: "every vehicle on every cycle with every strategy, at equal charge",
    usage: ["[options]"],
    options: COMPARE_OPTIONS,
    examples: [
      "compare --cycle stop-and-go --cycle launch --strategy rules --strategy thermostat --csv compare.csv",
      "compare --vehicle compact --vehicle van --cycle stop-and-go --strategy mine.js --out compare.json",
    ],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/compare.ts")).compare,
  },
  {
    name: "sweep",
    about: "vary one or two parameters, and drive each point at equal charge",
    usage: ["--vary PATH=VALUES [--vary PATH=VALUES] [options]"],
    options: SWEEP_OPTIONS,
    examples: [
      "sweep --vary battery.capacityAh=4:10:3 --cycle stop-and-go --csv sweep.csv",
      "sweep --vary factor.engine.fullLoadTorque=0.8:1.2:5 --cycle udds",
      "sweep --vary run.payload=0:400:5 --vary run.headWind=-5,0,5 --cycle launch --part 3/20 --out part-3.json",
    ],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/sweep.ts")).sweep,
  },
  {
    name: "merge",
    about: "put the parts of a sweep or a comparison together",
    usage: ["FILE… [options]"],
    options: MERGE_OPTIONS,
    examples: ["merge part-1.json part-2.json --out sweep.json --csv sweep.csv"],
    names: none,
    long: true,
    load: async () => (await import("./commands/merge.ts")).merge,
  },
  {
    name: "report",
    about: "drive a cycle and write figures, ledger, plots and parameters as one HTML file",
    usage: ["--out FILE [options]"],
    options: REPORT_OPTIONS,
    examples: ["report --vehicle compact --cycle nycc --strategy rules --balance --out report.html"],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/report.ts")).report,
  },
  {
    name: "optimum",
    about: "the least fuel possible on a cycle, and how far strategies are from it",
    usage: ["[options]"],
    options: OPTIMUM_OPTIONS,
    examples: [
      "optimum --vehicle compact --cycle udds --strategy rules --strategy equivalent --out optimum.csv",
    ],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/optimum.ts")).optimumCommand,
  },
  {
    name: "regeneration",
    about: "brake stops over speed, rate and charge: how much comes back, and which limit binds",
    usage: ["[options]"],
    options: REGENERATION_OPTIONS,
    examples: [
      "regeneration --speeds 30km/h,100km/h --rates 1,3 --charges 60%",
      "regeneration --vehicle family --rates 0.5:5:4 --csv regeneration.csv --out regeneration.json",
    ],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/regeneration.ts")).regeneration,
  },
  {
    name: "limits",
    about: "0 to 100 km/h, top speed, steepest grade, top electric speed",
    usage: ["[options]"],
    options: LIMITS_OPTIONS,
    examples: ["limits --vehicle van --payload 600"],
    names: setupNames,
    long: true,
    load: async () => (await import("./commands/limits.ts")).limits,
  },
  {
    name: "cycles",
    about: "the cycles, manoeuvres and tests, with statistics",
    usage: ["list [--json]", "show ID|FILE [--json]", "clean FILE [options]"],
    options: CYCLES_OPTIONS,
    examples: [
      "cycles show wltc-class3b",
      "cycles show launch",
      "cycles clean my-drive.gpx --out my-drive.csv",
    ],
    names: none,
    long: false,
    load: async () => (await import("./commands/cycles.ts")).cycles,
  },
  {
    name: "vehicles",
    about: "the demo vehicles and every parameter",
    usage: ["list [--json]", "show ID|FILE [options]"],
    options: VEHICLES_OPTIONS,
    examples: [
      "vehicles show compact",
      "vehicles show compact --engine-map-out map.csv",
      "vehicles show compact --engine-map map.csv --vehicle-out own-vehicle.json",
    ],
    names: none,
    long: false,
    load: async () => (await import("./commands/vehicles.ts")).vehicles,
  },
  {
    name: "lesson",
    about: "the built-in lessons; show one with its key, or check one of your own",
    usage: ["list [--json]", "show ID|FILE [--json]", "check FILE|ID"],
    options: LESSON_OPTIONS,
    examples: ["lesson list", "lesson show torque-split", "lesson check three-shafts"],
    names: lessonNames,
    long: true,
    load: async () => (await import("./commands/lesson.ts")).lesson,
  },
  {
    name: "handout",
    about: "print a lesson, with numbers of its own for each student, and the key apart",
    usage: ["ID|FILE --out FILE [options]"],
    options: HANDOUT_OPTIONS,
    examples: [
      'handout torque-split --seed 7 --student "Ada Lindqvist" --student "Ben Okoro" --out sheets.html --key key.html',
      "handout torque-split --seed 7 --students class.txt --out sheets.html --key key.html --form answers.csv",
    ],
    names: lessonNames,
    long: true,
    load: async () => (await import("./commands/handout.ts")).handout,
  },
  {
    name: "mark",
    about: "mark a CSV of answers against everybody's own numbers",
    usage: ["ID|FILE ANSWERS.csv [options]"],
    options: MARK_OPTIONS,
    examples: ["mark torque-split answers.csv --seed 7 --students class.txt --out marks.csv"],
    names: lessonNames,
    long: true,
    load: async () => (await import("./commands/mark.ts")).mark,
  },
  {
    name: "bench",
    about: "measure how fast the engine computes here, and check what it computes",
    usage: ["[options]"],
    options: BENCH_OPTIONS,
    examples: ["bench --runs 50"],
    names: none,
    long: true,
    load: async () => (await import("./commands/bench.ts")).bench,
  },
];
