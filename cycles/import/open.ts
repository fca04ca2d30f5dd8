import { type ColumnChoices, type TakenColumn, takeColumn } from "./columns.ts";
import { FaultList } from "./faults.ts";
import { guardText } from "./guard.ts";
import { type DriveRole, RECORDED_ROLES, ROLE_TITLES } from "./headers.ts";
import { NumberReader } from "./numbers.ts";
import { type Delimiter, firstRow, guessDelimiter, plainLines, type Row } from "./rows.ts";

/** What the caller knows about a file. */
export interface ImportOptions {
  /** For messages, source and title; the file itself is not touched. */
  readonly fileName: string;
  /** Taken from the file name when left out. */
  readonly title?: string;
  /** Guessed from the header when left out. */
  readonly delimiter?: Delimiter;
  /** Guessed from the header where left out. */
  readonly columns?: ColumnChoices;
}

/** A text found fit to be read as a table. */
export interface OpenedText {
  /** With plain lines and without comments. */
  readonly text: string;
  readonly comments: number;
  readonly delimiter: Delimiter;
  readonly header: Row;
}

/** The columns to read. */
export interface Columns {
  readonly time: TakenColumn;
  readonly speed: TakenColumn;
  /** null for a level road. */
  readonly grade: TakenColumn | null;
  /** Beside the drive. */
  readonly recorded: readonly TakenColumn[];
  /** +1 when a positive current of the file discharges the battery, −1 when it charges it. */
  readonly currentSign: 1 | -1;
  /** What could not be taken beside the drive, and why; one sentence each. */
  readonly notes: readonly string[];
}

/**
 * Checks that a text is a table and finds its header.
 * @throws InputError when it is empty, binary, too long, or has no header
 */
export function openText(text: string, options: ImportOptions, faults: FaultList): OpenedText {
  const unmarked = text.startsWith("\uFEFF") ? text.slice(1) : text;
  guardText(unmarked, faults);
  const plain = plainLines(unmarked);
  const delimiter = options.delimiter ?? guessDelimiter(plain.text);
  const header = firstRow(plain.text, delimiter, faults);
  faults.throwIfAny();
  if (!header) return faults.stop("There is no header row.", {}, "", HEADER);
  if (header.cells.every(isNumber)) {
    const found = header.cells.join(delimiter);
    faults.stop("The first row holds numbers instead of column names.", { row: header.line }, found, HEADER);
  }
  return { ...plain, delimiter, header };
}

const HEADER = "a first row with names such as time_s and speed_kmh";

function isNumber(cell: string): boolean {
  return "value" in new NumberReader().read(cell);
}

/**
 * Settles the columns to read.
 * @returns null when one is missing or unclear; the faults are booked then
 */
export function takeColumns(
  header: Row,
  choices: ColumnChoices | undefined,
  faults: FaultList,
): Columns | null {
  const take = (role: DriveRole): TakenColumn | null => {
    const choice = choices?.[role];
    return choice === "none" ? null : takeColumn(role, header.cells, header.line, choice, faults);
  };
  const time = take("time");
  const speed = take("speed");
  const grade = take("grade");
  const beside = takeRecorded(header, choices, faults);
  const currentSign = choices?.positiveCurrent === "charges" ? -1 : 1;
  return time && speed && !faults.any ? { time, speed, grade, ...beside, currentSign } : null;
}

/** Columns beside the drive. One that is not clear is no fault, unless a person chose it: the drive does without. */
function takeRecorded(
  header: Row,
  choices: ColumnChoices | undefined,
  faults: FaultList,
): Pick<Columns, "recorded" | "notes"> {
  const recorded: TakenColumn[] = [];
  const notes: string[] = [];
  for (const role of RECORDED_ROLES) {
    const choice = choices?.recorded?.[role];
    if (choice === "none") continue;
    const doubts = choice ? faults : new FaultList("");
    const column = takeColumn(role, header.cells, header.line, choice, doubts);
    if (column) recorded.push(column);
    const doubt = choice ? undefined : doubts.list[0];
    if (doubt) notes.push(`No ${ROLE_TITLES[role]} was taken. ${doubt.what} ${doubt.value}`.trim());
  }
  return { recorded, notes };
}
