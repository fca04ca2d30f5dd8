import { at } from "../../shared/at.ts";
import type { RecordedLog } from "../../shared/recorded.ts";
import { mpsToKmh, shareToPercent } from "../../shared/units.ts";
import type { Samples } from "../cut.ts";
import { MAX_DURATION, MAX_GRADE, MAX_SPEED, MAX_UNSTATED_GRADE } from "../limits.ts";
import type { TakenColumn } from "./columns.ts";
import type { FaultList } from "./faults.ts";
import { type DecimalMark, NumberReader } from "./numbers.ts";
import type { Columns } from "./open.ts";
import { RecordedReader } from "./recorded.ts";
import { type Delimiter, eachRow, type Row } from "./rows.ts";

/** What the rows gave. */
export interface ReadSamples {
  readonly samples: Samples;
  readonly decimalMark: DecimalMark;
  /** s, taken off every time. */
  readonly timeShift: number;
  readonly notes: readonly string[];
  /** null when the file has no such columns. */
  readonly overlay: RecordedLog | null;
  /** The columns beside the drive, in the units they turned out to be in. */
  readonly recorded: readonly TakenColumn[];
}

/**
 * Reads the rows under the header into SI, time from 0.
 * @param headerLine line of the header in the file
 * @throws InputError when a needed cell is no number or out of range, time does not rise, or rows are too few
 */
export function readSamples(
  text: string,
  delimiter: Delimiter,
  headerLine: number,
  columns: Columns,
  faults: FaultList,
): ReadSamples {
  const rows = new RowReader(columns, faults);
  eachRow(text, delimiter, faults, (row) => {
    if (row.line !== headerLine) rows.take(row);
    return !faults.full;
  });
  faults.throwIfAny();
  return rows.finish();
}

/** Checks and keeps one row after another. */
class RowReader {
  private readonly columns: Columns;
  private readonly faults: FaultList;
  private readonly numbers = new NumberReader();
  private readonly time: number[] = [];
  private readonly speed: number[] = [];
  private readonly grade: number[] = [];
  private readonly beside: RecordedReader;
  private lastTimeText = "";

  constructor(columns: Columns, faults: FaultList) {
    this.columns = columns;
    this.faults = faults;
    this.beside = new RecordedReader(columns, this.numbers, faults);
  }

  take(row: Row): void {
    const time = this.readTime(row);
    const speed = this.readSpeed(row);
    const grade = this.columns.grade ? this.readGrade(row, this.columns.grade) : 0;
    // A faulty row still counts as a row, so that a short file is not called too short as well.
    this.time.push(time ?? this.time.at(-1) ?? 0);
    this.speed.push(speed ?? 0);
    this.grade.push(grade ?? 0);
    this.beside.take(row);
  }

  finish(): ReadSamples {
    const count = this.time.length;
    const accepted = "a header row and at least two rows of time and speed";
    if (count === 0) this.faults.stop("There are no rows under the header.", {}, "", accepted);
    if (count === 1) this.faults.stop("There is only one row under the header.", {}, "1 row", accepted);
    const first = at(this.time, 0);
    const samples = {
      time: Float64Array.from(this.time, (t) => t - first),
      speed: Float64Array.from(this.speed),
      grade: Float64Array.from(this.grade),
    };
    return {
      samples,
      decimalMark: this.numbers.mark,
      timeShift: first === 0 ? 0 : -first,
      notes: [...this.columns.notes, ...this.notes()],
      ...this.beside.finish(samples.time),
    };
  }

  private readTime(row: Row): number | null {
    const column = this.columns.time;
    const time = this.readCell(row, column, "seconds as a number, from 0 on, rising from row to row");
    if (time === null) return null;
    const text = (row.cells[column.index] ?? "").trim();
    const fault = this.timeFault(time);
    if (fault) {
      this.refuse(row, column, fault.what, fault.accepted);
      return null;
    }
    this.lastTimeText = text;
    return time;
  }

  private timeFault(time: number): { what: string; accepted: string } | null {
    if (time < 0) return { what: "The time is negative.", accepted: "0 or more" };
    const last = this.time.at(-1);
    if (last === undefined || this.lastTimeText === "") return null;
    const accepted = `more than ${this.lastTimeText}, the time before`;
    if (time === last) return { what: "The time is repeated.", accepted };
    if (time < last) return { what: "The time goes back.", accepted };
    if (time - at(this.time, 0) <= MAX_DURATION) return null;
    return {
      what: "The drive is longer than 100 hours; the time's unit looks wrong.",
      accepted: "up to 360,000 s",
    };
  }

  private readSpeed(row: Row): number | null {
    const column = this.columns.speed;
    const limit = `a speed up to ${Math.round(mpsToKmh(MAX_SPEED))} km/h`;
    const speed = this.readCell(row, column, limit);
    if (speed === null || Math.abs(speed) <= MAX_SPEED) return speed;
    const what = `The speed is ${Math.round(mpsToKmh(speed))} km/h when read in ${column.unit.id}; the unit looks wrong.`;
    this.refuse(row, column, what, limit);
    return null;
  }

  private readGrade(row: Row, column: TakenColumn): number | null {
    const grade = this.readCell(row, column, `a grade in ${column.unit.id}`);
    if (grade === null) return null;
    const stated = column.unitHow !== "assumed";
    const limit = stated ? MAX_GRADE : MAX_UNSTATED_GRADE;
    if (Math.abs(grade) <= limit) return grade;
    const percent = Math.round(shareToPercent(grade));
    const what = stated
      ? `The grade is ${percent} % when read in ${column.unit.id}; the unit looks wrong.`
      : `The column's name states no unit, and read as rise over run the grade would be ${percent} %.`;
    const accepted = stated ? `up to ${shareToPercent(limit)} %` : "a name with its unit, grade_percent say";
    this.refuse(row, column, what, accepted);
    return null;
  }

  private readCell(row: Row, column: TakenColumn, accepted: string): number | null {
    const reading = this.numbers.read(row.cells[column.index] ?? "");
    if ("value" in reading) return column.unit.toSi(reading.value);
    this.refuse(row, column, reading.fault, accepted);
    return null;
  }

  private refuse(row: Row, column: TakenColumn, what: string, accepted: string): void {
    const value = row.cells[column.index] ?? "";
    this.faults.add(what, { row: row.line, column: column.name }, value, accepted);
  }

  private notes(): string[] {
    const notes: string[] = [];
    const kmh = (speed: number): string => mpsToKmh(speed).toFixed(1);
    const first = at(this.speed, 0);
    const last = at(this.speed, this.speed.length - 1);
    const backwards = this.speed.filter((speed) => speed < 0).length;
    if (first !== 0) notes.push(`The drive starts at ${kmh(first)} km/h, not at rest.`);
    if (last !== 0) notes.push(`The drive ends at ${kmh(last)} km/h, not at rest.`);
    if (backwards > 0) notes.push(`${backwards} rows have a negative speed and are read as backing up.`);
    return notes;
  }
}
