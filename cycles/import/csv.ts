import type { CycleTrace } from "../../shared/cycle.ts";
import { InputError } from "../../shared/errors.ts";
import type { RecordedLog, SpeedDrive } from "../../shared/recorded.ts";
import { slug } from "../slug.ts";
import { FaultList } from "./faults.ts";
import { type ImportOptions, openText, takeColumns } from "./open.ts";
import { readSamples } from "./read.ts";
import { type ImportReport, reportColumn, treatmentOf } from "./report.ts";

/** A cycle read from a file, with how it was read. */
export interface ImportedCycle {
  readonly trace: CycleTrace;
  /** Engine speed, charge and current of the same file; null when it has none of them. */
  readonly overlay: RecordedLog | null;
  readonly report: ImportReport;
}

/**
 * Reads a drive from delimited text: a header row, then time, speed and, if given, grade. Uneven time steps are kept.
 * @param text the file, decoded; a byte-order mark, comment lines (`#`) and blank lines are passed over
 * @throws InputError with up to MAX_FAULTS faults, each naming file, row, column and value
 */
export function importCsv(text: string, options: ImportOptions): ImportedCycle {
  const faults = new FaultList(options.fileName);
  const opened = openText(text, options, faults);
  const columns = takeColumns(opened.header, options.columns, faults);
  if (!columns) throw new InputError(faults.list);
  const read = readSamples(opened.text, opened.delimiter, opened.header.line, columns, faults);
  const facts = {
    fileName: options.fileName,
    delimiter: opened.delimiter,
    decimalMark: read.decimalMark,
    rows: read.samples.time.length,
    comments: opened.comments,
    time: reportColumn(columns.time),
    speed: reportColumn(columns.speed),
    grade: columns.grade && reportColumn(columns.grade),
    recorded: read.recorded.map((column) => ({ role: column.role, ...reportColumn(column) })),
    timeShift: read.timeShift,
  };
  const title = options.title ?? options.fileName.replace(/^.*[\\/]/, "").replace(/\.\w+$/, "");
  const trace = {
    id: slug(title, "imported"),
    title,
    source: options.fileName,
    ...read.samples,
    phases: [],
    soaks: [],
    treatment: treatmentOf(facts),
  };
  return { trace, overlay: read.overlay, report: { ...facts, notes: read.notes } };
}

/**
 * The same drive as `importCsv` reads, as a recording to be treated (`treat`).
 * @throws InputError as `importCsv`
 */
export function rawFromCsv(text: string, options: ImportOptions): { raw: SpeedDrive; report: ImportReport } {
  const { trace, overlay, report } = importCsv(text, options);
  const { id, title, source, time, speed, grade, treatment } = trace;
  return {
    raw: { kind: "speeds", id, title, source, time, speed, grade, reading: treatment, overlay },
    report,
  };
}
