import { describe, expect, it } from "vitest";
import { NumberReader } from "../../../cycles/import/numbers.ts";

describe("NumberReader", () => {
  it.each([
    ["12", 12],
    [" 1.5 ", 1.5],
    ["+3", 3],
    ["-0.25", -0.25],
    [".5", 0.5],
    ["5.", 5],
    ["1e-3", 0.001],
    ["-0.0", 0],
    ["1,5", 1.5],
    ["1,5E2", 150],
  ])("reads %j", (cell, value) => {
    expect(new NumberReader().read(cell)).toEqual({ value });
  });

  it.each([
    ["", "empty"],
    ["  ", "empty"],
    ["abc", "not a number"],
    ["NaN", "not a number"],
    ["12 km/h", "not a number"],
    ["1.234,5", "not a number"],
    ["1,234,567", "not a number"],
    ["0x10", "not a number"],
    ["1_000", "not a number"],
    ["--1", "not a number"],
    [".", "not a number"],
    ["Infinity", "infinite"],
    ["-inf", "infinite"],
    ["1e999", "infinite"],
  ])("refuses %j", (cell, said) => {
    expect(new NumberReader().read(cell)).toEqual({ fault: expect.stringContaining(said) });
  });

  it("holds a file to its first decimal sign", () => {
    const comma = new NumberReader();
    expect(comma.mark).toBe("point");
    expect(comma.read("3")).toEqual({ value: 3 });
    expect(comma.read("3,5")).toEqual({ value: 3.5 });
    expect(comma.mark).toBe("comma");
    expect(comma.read("3.5")).toEqual({ fault: expect.stringContaining("decimals with a comma") });
    expect(comma.mark).toBe("comma");
  });
});
