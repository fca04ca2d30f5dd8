import { describe, expect, it } from "vitest";
import { importCsv } from "../../../cycles/import/csv.ts";
import type { ImportOptions } from "../../../cycles/import/open.ts";
import { MAX_FAULTS, MAX_SAMPLES } from "../../../cycles/limits.ts";
import type { InputFault } from "../../../shared/errors.ts";
import { faultsOf } from "../faults-of.ts";

function refused(text: string, options: Partial<ImportOptions> = {}): readonly InputFault[] {
  const faults = faultsOf(() => importCsv(text, { fileName: "ride.csv", ...options }));
  for (const fault of faults) {
    expect(fault.where).toMatch(/^ride\.csv/);
    expect(fault.accepted).not.toBe("");
  }
  return faults;
}

describe("a file that is no table", () => {
  it.each([
    ["nothing", ""],
    ["blanks and line ends", " \n\t\r\n  "],
    ["a byte-order mark", "\uFEFF"],
    ["comments", "# one\n# two\n"],
  ])("is empty when it holds only %s", (_, text) => {
    expect(refused(text)).toEqual([
      {
        what: "The file is empty.",
        where: "ride.csv",
        value: "",
        accepted: "a header row and at least two rows of time and speed",
      },
    ]);
  });

  it.each([
    ["NUL bytes", "t,km/h\n0,0\n1,\u00005\n", "row 3", "character code 0"],
    ["control characters", "\u0089PNG\r\n\u001A\n", "row 2", "character code 26"],
    ["an escape in the header", "t,\u001bkm/h\n", "row 1", "character code 27"],
  ])("is binary when it holds %s", (_, text, row, value) => {
    const [fault] = refused(text);
    expect(fault).toMatchObject({ where: `ride.csv, ${row}`, value });
    expect(fault?.what).toContain("not a text file");
  });

  it("has no header when only separators stand there", () => {
    expect(refused(",,,\n,,\n")[0]?.what).toContain("no header row");
  });

  it("has no header when the first row is numbers", () => {
    expect(refused("# log\n0,0\n1,5\n")[0]).toMatchObject({ where: "ride.csv, row 2", value: "0,0" });
  });

  it("has an open quotation mark", () => {
    const [fault] = refused('t,km/h\n0,0\n1,"5\n2,0\n');
    expect(fault).toMatchObject({ what: "A quotation mark is not closed.", where: "ride.csv, row 3" });
    expect(refused('t,"km/h\n0,0\n')[0]).toMatchObject({ where: "ride.csv, row 1" });
  });
});

describe("too few or too many rows", () => {
  it("refuses no row and one row", () => {
    expect(refused("t,km/h\n")[0]?.what).toContain("no rows");
    expect(refused("t,km/h\n0,0\n")[0]).toMatchObject({
      what: expect.stringContaining("one row"),
      value: "1 row",
    });
  });

  it("refuses ten million rows at once, naming the first too many", () => {
    const text = `t,km/h\n${"0,0\n".repeat(10_000_000)}`;
    text.charCodeAt(text.length - 1); // puts the pieces together before the clock starts
    const start = performance.now();
    const [fault] = refused(text);
    // Looking at a tenth of the file takes some 20 ms; building its rows would take seconds.
    expect(performance.now() - start).toBeLessThan(1000);
    expect(fault?.where).toBe(`ride.csv, row ${MAX_SAMPLES + 2}`);
    expect(fault?.what).toContain("more than 1,000,000 rows");
  });

  it("takes the last row allowed, however many comments there are, and not one more", () => {
    const rows = Array.from({ length: MAX_SAMPLES }, (_, k) => `${k / 100},1`);
    const text = ["#", "t,km/h", "#", "", ...rows].join("\n");
    expect(importCsv(text, { fileName: "ride.csv" }).report.rows).toBe(MAX_SAMPLES);
    expect(refused(`${text}\n10000,1`)[0]?.where).toBe(`ride.csv, row ${MAX_SAMPLES + 5}`);
  });
});

describe("columns that are not clear", () => {
  it("names the columns there are when none gives the speed", () => {
    expect(refused("t,engine speed\n0,0\n1,1\n")).toEqual([
      {
        what: "No column gives the speed.",
        where: "ride.csv, row 1",
        value: '"t", "engine speed"',
        accepted: "a column named speed_kmh, speed_mph, v [m/s], km/h or the like",
      },
    ]);
  });

  it("tells missing time and speed together", () => {
    expect(refused("x,y\n0,0\n1,1\n").map((fault) => fault.what)).toEqual([
      "No column gives the time.",
      "No column gives the speed.",
    ]);
  });

  it.each([
    ["speed", "t,speed_kmh,v [m/s]", '"speed_kmh", "v [m/s]"'],
    ["time", "t,time_s,km/h", '"t", "time_s"'],
    ["grade", "t,km/h,grade,slope", '"grade", "slope"'],
  ])("refuses two candidates for the %s", (role, header, value) => {
    const faults = refused(`${header}\n0,0,0,0\n1,1,1,1\n`);
    expect(faults).toEqual([
      {
        what: `Several columns could be the ${role}.`,
        where: "ride.csv, row 1",
        value,
        accepted: "one of them, chosen by name",
      },
    ]);
  });

  it("refuses a speed without a unit", () => {
    expect(refused("# x\nt,speed\n0,0\n1,1\n")[0]).toEqual({
      what: "The unit of the speed is not stated.",
      where: 'ride.csv, row 2, column "speed"',
      value: "",
      accepted: "km/h, mph or m/s, in the column's name or chosen",
    });
  });

  it("refuses a unit it does not know, in the header or chosen", () => {
    expect(refused("t,speed [furlong]\n0,0\n1,1\n")[0]).toMatchObject({
      where: 'ride.csv, row 1, column "speed [furlong]"',
      value: "furlong",
      accepted: "km/h, mph or m/s",
    });
    const columns = { speed: { column: 2, unit: "knots" } };
    expect(refused("t,speed\n0,0\n1,1\n", { columns })[0]).toMatchObject({
      where: 'ride.csv, row 1, column "speed"',
      value: "knots",
      accepted: "km/h, mph or m/s",
    });
  });

  it.each([["nowhere"], [0], [3], [1.5], [-1], [Number.NaN]])("refuses the chosen column %j", (column) => {
    const faults = refused("t,km/h\n0,0\n1,1\n", { columns: { speed: { column } } });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({
      value: String(column),
      accepted: '"t", "km/h", or a number from 1 to 2',
    });
  });
});

describe("a wrong cell", () => {
  it.each([
    ["text", "2,fast", 'row 4, column "km/h"', "fast", "not a number"],
    ["NaN", "2,NaN", 'row 4, column "km/h"', "NaN", "not a number"],
    ["nothing", "2,", 'row 4, column "km/h"', "", "empty"],
    ["a row cut short", "2", 'row 4, column "km/h"', "", "empty"],
    ["infinity", "2,Infinity", 'row 4, column "km/h"', "Infinity", "infinite"],
    ["a number too large", "2,1e400", 'row 4, column "km/h"', "1e400", "infinite"],
    ["a speed that cannot be", "2,401", 'row 4, column "km/h"', "401", "401 km/h"],
    ["a speed backwards that cannot be", "2,-401", 'row 4, column "km/h"', "-401", "-401 km/h"],
    ["a clock time", "00:00:02,1", 'row 4, column "t"', "00:00:02", "not a number"],
    ["an empty time", ",5", 'row 4, column "t"', "", "empty"],
    ["a time repeated", "1,5", 'row 4, column "t"', "1", "repeated"],
    ["a time going back", "0.5,5", 'row 4, column "t"', "0.5", "goes back"],
    ["a drive of years", "1e9,5", 'row 4, column "t"', "1e9", "longer than 100 hours"],
  ])("holding %s is named by row, column and value", (_, row, where, value, said) => {
    const faults = refused(`t,km/h\n0,0\n1,5\n${row}\n3,0\n`);
    expect(faults[0]).toMatchObject({ where: `ride.csv, ${where}`, value });
    expect(faults[0]?.what).toContain(said);
  });

  it("is judged in the unit that was read", () => {
    const [fault] = refused("t,v [m/s]\n0,0\n1,120\n");
    expect(fault?.what).toBe("The speed is 432 km/h when read in m/s; the unit looks wrong.");
    expect(fault?.accepted).toBe("a speed up to 400 km/h");
    expect(() => importCsv("t,km/h\n0,0\n1,400\n", { fileName: "ride.csv" })).not.toThrow();
  });

  it("may be a negative time", () => {
    expect(refused("t,km/h\n-1,0\n0,1\n1,0\n")).toEqual([
      {
        what: "The time is negative.",
        where: 'ride.csv, row 2, column "t"',
        value: "-1",
        accepted: "0 or more",
      },
    ]);
  });

  it("may be a grade in an unstated unit, or one too steep", () => {
    expect(refused("t,km/h,grade\n0,0,0\n1,5,2.5\n")[0]).toMatchObject({
      where: 'ride.csv, row 3, column "grade"',
      value: "2.5",
      accepted: "a name with its unit, grade_percent say",
    });
    expect(refused("t,km/h,grade_percent\n0,0,0\n1,5,51\n")[0]).toMatchObject({
      value: "51",
      accepted: "up to 50 %",
    });
  });

  it("may mix decimal signs", () => {
    const [fault] = refused("t;km/h\n0;0,5\n1;1.5\n");
    expect(fault).toMatchObject({ where: 'ride.csv, row 3, column "km/h"', value: "1.5" });
  });

  it("is found on its own line though comments, blank lines and line breaks in cells come before", () => {
    const [fault] = refused('# log\n\nt,km/h,note\n0,0,"two\nlines"\n\n# pause\n1,x,\n');
    expect(fault?.where).toBe('ride.csv, row 8, column "km/h"');
  });

  it("is shortened in the message when it is long", () => {
    const [fault] = refused(`t,km/h\n0,0\n1,${"y".repeat(5000)}\n`);
    expect(fault?.value).toHaveLength(61);
  });
});

describe("many faults", () => {
  it("are told together, in the order of the file", () => {
    const faults = refused("t,km/h\n0,a\n1,1\n1,b\n3,0\n");
    expect(faults.map((fault) => fault.where)).toEqual([
      'ride.csv, row 2, column "km/h"',
      'ride.csv, row 4, column "t"',
      'ride.csv, row 4, column "km/h"',
    ]);
  });

  it("end at ten, and the last says so", () => {
    const rows = Array.from({ length: 500_000 }, (_, k) => `${k},x`).join("\n");
    const faults = refused(`t,km/h\n${rows}\n`);
    expect(faults).toHaveLength(MAX_FAULTS);
    expect(faults.at(-1)?.what).toContain("Reading stopped here");
    expect(faults.at(-2)?.what).not.toContain("Reading stopped here");
  });

  it("at one row do not hide that it is the only one", () => {
    expect(refused("t,km/h\n0,x\n")).toHaveLength(1);
  });
});
