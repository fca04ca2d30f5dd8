import type { FaultList } from "../../../cycles/import/faults.ts";
import { type DecimalMark, NumberReader } from "../../../cycles/import/numbers.ts";
import {
  type Delimiter,
  eachRow,
  guessDelimiter,
  plainLines,
  type Row,
} from "../../../cycles/import/rows.ts";
import { MOST_POINTS } from "../../parameters/quantity.ts";
import type { MapLayout } from "./reading.ts";

/** A table's header and rows. */
export interface Sheet {
  readonly delimiter: Delimiter;
  readonly header: Row;
  readonly rows: readonly Row[];
}

/** Bytes of the largest table that is worth reading: at most 500 × 500 points. */
export const MOST_MAP_BYTES = 16e6;

/** Every point of the largest map, and the header. */
const MOST_ROWS = MOST_POINTS * MOST_POINTS + 1;

/** Longest name of a column that is taken for one, characters. */
const LONGEST_NAME = 200;

const WANTED = "a table of the engine map: columns speed, torque and fuel flow or efficiency, or a grid";

/**
 * Takes a text apart into rows, quoted cells as in RFC 4180; lines that begin with # are comments.
 * @param chosen what separates the columns; found from the first row where it is left out
 * @returns null, with the fault booked, for a text that cannot be such a table
 */
export function readSheet(text: string, chosen: Delimiter | undefined, faults: FaultList): Sheet | null {
  if (text.includes("\0")) {
    faults.add("This is not a text file.", {}, "", "comma-separated text in UTF-8");
    return null;
  }
  const plain = plainLines(text.startsWith("\uFEFF") ? text.slice(1) : text).text;
  const delimiter = chosen ?? guessDelimiter(plain);
  const rows: Row[] = [];
  eachRow(plain, delimiter, faults, (row) => {
    rows.push({ line: row.line, cells: row.cells.map((cell) => cell.trim()) });
    return rows.length <= MOST_ROWS;
  });
  const [header, ...rest] = rows;
  if (rows.length > MOST_ROWS) {
    const most = MOST_ROWS - 1;
    faults.add("The table is too long.", { row: rows.at(-1)?.line ?? 0 }, "", `at most ${most} rows of data`);
  } else if (!header) faults.add("The file is empty.", {}, "", WANTED);
  else checkHeader(header, faults);
  return header && !faults.any ? { delimiter, header, rows: rest } : null;
}

/** Refuses what is no header before anything is made of it. */
function checkHeader({ line, cells }: Row, faults: FaultList): void {
  const name = cells.find((cell) => cell.length > LONGEST_NAME);
  if (name !== undefined) faults.add("The first row holds no names of columns.", { row: line }, name, WANTED);
  else if (cells.length > MOST_POINTS + 1) {
    const found = `${cells.length} columns`;
    faults.add("There are too many columns.", { row: line }, found, `at most ${MOST_POINTS + 1} columns`);
  }
}

const isNumber = (cell: string): boolean => "value" in new NumberReader().read(cell);

/** A grid's first row holds numbers behind its corner; a table's columns have names. @param header its cells, trimmed */
export const layoutOf = (header: readonly string[]): MapLayout =>
  header.length > 2 && header.slice(1).every((cell) => cell === "" || isNumber(cell)) ? "grid" : "long";

/** Numbers of one file, each refused where it stands. */
export class CellReader {
  private readonly numbers = new NumberReader();
  private readonly faults: FaultList;

  constructor(faults: FaultList) {
    this.faults = faults;
  }

  get mark(): DecimalMark {
    return this.numbers.mark;
  }

  /** @returns null, with the fault booked, for what is no number */
  read(text: string, line: number, column: string, accepted: string): number | null {
    const reading = this.numbers.read(text);
    if ("value" in reading) return reading.value;
    this.faults.add(reading.fault, { row: line, column }, text, accepted);
    return null;
  }
}
