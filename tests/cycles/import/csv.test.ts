import { describe, expect, it } from "vitest";
import { type ImportedCycle, importCsv } from "../../../cycles/import/csv.ts";
import { inspectCsv } from "../../../cycles/import/inspect.ts";
import type { ImportOptions } from "../../../cycles/import/open.ts";
import { kmhToMps, mphToMps } from "../../../shared/units.ts";

function read(text: string, options: Partial<ImportOptions> = {}): ImportedCycle {
  return importCsv(text, { fileName: "ride.csv", ...options });
}

describe("importCsv", () => {
  it("reads time, speed and grade and tells how", () => {
    const { trace, report } = read("time_s,speed_kmh,grade_percent\n0,0,0\n1,36,5\n2.5,18,-5\n3,0,0\n");
    expect([...trace.time]).toEqual([0, 1, 2.5, 3]);
    expect([...trace.speed]).toEqual([0, kmhToMps(36), kmhToMps(18), 0]);
    expect([...trace.grade]).toEqual([0, 0.05, -0.05, 0]);
    expect(report).toEqual({
      fileName: "ride.csv",
      delimiter: ",",
      decimalMark: "point",
      rows: 4,
      comments: 0,
      time: {
        name: "time_s",
        number: 1,
        columnHow: "from the header",
        unit: "s",
        unitHow: "from the header",
      },
      speed: {
        name: "speed_kmh",
        number: 2,
        columnHow: "from the header",
        unit: "km/h",
        unitHow: "from the header",
      },
      grade: {
        name: "grade_percent",
        number: 3,
        columnHow: "from the header",
        unit: "%",
        unitHow: "from the header",
      },
      recorded: [],
      timeShift: 0,
      notes: [],
    });
  });

  it("makes an id, a title and a source of the file's name", () => {
    const text = "t,km/h\n0,0\n1,5\n";
    expect(read(text, { fileName: "C:\\rides\\My Ride.CSV" }).trace).toMatchObject({
      id: "my-ride",
      title: "My Ride",
      source: "C:\\rides\\My Ride.CSV",
    });
    expect(read(text, { title: "Way home" }).trace).toMatchObject({ id: "way-home", title: "Way home" });
  });

  it("keeps what was done as sentences with the trace", () => {
    const { trace } = read("t,mph\n5,0\n6,10\n");
    expect(trace.treatment).toEqual([
      "Read from ride.csv, 2 rows.",
      'Time taken from column "t" (from the header) in s (assumed).',
      'Speed taken from column "mph" (from the header) in mph (from the header).',
      "No grade in the file: the road is taken as level.",
      "Time moved by -5 s so that the first sample is at 0.",
    ]);
  });

  it("starts the clock at 0 and says so", () => {
    const { trace, report } = read("t,mph\n1700000000.5,0\n1700000001.5,10\n");
    expect([...trace.time]).toEqual([0, 1]);
    expect(trace.speed[1]).toBe(mphToMps(10));
    expect(report.timeShift).toBe(-1700000000.5);
  });

  it.each([
    ["semicolons", "t;km/h\n0;0,5\n1,5;36,0\n", ";"],
    ["tabs", "t\tkm/h\n0\t0,5\n1,5\t36,0\n", "\t"],
    ["commas with quotation marks", 't,km/h\n"0","0,5"\n"1,5","36,0"\n', ","],
  ])("reads decimal commas between %s", (_, text, delimiter) => {
    const { trace, report } = read(text);
    expect([...trace.time]).toEqual([0, 1.5]);
    expect([...trace.speed]).toEqual([kmhToMps(0.5), 10]);
    expect(report).toMatchObject({ delimiter, decimalMark: "comma" });
  });

  it("takes a tab or semicolon in the header over a comma inside a name", () => {
    expect(read("t;km/h;note, long\n0;0;a\n1;5;b\n").report.delimiter).toBe(";");
    expect(read("t\tkm/h\tnote; long, x\n0\t0\ta\n1\t5\tb\n").report.delimiter).toBe("\t");
  });

  it("reads quoted names with separators, line breaks and quotation marks in them", () => {
    const text = '"time, elapsed",t,"v\n[m/s]","a ""b"""\n7,0,0,1\n7,1,2,1\n';
    expect(() => read(text)).not.toThrow();
    const { report } = read(text);
    expect(report.speed.name).toBe("v\n[m/s]");
    expect(report.time.number).toBe(2);
  });

  it("passes over a byte-order mark, comments and blank lines", () => {
    const text = '\uFEFF# a "log\n\n  # of mine, "x\nt,km/h\n\n0,0\n# pause\n1,5\n ,\n2,0\n\n';
    const { trace, report } = read(text);
    expect([...trace.time]).toEqual([0, 1, 2]);
    expect(report.comments).toBe(3);
  });

  it.each(["\n", "\r\n", "\r"])("reads lines that end with %j", (end) => {
    expect([...read(["t,km/h", "0,0", "1,36", ""].join(end)).trace.speed]).toEqual([0, 10]);
  });

  it("reads a file whose last line does not end", () => {
    expect(read("t,km/h\n0,0\n1,36").report.rows).toBe(2);
  });

  it("notes what a person may want to look at", () => {
    expect(read("t,km/h\n0,36\n1,-3.6\n2,7.2\n").report.notes).toEqual([
      "The drive starts at 36.0 km/h, not at rest.",
      "The drive ends at 7.2 km/h, not at rest.",
      "1 rows have a negative speed and are read as backing up.",
    ]);
  });

  it("reads the columns of an exported run among many others", () => {
    const header = "time_s,target_mps,speed_mps,distance_m,grade,engine_speed_radps,regime";
    const { trace, report } = read(`${header}\n0,0,0,0,0.01,0,rest\n0.1,1,0.5,0,0.02,99,electric\n`);
    expect(report.speed).toMatchObject({ name: "speed_mps", number: 3, unit: "m/s" });
    expect(report.grade).toMatchObject({ unit: "rise/run", unitHow: "assumed" });
    expect([...trace.grade]).toEqual([0.01, 0.02]);
  });
});

describe("a person's choice", () => {
  const text = "a,b,speed_kmh,speed_mph,grade\n0,0,0,0,0\n1,2,36,10,0.01\n";

  it("settles column and unit, by name or number", () => {
    const columns = {
      time: { column: 1, unit: "min" },
      speed: { column: "Speed_MPH" },
      grade: { column: "b", unit: "%" },
    };
    const { trace, report } = read(text, { columns });
    expect([...trace.time]).toEqual([0, 60]);
    expect([...trace.speed]).toEqual([0, mphToMps(10)]);
    expect([...trace.grade]).toEqual([0, 0.02]);
    expect(report.time).toEqual({
      name: "a",
      number: 1,
      columnHow: "chosen",
      unit: "min",
      unitHow: "chosen",
    });
    expect(report.speed).toMatchObject({ columnHow: "chosen", unit: "mph", unitHow: "from the header" });
  });

  it("overrules the unit in the header", () => {
    const columns = { time: { column: 1 }, speed: { column: 3, unit: "m/s" } };
    expect(read(text, { columns }).trace.speed[1]).toBe(36);
  });

  it("can leave the grade out", () => {
    const columns = { time: { column: "a" }, speed: { column: 3 }, grade: "none" } as const;
    const { trace, report } = read(text, { columns });
    expect(report.grade).toBeNull();
    expect([...trace.grade]).toEqual([0, 0]);
  });

  it("can set what separates the columns", () => {
    expect(
      read("t|km/h;x\n0|0\n1|5\n", { delimiter: "|", columns: { speed: { column: 2, unit: "km/h" } } }).report
        .rows,
    ).toBe(2);
  });
});

describe("inspectCsv", () => {
  it("shows header, first rows and what could be what, without deciding", () => {
    const rows = Array.from({ length: 9 }, (_, k) => `${k};${k};${k},5`);
    const text = ["t;speed_kmh;v [m/s]", ...rows].join("\n");
    const found = inspectCsv(text, { fileName: "ride.csv" });
    expect(found.header).toEqual(["t", "speed_kmh", "v [m/s]"]);
    expect(found.delimiter).toBe(";");
    expect(found.firstRows).toHaveLength(5);
    expect(found.firstRows[0]).toEqual(["0", "0", "0,5"]);
    expect(found.candidates).toEqual({
      time: ["t"],
      speed: ["speed_kmh", "v [m/s]"],
      grade: [],
      engineSpeed: [],
      soc: [],
      batteryCurrent: [],
    });
    expect(found.faults).toHaveLength(1);
    expect(found.faults[0]?.what).toContain("Several columns");
  });

  it("has no faults for what a choice settles", () => {
    const columns = { speed: { column: 2 } };
    const text = "t;speed_kmh;v [m/s]\n0;0;0\n1;1;1\n";
    expect(inspectCsv(text, { fileName: "ride.csv", columns }).faults).toEqual([]);
  });
});
