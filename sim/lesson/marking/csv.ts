/// <reference path="../../../cycles/papaparse.d.ts" />
import Papa from "papaparse";
import { InputError, type InputFault } from "../../../shared/errors.ts";

/** One answer as it stands in a file. */
export interface AnswerRow {
  /** row of the file, from 1 */
  readonly row: number;
  readonly student: string;
  readonly question: string;
  readonly value: string;
}

/** Most rows, and longest cell, that are read. */
const MOST_ROWS = 100_000;
const LONGEST_CELL = 500;
const MOST_FAULTS = 30;

/** Names that each column may have. */
const COLUMNS = {
  student: ["student", "name"],
  question: ["question"],
  value: ["value", "answer"],
  unit: ["unit"],
} as const;

type Column = keyof typeof COLUMNS;

const HEADER = "a first row with student, question, value, and perhaps unit";

type Delimiter = ";" | "\t" | ",";

/** What separates the columns, from the header alone: decimal commas in the rows would mislead. */
function delimiterOf(header: string): Delimiter {
  const bare = header.replace(/"[^"]*"/g, "");
  return ([";", "\t", ","] as const).find((sign) => bare.includes(sign)) ?? ",";
}

interface Raw {
  readonly row: number;
  readonly cells: readonly string[];
  readonly broken: boolean;
}

function rowsOf(text: string, delimiter: Delimiter): Raw[] {
  const rows: Raw[] = [];
  let row = 1;
  Papa.parse(text, {
    delimiter,
    newline: "\n",
    header: false,
    skipEmptyLines: false,
    step: ({ data, errors }, parser) => {
      rows.push({ row, cells: data, broken: errors.length > 0 });
      row += 1 + data.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
      if (rows.length > MOST_ROWS) parser.abort();
    },
  });
  return rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
}

function placesOf(header: Raw, fileName: string): Readonly<Record<Column, number>> {
  const cells = header.cells.map((cell) => cell.trim().toLowerCase());
  const place = (column: Column): number =>
    cells.findIndex((cell) => (COLUMNS[column] as readonly string[]).includes(cell));
  const found = {
    student: place("student"),
    question: place("question"),
    value: place("value"),
    unit: place("unit"),
  };
  const missing = (["student", "question", "value"] as const).filter((column) => found[column] < 0);
  if (missing.length === 0) return found;
  throw new InputError({
    what: `no column is called ${missing.join(", ")}`,
    where: `${fileName}, row ${header.row}`,
    value: header.cells.join(", ").slice(0, 80),
    accepted: HEADER,
  });
}

/**
 * Reads a file of answers: RFC 4180, columns parted by commas, semicolons or tabs, in any order; further columns are
 * left alone.
 * @param fileName for messages
 * @throws InputError with row and column of all that is wrong
 */
export function readAnswers(text: string, fileName: string): readonly AnswerRow[] {
  const plain = text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
  if (plain.includes("\u0000")) {
    throw new InputError({ what: "this is no text", where: fileName, value: "", accepted: "CSV in UTF-8" });
  }
  const [header, ...rows] = rowsOf(plain, delimiterOf(/^.*\S.*$/m.exec(plain)?.[0] ?? ""));
  if (!header)
    throw new InputError({ what: "the file is empty", where: fileName, value: "", accepted: HEADER });
  const places = placesOf(header, fileName);
  if (rows.length >= MOST_ROWS) {
    const accepted = `at most ${MOST_ROWS} rows`;
    throw new InputError({ what: "the file has too many rows", where: fileName, value: "", accepted });
  }
  const faults: InputFault[] = [];
  const answers = rows.map(({ row, cells, broken }): AnswerRow => {
    const cell = (column: Column): string => (cells[places[column]] ?? "").trim();
    const unit = places.unit < 0 ? "" : cell("unit");
    const add = (column: string, what: string, value: string, accepted: string): void => {
      if (faults.length >= MOST_FAULTS) return;
      const where = `${fileName}, row ${row}, column "${column}"`;
      faults.push({ what, where, value: value.slice(0, 60), accepted });
    };
    if (broken) add("student", "a quotation mark is not closed", cells.join(", "), 'cells like "1,5"');
    if (cell("student") === "") add("student", "the cell is empty", "", "the student's name");
    if (cell("question") === "") add("question", "the cell is empty", "", "the name of a question");
    const long = cells.find((text) => text.length > LONGEST_CELL);
    if (long !== undefined) add("value", "a cell is too long", long, `at most ${LONGEST_CELL} characters`);
    return {
      row,
      student: cell("student"),
      question: cell("question"),
      // Somebody who wrote a unit behind the number means that one.
      value: unit !== "" && /\d\s*$/.test(cell("value")) ? `${cell("value")} ${unit}` : cell("value"),
    };
  });
  if (faults.length > 0) throw new InputError(faults);
  return answers;
}

/** A cell that a spreadsheet would take for a formula; plain numbers are none. */
const FORMULA = /^[=@\t\r]|^[+-](?!\s*[\d.,])/;

/**
 * Writes rows as CSV by RFC 4180 with line feeds. What a spreadsheet would run as a formula gets an apostrophe first.
 */
export function writeCsv(rows: readonly (readonly (string | number)[])[]): string {
  const cell = (value: string | number): string => {
    const text = typeof value === "number" ? String(value) : FORMULA.test(value) ? `'${value}` : value;
    return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return `${rows.map((row) => row.map(cell).join(",")).join("\n")}\n`;
}
