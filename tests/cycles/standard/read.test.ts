import { describe, expect, it } from "vitest";
import { readTable } from "../../../cycles/standard/read.ts";
import { phasesUpTo, type StandardTable } from "../../../cycles/standard/table.ts";

const table = (csv: string, unit: "mph" | "km/h" = "km/h"): StandardTable => ({
  id: "test",
  title: "Test",
  publishedIn: "nowhere",
  unit,
  duration: 1,
  standing: "",
  treatment: [],
  phases: [],
  phasesAlone: false,
  csv,
});

describe("readTable", () => {
  it("turns the regulation's unit into m/s", () => {
    expect([...readTable(table("time_s,speed_kmh\n0,0.0\n1,36.0\n")).speed]).toEqual([0, 10]);
    // 1 mph = 0.44704 m/s exactly, NIST SP 811
    expect(readTable(table("time_s,speed_mph\n0,0.0\n1,100.0\n", "mph")).speed[1]).toBeCloseTo(44.704, 12);
  });

  it("reads a checkout with carriage returns alike", () => {
    expect([...readTable(table("time_s,speed_kmh\r\n0,0.0\r\n1,36.0\r\n")).speed]).toEqual([0, 10]);
  });

  it.each([
    ["another header", "t,v\n0,0.0\n", 'header "t,v"'],
    ["a second left out", "time_s,speed_kmh\n0,0.0\n2,1.0\n", "line 3"],
    ["a word", "time_s,speed_kmh\n0,0.0\n1,fast\n", "line 3"],
    ["a third column", "time_s,speed_kmh\n0,0.0,1\n", "line 2"],
  ])("stops at %s", (_, csv, said) => {
    expect(() => readTable(table(csv))).toThrow(said);
  });
});

describe("phasesUpTo", () => {
  it("joins phases without a gap", () => {
    expect(phasesUpTo(["a", "A", 3], ["b", "B", 7])).toEqual([
      { id: "a", title: "A", start: 0, end: 3 },
      { id: "b", title: "B", start: 3, end: 7 },
    ]);
  });
});
