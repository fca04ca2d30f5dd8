import type { OptionDeclaration } from "./arguments.ts";

/** Which vehicle, how controlled, under what circumstances: shared by the verbs that drive. */
export const SETUP_OPTIONS: readonly OptionDeclaration[] = [
  { name: "vehicle", value: "ID|FILE", about: "a preset, or a JSON file of parameters; default compact" },
  {
    name: "strategy",
    value: "ID|FILE",
    about: "one of ours, or a file of your own (mine.js); default: the preset's own, or rules",
  },
  { name: "set", value: "PATH=VALUE", about: "change one parameter, SI units; may be repeated", many: true },
  { name: "step", value: "SECONDS", about: "time step, 0.1 s over a whole number; default 0.01" },
  { name: "soc", value: "SHARE", about: "charge at the start, 0.6 or 60%; default the vehicle's" },
  { name: "payload", value: "KG", about: "extra mass; default 0" },
  { name: "wind", value: "SPEED", about: "head wind in m/s, or with km/h or mph; negative from behind" },
  { name: "aux", value: "WATTS", about: "auxiliary electric load; default the vehicle's" },
  { name: "cold", value: "", about: "start with a cold engine" },
  { name: "air-density", value: "KG/M3", about: "default 1.189" },
  { name: "air-temperature", value: "CELSIUS", about: "or with K; default 20" },
];

/** Units of what is printed; files always hold SI. */
export const UNITS_OPTION: OptionDeclaration = {
  name: "units",
  value: "metric|us",
  about: "units of the printed table; default metric",
};

/** The result as JSON instead of a table. */
export const JSON_OPTION: OptionDeclaration = {
  name: "json",
  value: "",
  about: "JSON on stdout instead of the table",
};

/** Options of `run`. */
export const RUN_OPTIONS: readonly OptionDeclaration[] = [
  {
    name: "cycle",
    value: "ID|FILE",
    about: "a cycle, a manoeuvre with its parameters, or a CSV or GPX file; default udds",
  },
  ...SETUP_OPTIONS,
  {
    name: "balance",
    value: "",
    about: "repeat until the charge is balanced; the figures are then comparable",
  },
  {
    name: "log-every",
    value: "control|step",
    about: "rows of the log: every 0.1 s, or every step; default control",
  },
  { name: "out", value: "FILE", about: "write the log as CSV" },
  { name: "summary", value: "FILE", about: "write summary and ledger as JSON" },
  { name: "vehicle-out", value: "FILE", about: "write every parameter of the vehicle driven as JSON" },
  { ...JSON_OPTION, about: "the summary as JSON on stdout instead of the table" },
  UNITS_OPTION,
];

/** Options of `optimum`: what a drive is set up with, but for the cold engine; any number of strategies. */
export const OPTIMUM_OPTIONS: readonly OptionDeclaration[] = [
  { name: "cycle", value: "ID|FILE", about: "a cycle, a manoeuvre, or a CSV or GPX file; default udds" },
  ...SETUP_OPTIONS.flatMap((option): OptionDeclaration[] => {
    if (option.name === "cold") return [];
    if (option.name === "strategy")
      return [
        { name: "strategy", value: "ID", about: "set beside the optimum; may be repeated", many: true },
      ];
    if (option.name === "soc")
      return [{ ...option, about: "charge at the start, 0.6 or 60%; default the one to be kept" }];
    return [option];
  }),
  { name: "end-soc", value: "SHARE", about: "charge at the end; default the charge at the start" },
  { name: "stage", value: "SECONDS", about: "length of a stage, 0.1 to 10; default 1" },
  { name: "soc-steps", value: "COUNT", about: "intervals of charge, 8 to 4000; default 200" },
  { name: "points", value: "COUNT", about: "engine points a stage, 4 to 1000; default 60" },
  { name: "out", value: "FILE", about: "write the optimum's path as CSV, a line a stage" },
  JSON_OPTION,
  UNITS_OPTION,
];

/** Options of `limits`. */
export const LIMITS_OPTIONS: readonly OptionDeclaration[] = [...SETUP_OPTIONS, JSON_OPTION, UNITS_OPTION];

/** Options of `cycles`. */
export const CYCLES_OPTIONS: readonly OptionDeclaration[] = [
  { name: "out", value: "FILE", about: "clean: write the cleaned drive as CSV" },
  { name: "treatments", value: "FILE", about: "clean: a JSON list of treatments instead of the usual ones" },
  { name: "track", value: "NUMBER", about: "clean: which track of a GPX file; default the longest" },
  JSON_OPTION,
  UNITS_OPTION,
];

/** Options of `vehicles`. */
export const VEHICLES_OPTIONS: readonly OptionDeclaration[] = [
  { name: "set", value: "PATH=VALUE", about: "change one parameter, SI units; may be repeated", many: true },
  { name: "engine-map", value: "FILE", about: "show: a CSV table of the engine's map, put into the vehicle" },
  { name: "engine-map-out", value: "FILE", about: "show: write the engine's map as CSV, a template" },
  { name: "vehicle-out", value: "FILE", about: "show: write every parameter of the vehicle as JSON" },
  JSON_OPTION,
];

/** Options of `bench`. */
export const BENCH_OPTIONS: readonly OptionDeclaration[] = [
  { name: "runs", value: "COUNT", about: "measured runs of each scene, 1 to 1000; default 20" },
  JSON_OPTION,
];
