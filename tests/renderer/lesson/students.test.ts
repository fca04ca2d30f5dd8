import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  LARGEST_SEED,
  MOST_SHEETS,
  readCount,
  readNames,
  readSeed,
  studentsOf,
} from "../../../renderer/lesson/students.ts";

const named = (n: number): string => `Student ${n}`;

describe("for whom a handout is", () => {
  it("reads every seed of 32 bits and nothing else", () => {
    fc.assert(
      fc.property(fc.nat(LARGEST_SEED), (seed) => {
        expect(readSeed(` ${seed} `)).toBe(seed);
      }),
    );
    for (const bad of ["", "-1", "1.5", "4294967296", "99999999999", "1e3", "seven"])
      expect(readSeed(bad), bad).toBeNull();
  });

  it("reads a number of sheets within reason", () => {
    expect(readCount("1")).toBe(1);
    expect(readCount(String(MOST_SHEETS))).toBe(MOST_SHEETS);
    for (const bad of ["0", String(MOST_SHEETS + 1), "", "2.5", "-3"]) expect(readCount(bad), bad).toBeNull();
  });

  it("takes names from lines, whatever ends them", () => {
    expect(readNames("Ada Lindqvist\r\n\r\n  Ben Okoro \rCleo\n")).toEqual([
      "Ada Lindqvist",
      "Ben Okoro",
      "Cleo",
    ]);
  });

  it("is nobody, so many, or those named", () => {
    expect(studentsOf("one", "x", "Ada", named)).toEqual([]);
    expect(studentsOf("count", "2", "Ada", named)).toEqual(["Student 1", "Student 2"]);
    expect(studentsOf("count", "none", "Ada", named)).toBeNull();
    expect(studentsOf("names", "none", "Ada\nBen", named)).toEqual(["Ada", "Ben"]);
  });
});
