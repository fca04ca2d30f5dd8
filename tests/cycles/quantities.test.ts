import { describe, expect, it } from "vitest";
import { type Dimension, findUnit, unitChoice, unitsOf } from "../../cycles/quantities.ts";

const DIMENSIONS: readonly Dimension[] = ["time", "speed", "grade", "acceleration", "length", "count"];

describe("units", () => {
  it.each([
    ["speed", "km/h", 36, 10],
    ["speed", "KMH", 36, 10],
    ["speed", "m_s", 10, 10],
    ["speed", "mph", 100, 44.704],
    ["grade", "%", 5, 0.05],
    ["grade", "deg", 45, 1],
    ["grade", "rise/run", 0.05, 0.05],
    ["time", "ms", 1500, 1.5],
    ["time", "min", 2, 120],
    ["length", "km", 3, 3000],
    ["acceleration", "m/s²", 2, 2],
  ] as const)("%s in %s: %d is %d", (dimension, text, written, si) => {
    expect(findUnit(dimension, text)?.toSi(written)).toBeCloseTo(si, 12);
  });

  it.each(["km", "furlong", "", "knots", "m/s2"])("knows no speed in %j", (text) => {
    expect(findUnit("speed", text)).toBeNull();
  });

  it.each(DIMENSIONS)("%s: no spelling stands for two units", (dimension) => {
    const all = unitsOf(dimension).flatMap((unit) => [unit.id, ...unit.spellings]);
    expect(new Set(all).size).toBe(all.length);
    for (const spelling of all) expect(findUnit(dimension, spelling)).not.toBeNull();
  });

  it("lists its choice for messages", () => {
    expect(unitChoice("speed")).toBe("km/h, mph or m/s");
    expect(unitChoice("acceleration")).toBe("m/s2");
    expect(unitChoice("count")).toBe("no unit");
  });
});
