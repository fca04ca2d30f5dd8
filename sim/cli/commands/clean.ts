import { basename } from "node:path";
import type { DriveFigures } from "../../../cycles/clean/figures.ts";
import { readTreatments, type TreatedDrive, treat, usualTreatments } from "../../../cycles/clean/treat.ts";
import { traceCsv } from "../../../cycles/export.ts";
import { type ImportedDrive, importDrive } from "../../../cycles/import/drive.ts";
import { besideStandard } from "../../../cycles/statistics/beside-standard.ts";
import { InputError } from "../../../shared/errors.ts";
import type { Treatment } from "../../../shared/treatments.ts";
import type { Arguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { readDriveFile, readJson } from "../files.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { readChoice, readWhole } from "../quantity.ts";
import { clock, columns, fixed, section, wrap } from "../report/text.ts";
import { type ReportUnits, unitsBy } from "../report/units.ts";

const OWN_OPTIONS = ["out", "treatments", "track"] as const;

/** @throws InputError when an option of `clean` stands with another word */
export function refuseCleaning(args: Arguments): void {
  const given = OWN_OPTIONS.find((name) => args.has(name));
  if (given === undefined) return;
  throw new InputError({
    what: "this goes with cycles clean only",
    where: `--${given}`,
    value: args.text(given) ?? "",
    accepted: `cycles clean FILE --${given} …`,
  });
}

/**
 * `cycles clean FILE`: reads a recorded drive, does the treatments, tells what each changed and writes the result.
 * @throws InputError for a file, list or target that cannot be used
 */
export function cleanFile(args: Arguments, path: string, around: Around): void {
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const out = args.text("out");
  const list = args.text("treatments");
  const inputs = list === undefined ? [path] : [path, list];
  if (out !== undefined) checkTargets([{ where: "--out", path: out }], inputs);
  const track = args.text("track");
  const imported = importDrive(readDriveFile("cycles clean", path), {
    fileName: basename(path),
    ...(track === undefined ? {} : { track: readWhole("--track", track, 1, 1_000_000) }),
  });
  const treated = treat(imported.raw, treatmentsOf(list, imported));
  if (out !== undefined) {
    const pieces = (): Iterable<string> => traceCsv(treated.after);
    writeAll([{ where: "--out", path: out, pieces }], () => stopIfCancelled(around));
  }
  around.out(args.has("json") ? jsonOf(imported, treated) : textOf(treated, units));
}

function treatmentsOf(list: string | undefined, imported: ImportedDrive): Treatment[] {
  if (list === undefined) return usualTreatments(imported.raw);
  return readTreatments(readJson("--treatments", list), basename(list));
}

function jsonOf(imported: ImportedDrive, treated: TreatedDrive): string {
  const { steps, figuresBefore, figuresAfter, openGaps, after } = treated;
  const beside = besideStandard(after);
  const told = { import: imported.report, figuresBefore, steps, figuresAfter, openGaps, beside };
  return `${JSON.stringify(told, null, 2)}\n`;
}

function textOf(treated: TreatedDrive, units: ReportUnits): string {
  const before = figureTexts(treated.figuresBefore, units);
  const after = figureTexts(treated.figuresAfter, units);
  const rows = before.map(([name = "", value = ""], i) => [name, value, after[i]?.[1] ?? ""]);
  const lines = [
    ...section(
      "read",
      treated.before.treatment.flatMap((sentence) => wrap(sentence)),
    ),
    ...section(
      "done",
      treated.steps.flatMap((step) => wrap(step.sentence)),
    ),
    ...section("figures", columns([["", "as recorded", "cleaned"], ...rows], "lrr")),
    ...section("beside the standard cycles", columns(besideRows(treated, units), "lrrrrr")),
  ];
  const open = treated.openGaps.length;
  if (open > 0) lines.push("", `${open} gaps are left open; speeds in them are straight lines.`);
  return `${lines.slice(1).join("\n")}\n`;
}

function figureTexts(figures: DriveFigures, units: ReportUnits): string[][] {
  return [
    ["duration", clock(figures.duration)],
    ["distance", units.distance(figures.distance)],
    ["ascent", `${fixed(figures.ascent, 0)} m`],
    ["descent", `${fixed(figures.descent, 0)} m`],
    ["top speed", units.speed(figures.maxSpeed)],
    ["largest acceleration", `${fixed(figures.maxAcceleration, 2)} m/s²`],
    ["largest deceleration", `${fixed(figures.maxDeceleration, 2)} m/s²`],
    ["standing", clock(figures.restTime)],
    ["samples", String(figures.samples)],
  ];
}

function besideRows(treated: TreatedDrive, units: ReportUnits): string[][] {
  const rows = besideStandard(treated.after).map(({ id, statistics: s }) => [
    id,
    units.distance(s.distance),
    units.speed(s.meanSpeed),
    units.speed(s.maxSpeed),
    String(s.stops),
    `${fixed(s.relativePositiveAcceleration, 3)} m/s²`,
  ]);
  return [["", "distance", "mean", "top", "stops", "positive acceleration"], ...rows];
}
