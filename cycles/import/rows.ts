/// <reference path="../papaparse.d.ts" />
import Papa from "papaparse";
import type { FaultList } from "./faults.ts";

/** What separates the columns. */
export type Delimiter = "," | ";" | "\t" | "|";

/** One row that holds something. */
export interface Row {
  /** Line of the file it starts on, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * Makes line ends alike and empties comment lines (first sign `#`), keeping the number of lines, so that the line
 * numbers in messages are those of the file.
 * @returns the text and how many comments it had
 */
export function plainLines(text: string): { text: string; comments: number } {
  let comments = 0;
  const plain = text.replace(/\r\n?/g, "\n").replace(/^[ \t]*#.*$/gm, () => {
    comments += 1;
    return "";
  });
  return { text: plain, comments };
}

/**
 * Guesses what separates the columns from the header alone: in the data, decimal commas would mislead. A tab wins
 * over a semicolon, that over a comma, that over a bar; a file without any has one column.
 * @param text with plain lines
 */
export function guessDelimiter(text: string): Delimiter {
  const header = /^.*\S.*$/m.exec(text)?.[0] ?? "";
  const bare = header.replace(/"[^"]*"/g, "");
  return (["\t", ";", ",", "|"] as const).find((sign) => bare.includes(sign)) ?? ",";
}

/**
 * Goes through the rows that are not blank, quoted cells as in RFC 4180.
 * @param text with plain lines
 * @param visit gets each row; false ends the reading
 */
export function eachRow(
  text: string,
  delimiter: Delimiter,
  faults: FaultList,
  visit: (row: Row) => boolean,
): void {
  let line = 1;
  Papa.parse(text, {
    delimiter,
    newline: "\n",
    header: false,
    skipEmptyLines: false,
    step: ({ data, errors }, parser) => {
      const row = { line, cells: data };
      line += 1 + lineBreaks(data);
      const [error] = errors;
      if (error)
        faults.add("A quotation mark is not closed.", { row: row.line }, data.join(delimiter), QUOTING);
      const go = error ? !faults.full : isBlank(data) || visit(row);
      if (!go) parser.abort();
    },
  });
}

/** The first row that is not blank, its cells trimmed; null when there is none. */
export function firstRow(text: string, delimiter: Delimiter, faults: FaultList): Row | null {
  const found: Row[] = [];
  eachRow(text, delimiter, faults, (row) => {
    found.push({ line: row.line, cells: row.cells.map((cell) => cell.trim()) });
    return false;
  });
  return found[0] ?? null;
}

const QUOTING = 'cells like "1,5", a quotation mark inside written twice';

function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "");
}

function lineBreaks(cells: readonly string[]): number {
  let count = 0;
  for (const cell of cells) {
    for (let i = cell.indexOf("\n"); i >= 0; i = cell.indexOf("\n", i + 1)) count += 1;
  }
  return count;
}
