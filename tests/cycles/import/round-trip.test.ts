import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { importCsv } from "../../../cycles/import/csv.ts";
import { findUnit } from "../../../cycles/quantities.ts";
import { InputError } from "../../../shared/errors.ts";

/** A drive and a way to write it down. */
const file = fc.record({
  rows: fc.array(
    fc.record({
      step: fc.double({ min: 1e-3, max: 100, noNaN: true }),
      speed: fc.double({ min: -20, max: 100, noNaN: true }),
      grade: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    }),
    { minLength: 2, maxLength: 50 },
  ),
  start: fc.constantFrom(0, 0.5, 1234),
  unit: fc.constantFrom("km/h", "mph", "m/s"),
  delimiter: fc.constantFrom(",", ";", "\t", "|"),
  comma: fc.boolean(),
  quoted: fc.boolean(),
  lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
  mark: fc.constantFrom("", "\uFEFF"),
  noise: fc.constantFrom("", "# comment", "   "),
});

describe("writing a drive and importing it", () => {
  it("gives the same numbers, however it was written", () => {
    fc.assert(
      fc.property(file, ({ rows, start, unit, delimiter, comma, quoted, lineEnd, mark, noise }) => {
        const cell = (value: number): string => {
          const text = comma ? String(value).replace(".", ",") : String(value);
          // A decimal comma between commas only survives in quotation marks.
          return quoted || (comma && delimiter === ",") ? `"${text}"` : text;
        };
        let time = start;
        const drive = rows.map((row, k) => {
          if (k > 0) time += row.step;
          // Adding 0 turns -0 into 0, as the import does.
          return { time, speed: row.speed + 0, grade: row.grade + 0 };
        });
        const lines = drive.map((row) => [row.grade, row.time, row.speed].map(cell).join(delimiter));
        const header = ["grade [-]", "t [s]", `v [${unit}]`].join(delimiter);
        const text = mark + [noise, header, noise, ...lines, noise].join(lineEnd);

        const { trace, report } = importCsv(text, { fileName: "drive.csv" });
        const known = findUnit("speed", unit);
        expect([...trace.time]).toEqual(drive.map((row) => row.time - start));
        expect([...trace.speed]).toEqual(drive.map((row) => known?.toSi(row.speed)));
        expect([...trace.grade]).toEqual(drive.map((row) => row.grade));
        expect(report.delimiter).toBe(delimiter);
        expect(report.speed.unit).toBe(unit);
      }),
      { numRuns: 300 },
    );
  });
});

describe("any text at all", () => {
  const cells = fc.constantFrom(
    "t",
    "km/h",
    "speed",
    '"',
    ",",
    ";",
    "\n",
    "\r",
    "0",
    "1",
    "2.5",
    "1,5",
    "x",
    "#",
    "\t",
    "-",
  );
  const text = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(cells).map((parts) => parts.join("")),
  );

  it("is either read into a sound trace or refused with an InputError", () => {
    fc.assert(
      fc.property(text, (any) => {
        try {
          const { time, speed } = importCsv(`t,km/h\n${any}`, { fileName: "any" }).trace;
          expect(time.length).toBeGreaterThanOrEqual(2);
          expect(time.every((t, i) => i === 0 || t > (time[i - 1] ?? Number.NaN))).toBe(true);
          expect(speed.every(Number.isFinite)).toBe(true);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          expect(error.faults.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
