import type { OptionDeclaration } from "./arguments.ts";
import { JSON_OPTION, SETUP_OPTIONS } from "./options.ts";

const SEED: OptionDeclaration = {
  name: "seed",
  value: "NUMBER",
  about: "of the numbers that differ from student to student, 0 to 4294967295; default 1",
};

const STUDENTS: OptionDeclaration = {
  name: "students",
  value: "FILE",
  about: "the class: a text file, one name a line",
};

/** Options of `lesson`. */
export const LESSON_OPTIONS: readonly OptionDeclaration[] = [JSON_OPTION];

/** Options of `handout`. */
export const HANDOUT_OPTIONS: readonly OptionDeclaration[] = [
  { name: "out", value: "FILE", about: "write the sheets, one HTML file ready to print" },
  { name: "key", value: "FILE", about: "write the key, another HTML file" },
  { name: "form", value: "FILE", about: "write an empty CSV of answers to fill in" },
  SEED,
  { name: "student", value: "NAME", about: "one sheet for this name; may be repeated", many: true },
  STUDENTS,
  { name: "paper", value: "a4|letter", about: "default a4" },
];

/** Options of `mark`. */
export const MARK_OPTIONS: readonly OptionDeclaration[] = [
  { ...SEED, about: "the one the handout was made with; default 1" },
  { ...STUDENTS, about: "the class: other names are refused, and who handed in nothing is told" },
  { name: "out", value: "FILE", about: "write the marks as CSV, a row for each student and question" },
  JSON_OPTION,
];

/** Options of `report`. */
export const REPORT_OPTIONS: readonly OptionDeclaration[] = [
  {
    name: "cycle",
    value: "ID|FILE",
    about: "a cycle, a manoeuvre with its parameters, or a CSV file; default udds",
  },
  ...SETUP_OPTIONS,
  {
    name: "balance",
    value: "",
    about: "repeat until the charge is balanced; the figures are then comparable",
  },
  { name: "out", value: "FILE", about: "write the report, one HTML file for screen and paper" },
];
