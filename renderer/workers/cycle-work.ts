import { treat, usualTreatments } from "../../cycles/clean/treat.ts";
import { messyRecording } from "../../cycles/demo/messy.ts";
import { importDrive, isGpx } from "../../cycles/import/drive.ts";
import { inspectCsv } from "../../cycles/import/inspect.ts";
import { statistics } from "../../cycles/statistics/basics.ts";
import {
  besideStandard,
  RECORDED_REST_SPEED,
  type StatisticsRow,
  standardRows,
} from "../../cycles/statistics/beside-standard.ts";
import { at } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { isCycleFile, readCycleFile, writeCycleFile } from "../../shared/cycle-file.ts";
import { InputError } from "../../shared/errors.ts";
import type { RawDrive } from "../../shared/recorded.ts";
import type { Treatment } from "../../shared/treatments.ts";
import type { Answer, CycleWorker, ReadChoices, ReadFile, TreatedReply } from "./cycle-contract.ts";

/** The value, or the faults of bad input; anything else is a programming error and goes on. */
function answered<T>(work: () => T): Answer<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { ok: false, faults: error.faults };
  }
}

function readTable(text: string, fileName: string, choices: ReadChoices): ReadFile {
  const options = { fileName, ...choices };
  const inspection = inspectCsv(text, options);
  const read = answered(() => importDrive(text, options));
  return {
    kind: "recording",
    inspection,
    imported: read.ok ? read.value : null,
    faults: read.ok ? [] : read.faults,
    usual: read.ok ? usualTreatments(read.value.raw) : [],
  };
}

function readFile(text: string, fileName: string, choices: ReadChoices): ReadFile {
  if (isCycleFile(text, fileName)) return { kind: "own", own: readCycleFile(text, fileName) };
  if (!isGpx(text, fileName)) return readTable(text, fileName, choices);
  const imported = importDrive(text, { fileName, ...choices });
  return { kind: "recording", imported, inspection: null, faults: [], usual: usualTreatments(imported.raw) };
}

const rowOf = (trace: CycleTrace, restSpeed: number): StatisticsRow =>
  at(besideStandard(trace, restSpeed), 0);

function treated(raw: RawDrive, treatments: readonly Treatment[]): TreatedReply {
  const { before, ...rest } = treat(raw, treatments);
  const row = rowOf(rest.after, RECORDED_REST_SPEED);
  const stopsBefore = statistics(before, undefined, RECORDED_REST_SPEED).stops;
  return {
    treated: rest,
    before: { ...rest.figuresBefore, stops: stopsBefore },
    after: { ...rest.figuresAfter, stops: row.statistics.stops },
    row,
  };
}

/** What the worker does, apart from being one. */
export const cycleWork: CycleWorker = {
  read: (text, fileName, choices) => answered(() => readFile(text, fileName, choices)),
  treat: (raw, treatments) => answered(() => treated(raw, treatments)),
  row: rowOf,
  standard: standardRows,
  file: writeCycleFile,
  invented: () => messyRecording().gpx,
};
