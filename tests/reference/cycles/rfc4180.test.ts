/**
 * RFC 4180, "Common Format and MIME Type for Comma-Separated Values (CSV) Files", section 2, rule by rule; the rules are
 * from memory, the rows are our own.
 */
import { describe, expect, it } from "vitest";
import { importCsv } from "../../../cycles/import/csv.ts";
import { InputError } from "../../../shared/errors.ts";

const rows = (text: string): number[][] => {
  const { time, speed } = importCsv(text, { fileName: "a.csv" }).trace;
  return [...time].map((t, i) => [t, speed[i] ?? Number.NaN]);
};
const EXPECTED = [
  [0, 1],
  [1, 2],
];

describe("RFC 4180, section 2", () => {
  it.each([
    ["1: each record on a line of its own, ended by CRLF", "time_s,speed_mps\r\n0,1\r\n1,2\r\n"],
    ["2: the last record may or may not end with a line break", "time_s,speed_mps\r\n0,1\r\n1,2"],
    ["3: a header line of the same format", '"time_s","speed_mps"\r\n0,1\r\n1,2\r\n'],
    ["5: each field may or may not be in quotation marks", 'time_s,speed_mps\r\n"0",1\r\n1,"2"\r\n'],
    [
      "6: line breaks, quotation marks and commas stand in quoted fields",
      'time_s,note,speed_mps\r\n0,"a, ""b""\r\nc",1\r\n1,"",2\r\n',
    ],
    [
      "7: a quotation mark in a quoted field is written twice",
      'time_s,"a ""b""",speed_mps\r\n0,"""",1\r\n1,x,2\r\n',
    ],
  ])("%s", (_, text) => {
    expect(rows(text)).toEqual(EXPECTED);
  });

  it("4: spaces are a part of a field; numbers bear them, and a comma must not follow the last field", () => {
    expect(rows("time_s,speed_mps\r\n 0, 1\r\n1 ,2 \r\n")).toEqual(EXPECTED);
    // A field too many is read as an unnamed one; a field too few is refused, since the row would have no speed.
    expect(() => rows("time_s,speed_mps\r\n0,1\r\n1\r\n")).toThrow(InputError);
  });

  it("5: a quotation mark that is never closed is refused", () => {
    expect(() => rows('time_s,speed_mps\r\n0,"1\r\n1,2\r\n')).toThrow(InputError);
  });
});
