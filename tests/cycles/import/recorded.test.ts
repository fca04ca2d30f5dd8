import { describe, expect, it } from "vitest";
import type { ColumnChoices } from "../../../cycles/import/columns.ts";
import { importCsv, rawFromCsv } from "../../../cycles/import/csv.ts";
import { importDrive } from "../../../cycles/import/drive.ts";
import { rpmToRadPerS } from "../../../shared/units.ts";
import { faultsOf } from "../faults-of.ts";

const read = (text: string, columns: ColumnChoices = {}) => importCsv(text, { fileName: "log.csv", columns });
const values = (text: string, columns: ColumnChoices = {}) =>
  Object.fromEntries((read(text, columns).overlay?.channels ?? []).map(({ id, values: v }) => [id, [...v]]));

const LOG = "t,km/h,Engine speed (rpm),SOC [%],battery_current_a\n0,0,0,60,-5\n1,36,1500,59.5,12\n2,0,,59,\n";

describe("columns beside the drive", () => {
  it("are found, turned to SI, and keep holes", () => {
    expect(values(LOG)).toEqual({
      engineSpeed: [0, rpmToRadPerS(1500), Number.NaN],
      soc: [0.6, 0.595, 0.59],
      batteryCurrent: [-5, 12, Number.NaN],
    });
    expect([...(read(LOG).overlay?.time ?? [])]).toEqual([0, 1, 2]);
  });

  it("are told with how they were found", () => {
    const { report, trace } = read(LOG);
    expect(report.recorded.map(({ role, name, unit, unitHow }) => [role, name, unit, unitHow])).toEqual([
      ["engineSpeed", "Engine speed (rpm)", "rev/min", "from the header"],
      ["soc", "SOC [%]", "%", "from the header"],
      ["batteryCurrent", "battery_current_a", "A", "from the header"],
    ]);
    expect(trace.treatment).toContain(
      'State of charge taken from column "SOC [%]" (from the header) in % (from the header).',
    );
  });

  it("can be chosen, changed and left out", () => {
    const text = "t,km/h,a,b,soc\n0,0,100,3,0.5\n1,5,200,4,0.4\n";
    const columns: ColumnChoices = {
      recorded: {
        engineSpeed: { column: "a", unit: "rad/s" },
        batteryCurrent: { column: 4 },
        soc: "none",
      },
      positiveCurrent: "charges",
    };
    expect(values(text, columns)).toEqual({ engineSpeed: [100, 200], batteryCurrent: [-3, -4] });
  });

  it.each([
    ["0.5,0.4", [0.5, 0.4], "share"],
    ["1,0.99", [1, 0.99], "share"],
    ["50,40", [0.5, 0.4], "%"],
    ["1,1.5", [0.01, 0.015], "%"],
  ])("read a charge without unit (%s) by its size", (cells, expected, unit) => {
    const [first, second] = cells.split(",");
    const text = `t,km/h,soc\n0,0,${first}\n1,5,${second}\n`;
    expect(values(text).soc).toEqual(expected);
    expect(read(text).report.recorded[0]).toMatchObject({ unit, unitHow: "assumed" });
  });

  it.each(["", "-", "n/a", "NaN", "null", "NA"])("take %j for a hole", (cell) => {
    expect(values(`t,km/h,rpm\n0,0,800\n1,5,${cell}\n`).engineSpeed?.[1]).toBeNaN();
  });

  it("that are not clear are left, with a note, not a fault", () => {
    const { overlay, report } = read("t,km/h,soc,battery soc,rpm [furlong]\n0,0,1,1,1\n1,5,1,1,1\n");
    expect(overlay).toBeNull();
    expect(report.notes[0]).toBe(
      'No state of charge was taken. Several columns could be the state of charge. "soc", "battery soc"',
    );
  });

  it("with a wrong cell are refused by row, column and value", () => {
    expect(faultsOf(() => read("t,km/h,rpm\n0,0,800\n1,5,fast\n"))[0]).toMatchObject({
      where: 'log.csv, row 3, column "rpm"',
      value: "fast",
      accepted: "a number or an empty cell",
    });
    expect(faultsOf(() => read("t,km/h,soc [-]\n0,0,60\n1,5,50\n"))[0]).toMatchObject({
      where: 'log.csv, column "soc [-]"',
      value: "60",
    });
    const columns: ColumnChoices = { recorded: { soc: { column: "charge" } } };
    expect(faultsOf(() => read("t,km/h\n0,0\n1,5\n", columns))[0]).toMatchObject({ value: "charge" });
  });
});

describe("importDrive", () => {
  it("knows a table from a track, by content and by name", () => {
    expect(importDrive(LOG, { fileName: "log.txt" })).toMatchObject({ kind: "csv", raw: { kind: "speeds" } });
    expect(faultsOf(() => importDrive(LOG, { fileName: "log.gpx" }))[0]?.what).toContain("GPX");
    expect(faultsOf(() => importDrive("<gpx/>", { fileName: "log.csv" }))[0]?.what).toContain(
      "no gpx element",
    );
  });

  it("keeps the same numbers as importCsv", () => {
    const { raw } = rawFromCsv(LOG, { fileName: "log.csv" });
    const { trace, overlay } = read(LOG);
    expect(raw).toEqual({
      kind: "speeds",
      id: trace.id,
      title: trace.title,
      source: trace.source,
      time: trace.time,
      speed: trace.speed,
      grade: trace.grade,
      reading: trace.treatment,
      overlay,
    });
  });
});
