import { describe, expect, it } from "vitest";
import { declarationAt, groupFields, parameterTable } from "../../../sim/vehicle/declarations.ts";
import { nearest } from "../../../sim/vehicle/nearest.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";

/** Every path of a value that is no group. */
function leaves(value: unknown, path = ""): string[] {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return [path];
  return Object.entries(value).flatMap(([name, part]) =>
    leaves(part, path === "" ? name : `${path}.${name}`),
  );
}

describe("parameterTable", () => {
  const rows = parameterTable();

  it("has a row for every field of a vehicle, and the map's", () => {
    const map = ["engine.map.speed", "engine.map.torque", "engine.map.fuelPower"];
    expect(rows.map((row) => row.path).sort()).toEqual([...leaves(readVehicle({}, "")), ...map].sort());
  });

  it("tells meaning, unit, range and a default inside it", () => {
    for (const row of rows) {
      expect(row.meaning.length, row.path).toBeGreaterThan(3);
      if (row.min === null || row.max === null) continue;
      expect(row.unit, row.path).not.toBe("");
      const values = [row.default].flat().filter((value) => typeof value === "number");
      for (const value of values) {
        expect(value, row.path).toBeGreaterThanOrEqual(row.min);
        expect(value, row.path).toBeLessThanOrEqual(row.max);
      }
    }
  });

  it("shows a number, a choice and the absent map as they are declared", () => {
    const of = (path: string) => rows.find((row) => row.path === path);
    expect(of("body.mass")).toEqual({
      path: "body.mass",
      kind: "number",
      meaning: "test mass, driver included, payload not",
      unit: "kg",
      min: 300,
      max: 12000,
      options: [],
      default: 1530,
    });
    expect(of("body.roadLoad")).toMatchObject({
      options: ["formula", "coastdown"],
      default: "formula",
      unit: "",
    });
    expect(of("engine.map.speed")).toMatchObject({ kind: "column", default: null });
  });

  it("finds groups and parameters by path", () => {
    expect(groupFields("finalDrive")).toEqual(["ratio", "efficiency"]);
    expect(groupFields("engine.map")).toEqual(["speed", "torque", "fuelPower"]);
    expect(groupFields("body.mass")).toEqual([]);
    expect(groupFields("constructor")).toEqual([]);
    expect(declarationAt("body")).toBeUndefined();
  });
});

describe("nearest", () => {
  it("counts edits, letter case free, and knows nothing in an empty list", () => {
    expect(nearest("MASS", ["drag", "mass"])).toBe("mass");
    expect(nearest("rato", ["efficiency", "ratio"])).toBe("ratio");
    expect(nearest("", ["longer", "ab"])).toBe("ab");
    expect(nearest("x", [])).toBeUndefined();
    expect(nearest("a".repeat(1e6), ["a"])).toBe("a");
  });
});
