import { describe, expect, it } from "vitest";
import { at } from "../../../../shared/at.ts";
import { rpmToRadPerS } from "../../../../shared/units.ts";
import { readEngineMap } from "../../../../sim/vehicle/engine-map/read.ts";
import type { MapChoices, MapReading } from "../../../../sim/vehicle/engine-map/reading.ts";

const HEAT = 42.5e6;

/** A small table of an invented engine in g/kWh: a row for each point. */
const POINTS = [
  [1000, 20, 330],
  [1000, 100, 240],
  [5000, 20, 420],
  [5000, 100, 260],
] as const;

const long = (header: string, rows: readonly (readonly (string | number)[])[] = POINTS): string =>
  [header, ...rows.map((row) => row.join(","))].join("\n");

const read = (text: string, choices?: MapChoices): MapReading =>
  readEngineMap(text, "map.csv", HEAT, choices);

/** The map read, which must be there. */
function mapOf(reading: MapReading) {
  expect(reading.faults).toEqual([]);
  if (!reading.map) throw new Error("no map");
  return reading.map;
}

const unitsOf = ({ roles }: MapReading) =>
  [roles.speed, roles.torque, roles.figure].map(({ unit, unitHow }) => `${unit} ${unitHow}`);

describe("a table with a row for each point", () => {
  it("takes 225 g/kWh of 42.5 MJ/kg for 37.6 % (arithmetic: 3.6e9 / (225 × 42.5e6) = 0.37647)", () => {
    const rows = POINTS.map(([speed, torque]) => [speed, torque, 225]);
    const map = mapOf(read(long("speed (rpm),torque (Nm),bsfc (g/kWh)", rows)));
    const power = at(map.speed, 1) * at(map.torque, 1);
    expect(power / at(at(map.fuelPower, 1), 1)).toBeCloseTo(0.37647, 5);
  });

  it.each([
    ["speed [min-1],torque [N m],fuel flow [g/s]", [1000, 100, 1], 42_500],
    ["n (1/min),M (Nm),fuel rate (kg/h)", [1000, 100, 3.6], 42_500],
    ["speed_rpm,torque_Nm,efficiency_%", [1000, 100, 25], (rpmToRadPerS(1000) * 100) / 0.25],
    [
      "engine speed in rpm,brake torque in Nm,efficiency (1)",
      [1000, 100, 0.25],
      (rpmToRadPerS(1000) * 100) / 0.25,
    ],
    ["speedRpm,torqueNm,fuel power (kW)", [1000, 100, 45], 45_000],
    ["rpm,N·m,g/kWh", [1000, 100, 240], (rpmToRadPerS(1000) * 100 * 240 * 42.5e6) / 3.6e9],
  ] as const)("reads the units of %s", (header, point, fuel) => {
    // More torque takes more fuel in every unit of these.
    const [, , figure] = point;
    const less = /[%(]1?\)?$|kWh/.test(header) ? figure : figure / 2;
    const rows = [
      [1000, 50, less],
      point,
      [2000, 50, less * (/flow|rate|power/.test(header) ? 2 : 1)],
      [2000, 100, figure * (/flow|rate|power/.test(header) ? 2 : 1)],
    ];
    const reading = read(long(header, rows));
    const map = mapOf(reading);
    expect(map.speed[0]).toBeCloseTo(rpmToRadPerS(1000), 10);
    expect(at(at(map.fuelPower, 0), 1)).toBeCloseTo(fuel, 6);
    expect(reading.roles.figure.unitHow).toBe("from the header");
  });

  it("reads pound-force feet and rad/s", () => {
    const rows = POINTS.map(([speed, torque, figure]) => [speed / 10, torque, figure]);
    const map = mapOf(read(long("speed (rad/s),torque (lb-ft),bsfc (g/kWh)", rows)));
    expect(map.speed).toEqual([100, 500]);
    // 1 lbf·ft = 1.3558179483 N·m (NIST SP 811, appendix B.8)
    expect(map.torque[1]).toBeCloseTo(135.58179483, 6);
  });

  it("guesses units from magnitudes and says so", () => {
    expect(unitsOf(read(long("speed,torque,fuel")))).toEqual([
      "rev/min guessed",
      "N·m assumed",
      "g/kWh guessed",
    ]);
    const others = (scale: number, of: (power: number, bsfc: number) => number) =>
      unitsOf(
        read(
          long(
            "speed,torque,fuel",
            POINTS.map(([n, m, b]) => [n * scale, m, of(rpmToRadPerS(n) * m, b)]),
          ),
        ),
      );
    expect(others(Math.PI / 30, (power, b) => (power * b) / 3.6e6)).toEqual([
      "rad/s guessed",
      "N·m assumed",
      "g/s guessed",
    ]);
    expect(others(1, (power, b) => (power * b) / 1e6)[2]).toBe("kg/h guessed");
    expect(others(1, (_, b) => 8470 / b)[2]).toBe("% guessed");
    expect(others(1, (_, b) => 84.7 / b)[2]).toBe("share guessed");
    expect(others(1, (power, b) => (power * b) / 84.7)[2]).toBe("W guessed");
  });

  it("guesses only among what the name allows", () => {
    const reading = read(long("speed,torque,efficiency"));
    expect(reading.roles.figure.unit).toBe("");
    expect(reading.faults[0]?.what).toContain("not stated");
    expect(reading.faults[0]?.where).toBe('map.csv, row 1, column "efficiency"');
  });

  it("takes what a person chooses before what it finds", () => {
    const text = long(
      "a,b,c,speed",
      POINTS.map(([n, m, b]) => [b, m, n / 10, 7]),
    );
    const reading = read(text, {
      columns: { speed: 3, torque: 2, figure: 1 },
      units: { speed: "rad/s", torque: "N·m", figure: "g/kWh" },
    });
    expect(mapOf(reading).speed).toEqual([100, 500]);
    expect(unitsOf(reading)).toEqual(["rad/s chosen", "N·m chosen", "g/kWh chosen"]);
    expect(reading.roles.speed).toMatchObject({ column: 3, columnHow: "chosen" });
  });

  it("takes unnamed columns in their order, where they are just enough", () => {
    const reading = read(long("a,torque (Nm),b"));
    expect(reading.roles.speed).toMatchObject({ column: 1, columnHow: "assumed" });
    expect(reading.roles.figure).toMatchObject({ column: 3, columnHow: "assumed" });
    const unclear = read(
      long(
        "a,b,c,d",
        POINTS.map((row) => [...row, 1]),
      ),
    );
    expect(unclear.map).toBeNull();
    expect(unclear.faults).toHaveLength(3);
    expect(unclear.faults[0]?.where).toBe("map.csv, row 1");
    expect(unclear.faults[0]?.accepted).toBe("a column named speed (rev/min)");
  });

  it("reads rows in any order, comments, blank lines, quoted cells (RFC 4180), semicolons and decimal commas", () => {
    const text =
      '# measured\r\n"speed; ""n"" (rpm)";torque (Nm);"bsfc\r\n(g/kWh)"\r\n5000;100;260,5\r\n\r\n"1000";20;330\r\n5000;20;420\r\n1000;"100,0";240\r\n';
    const map = mapOf(read(text, { columns: { speed: 1 }, units: { speed: "rev/min" } }));
    expect(map.speed).toEqual([1000, 5000].map(rpmToRadPerS));
    expect(map.torque).toEqual([20, 100]);
    expect(at(at(map.fuelPower, 1), 1)).toBeCloseTo((rpmToRadPerS(5000) * 100 * 260.5 * HEAT) / 3.6e9, 6);
  });

  it("leaves points out at which the figure tells no fuel, and says so", () => {
    const rows = [...POINTS, [1000, 0, 0], [5000, 0, 0]];
    const reading = read(long("speed (rpm),torque (Nm),bsfc (g/kWh)", rows));
    expect(mapOf(reading).torque).toEqual([20, 100]);
    expect(reading.notes[0]).toContain("2 points without power at the shaft left out");
    const flow = [...POINTS.map(([n, m]) => [n, m, (n * m) / 1e5]), [1000, 0, 0.1], [5000, 0, 0.3]];
    expect(mapOf(read(long("speed (rpm),torque (Nm),fuel flow (g/s)", flow))).torque).toEqual([0, 20, 100]);
  });
});

describe("a grid", () => {
  const GRID = "torque (N·m) \\ speed (rev/min) \\ bsfc (g/kWh),1000,5000\n20,330,420\n100,240,260\n";

  it("is the same map as the table of its points", () => {
    const reading = read(GRID);
    expect(reading.layout).toBe("grid");
    expect(mapOf(reading)).toEqual(mapOf(read(long("speed (rpm),torque (Nm),bsfc (g/kWh)"))));
    expect(unitsOf(reading)).toEqual([
      "rev/min from the header",
      "N·m from the header",
      "g/kWh from the header",
    ]);
  });

  it("needs no words in its corner", () => {
    const reading = read(GRID.replace(/^[^,]*/, ""));
    expect(mapOf(reading).torque).toEqual([20, 100]);
    expect(unitsOf(reading)).toEqual(["rev/min guessed", "N·m assumed", "g/kWh guessed"]);
  });

  it.each([
    ["Nm/rpm, efficiency (1)", "share", "0.25"],
    ["N.m | 1/min | fuel power (W)", "W", ""],
    ["rpm; bsfc", "g/kWh", ""],
  ])("reads the corner %s", (corner, figure) => {
    const text = GRID.replace(/^[^,]*/, `"${corner}"`);
    const { roles } = read(text);
    expect(roles.speed.unit).toBe("rev/min");
    expect(roles.figure.unit).toBe(figure);
  });
});

/** The first fault: what, where, found, accepted. */
function fault(text: string, choices?: MapChoices): readonly string[] {
  const reading = read(text, choices);
  expect(reading.map).toBeNull();
  const [first] = reading.faults;
  if (!first) throw new Error("nothing was refused");
  return [first.what, first.where, first.value, first.accepted];
}

const HEADER = "speed (rpm),torque (Nm),bsfc (g/kWh)";
const withRow = (row: string) => `${long(HEADER)}\n${row}`;

describe("refusals tell line, column, value and what would be right", () => {
  it.each([
    ["an empty cell", withRow("3000,,300"), "The cell is empty.", 'map.csv, row 6, column "torque (Nm)"', ""],
    [
      "no number",
      withRow("3000,20,much"),
      "This is not a number.",
      'map.csv, row 6, column "bsfc (g/kWh)"',
      "much",
    ],
    [
      "a negative value",
      withRow("3000,20,-300"),
      "The value is negative.",
      'map.csv, row 6, column "bsfc (g/kWh)"',
      "-300",
    ],
    [
      "a negative speed",
      withRow("-3000,20,300"),
      "The speed is negative.",
      'map.csv, row 6, column "speed (rpm)"',
      "-3000",
    ],
    [
      "a speed beyond all",
      withRow("30000,20,300"),
      "beyond any car's engine",
      'map.csv, row 6, column "speed (rpm)"',
      "30000",
    ],
    [
      "too good",
      withRow("3000,20,80"),
      "The efficiency is 1 or more",
      'map.csv, row 6, column "bsfc (g/kWh)"',
      "80",
    ],
    ["nearly too good", withRow("3000,20,160"), "above 0.5", 'map.csv, row 6, column "bsfc (g/kWh)"', "160"],
    ["a point twice", withRow("1000,20,331"), "stands twice", 'map.csv, row 6, column "bsfc (g/kWh)"', "331"],
    [
      "a point missing",
      withRow("3000,20,331"),
      "The point at 3000 rev/min and 100 N·m is missing.",
      "map.csv",
      "",
    ],
    [
      "falling fuel",
      long(HEADER, [
        [1000, 20, 1300],
        [1000, 100, 240],
        [5000, 20, 420],
        [5000, 100, 260],
      ]),
      "More torque takes no more fuel",
      'map.csv, row 3, column "bsfc (g/kWh)"',
      "240",
    ],
    ["one speed", long(HEADER, POINTS.slice(0, 2)), "too few speeds", "map.csv", "1 speed"],
    ["nothing", "", "The file is empty.", "map.csv", ""],
    ["a header alone", HEADER, "There are no points.", "map.csv", ""],
    ["no text", "a\0b", "not a text file", "map.csv", ""],
    [
      "an open quotation",
      `${long(HEADER)}\n"3000,20,300`,
      "A quotation mark is not closed.",
      "map.csv, row 6",
      "3000,20,300",
    ],
  ])("%s", (_, text, what, where, value) => {
    const found = fault(text);
    expect(found[0]).toContain(what);
    expect(found[1]).toBe(where);
    expect(found[2]).toBe(value);
    expect(found[3]).not.toBe("");
  });

  it("tells bounds in the file's unit", () => {
    // 3.6e9 / (42.5e6 × 0.5) = 169.4 g/kWh; without loss 84.7
    expect(fault(withRow("3000,20,80"))[3]).toBe(
      "at least 169.4 g/kWh; 84.71 g/kWh would be without any loss",
    );
    const percent = long("speed (rpm),torque (Nm),efficiency (%)", [
      ...POINTS.map(([n, m]) => [n, m, 30]),
      [3000, 20, 120],
    ]);
    expect(fault(percent)[3]).toBe("at most 50 %; 100 % would be without any loss");
    const zero = long("speed (rpm),torque (Nm),efficiency (%)", [
      ...POINTS.map(([n, m]) => [n, m, 30]),
      [3000, 20, 0],
    ]);
    expect(fault(zero)[3]).toBe("above 0 %");
  });

  it.each([
    [
      "unordered speeds",
      ",1000,5000,3000\n20,330,420,400\n100,240,260,250",
      "The speeds do not rise.",
      'map.csv, row 1, column "3000"',
      "3000",
      "more than 5000",
    ],
    [
      "unordered torques",
      "Nm,1000,5000\n100,240,260\n20,330,420",
      "The torques do not rise.",
      'map.csv, row 3, column "Nm"',
      "20",
      "more than 100",
    ],
    [
      "a short row",
      ",1000,5000\n20,330\n100,240,260",
      "The cell is empty.",
      'map.csv, row 2, column "5000"',
      "",
      "every cell is needed",
    ],
    [
      "a long row",
      ",1000,5000\n20,330,420,1\n100,240,260",
      "longer than the first one",
      "map.csv, row 2",
      "3 values for 2 speeds",
      "2 values",
    ],
    [
      "a speed missing",
      ",1000,,5000\n20,330,400,420",
      "The cell is empty.",
      'map.csv, row 1, column "3"',
      "",
      "a speed",
    ],
  ])("in a grid: %s", (_, text, what, where, value, accepted) => {
    const found = fault(text);
    expect(found[0]).toContain(what);
    expect(found.slice(1, 3)).toEqual([where, value]);
    expect(found[3]).toContain(accepted);
  });

  it("says once that scattered points are no grid", () => {
    const scattered = Array.from({ length: 30 }, (_, i) => [1000 + 37 * i, 20 + 3 * i, 300]);
    const reading = read(long(HEADER, scattered));
    expect(reading.faults).toHaveLength(1);
    expect(reading.faults[0]?.what).toContain("30 speeds and 30 torques, but 30 points");
  });

  it("refuses at once what is no header", () => {
    const [what, where, value] = fault(`${"(".repeat(1e6)}\n1,2,3`);
    expect(what).toBe("The first row holds no names of columns.");
    expect(where).toBe("map.csv, row 1");
    expect(value).toHaveLength(61);
    expect(fault(`${",1".repeat(501)}\n1,2`)[2]).toBe("502 columns");
  });

  it("stops at ten", () => {
    const bad = Array.from({ length: 40 }, () => ["x", "y", "z"]);
    expect(read(long(HEADER, bad)).faults).toHaveLength(10);
  });
});
