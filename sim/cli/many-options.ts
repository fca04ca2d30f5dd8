import type { OptionDeclaration } from "./arguments.ts";
import { JSON_OPTION, SETUP_OPTIONS } from "./options.ts";

/** Options that may be given several times where many runs are made. */
const MANY = ["vehicle", "strategy"];

const CHOICE: readonly OptionDeclaration[] = [
  {
    name: "cycle",
    value: "ID|FILE",
    about: "as in run; may be repeated; default udds",
    many: true,
  },
  ...SETUP_OPTIONS.map((option) =>
    MANY.includes(option.name)
      ? { ...option, about: `${option.about}; may be repeated`, many: true }
      : option,
  ),
];

const OUTPUT: readonly OptionDeclaration[] = [
  {
    name: "out",
    value: "FILE",
    about: "write results as JSON, with everything that is needed to repeat them",
  },
  { name: "csv", value: "FILE", about: "write the table as CSV, a row a run" },
];

const WORK: readonly OptionDeclaration[] = [
  {
    name: "optimum",
    value: "",
    about: "also the distance to the least fuel possible, which takes some seconds a run",
  },
  {
    name: "part",
    value: "I/N",
    about: "only every N-th run, beginning with the I-th; merge puts parts together",
  },
  { name: "cores", value: "COUNT", about: "threads at once; default all cores" },
  ...OUTPUT,
  JSON_OPTION,
];

/** Options of `compare`. */
export const COMPARE_OPTIONS: readonly OptionDeclaration[] = [...CHOICE, ...WORK];

/** Options of `sweep`. */
export const SWEEP_OPTIONS: readonly OptionDeclaration[] = [
  {
    name: "vary",
    value: "PATH=VALUES",
    about:
      "a parameter, run.OPTION, or factor.LIST for a whole list times a factor: FROM:TO:COUNT, or values parted by commas, SI units; once or twice",
    many: true,
  },
  ...CHOICE,
  ...WORK,
];

/** Options of `merge`. */
export const MERGE_OPTIONS: readonly OptionDeclaration[] = [...OUTPUT, JSON_OPTION];
