import type { How, TakenColumn } from "./columns.ts";
import { ROLE_TITLES, type Role } from "./headers.ts";
import type { DecimalMark } from "./numbers.ts";
import type { Delimiter } from "./rows.ts";

/** Which column was read, in which unit, and how both were found. */
export interface ColumnReport {
  readonly name: string;
  /** From 1. */
  readonly number: number;
  readonly columnHow: How;
  /** As shown: `km/h`. */
  readonly unit: string;
  readonly unitHow: How;
}

/** How a file was understood, for a person to check. */
export interface ImportReport {
  readonly fileName: string;
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  /** Rows of data taken. */
  readonly rows: number;
  /** Comment lines passed over. */
  readonly comments: number;
  readonly time: ColumnReport;
  readonly speed: ColumnReport;
  /** null when the file gives no grade and the road is taken as level. */
  readonly grade: ColumnReport | null;
  /** Columns taken beside the drive. */
  readonly recorded: readonly (ColumnReport & { readonly role: Role })[];
  /** s; taken off every time so that the first is 0. */
  readonly timeShift: number;
  /** What a person may want to look at, one sentence each: the trace does not start at rest, say. */
  readonly notes: readonly string[];
}

/** A taken column as the report shows it. */
export function reportColumn(column: TakenColumn): ColumnReport {
  const { name, index, columnHow, unit, unitHow } = column;
  return { name, number: index + 1, columnHow, unit: unit.id, unitHow };
}

/** The sentences that are kept with the trace: what was read from where, and what was changed. */
export function treatmentOf(report: Omit<ImportReport, "notes">): string[] {
  const sentences = [
    `Read from ${report.fileName}, ${report.rows} rows.`,
    columnSentence("Time", report.time),
    columnSentence("Speed", report.speed),
    report.grade
      ? columnSentence("Grade", report.grade)
      : "No grade in the file: the road is taken as level.",
  ];
  for (const column of report.recorded) {
    const title = ROLE_TITLES[column.role];
    sentences.push(columnSentence(`${title.charAt(0).toUpperCase()}${title.slice(1)}`, column));
  }
  if (report.timeShift !== 0) {
    sentences.push(`Time moved by ${report.timeShift} s so that the first sample is at 0.`);
  }
  return sentences;
}

function columnSentence(quantity: string, column: ColumnReport): string {
  return `${quantity} taken from column "${column.name}" (${column.columnHow}) in ${column.unit} (${column.unitHow}).`;
}
