import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../shared/errors.ts";
import { benchAt } from "../../../sim/bench/bench.ts";
import { evaluate, holds, workingFor } from "../../../sim/lesson/evaluate.ts";
import { dimensionOf } from "../../../sim/lesson/expression/dimension.ts";
import { parseCondition, parseExpression } from "../../../sim/lesson/expression/parse.ts";
import { hintLevels, hintOf } from "../../../sim/lesson/hint.ts";
import type { Stage } from "../../../sim/lesson/quantities/quantity.ts";
import { QUANTITIES } from "../../../sim/lesson/quantities/registry.ts";
import { DIMENSION, LESSON_UNITS, unitById } from "../../../sim/lesson/units.ts";
import { plainTokens } from "../../../sim/lesson/working.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const TURN = (2 * Math.PI) / 60;

/** Carrier 2000, ring 1000, sun 4500 rev/min; engine 70 N·m. */
const stage = (): Stage => {
  const vehicle = vehicleById("compact");
  const speeds = { sun: 4500 * TURN, carrier: 2000 * TURN, ring: 1000 * TURN };
  return {
    kind: "bench",
    vehicle,
    point: benchAt(vehicle, { speeds, engineTorque: 70, outputTorque: null }),
  };
};
const here = () => stage();

const value = (source: string): number => evaluate(parseExpression(source), here);
const truth = (source: string): boolean => holds(parseCondition(source), here);

describe("expressions", () => {
  it("follow the usual order, signs and brackets", () => {
    expect(value("2 + 3 × 4")).toBe(14);
    expect(value("(2 + 3) * 4 / 10")).toBe(2);
    expect(value("-2 − -3")).toBe(1);
    expect(value("8 / 2 / 2")).toBe(2);
    expect(value("abs(2 - 5)")).toBe(3);
    expect(value("5 kW / 1000 W")).toBe(5);
    expect(value("30 % × 10")).toBeCloseTo(3, 12);
    expect(value("60 rev/min")).toBeCloseTo(2 * Math.PI, 12);
  });

  it("name quantities, the longest name first", () => {
    expect(value("sun speed") / TURN).toBeCloseTo(4500, 9);
    expect(value("sun speed limit")).toBe(1100);
    expect(value("ring torque")).toBeCloseTo(-50, 12);
    expect(value("ring torque share")).toBeCloseTo(2.5 / 3.5, 12);
    expect(value("basic ratio × sun teeth")).toBe(100);
  });

  it("compare within rounding, and join with and", () => {
    expect(truth("sun speed > ring speed")).toBe(true);
    expect(truth("sun power < 0 and ring power < 0")).toBe(true);
    expect(truth("sun power < 0 and ring power > 0")).toBe(false);
    expect(truth("0.1 + 0.2 = 0.3")).toBe(true);
    expect(truth("0.1 + 0.2 > 0.3")).toBe(false);
    expect(truth("0.001 L/100 km < 0.002 L/100 km")).toBe(true);
    expect(truth("regime is split-below-direct")).toBe(true);
    expect(truth("always")).toBe(true);
    expect(truth("never")).toBe(false);
  });

  it.each([
    "",
    "sun",
    "sun speed +",
    "(1",
    "1)",
    "2 sun speed",
    "sun speed # 2",
    "of a",
    "fuel raw of",
    "(((((".repeat(20),
  ])("refuse %j with what would be right", (source) => {
    expect(() => parseExpression(source)).toThrow(InputError);
  });

  it("know the dimension of their value", () => {
    expect(dimensionOf(parseExpression("sun torque × sun speed"))).toEqual(DIMENSION.power);
    expect(dimensionOf(parseExpression("sun power / sun speed"))).toEqual(DIMENSION.torque);
    expect(dimensionOf(parseExpression("fuel raw of a / fuel raw of b"))).toEqual(DIMENSION.number);
    expect(() => dimensionOf(parseExpression("sun torque + sun speed"))).toThrow(/different/);
  });

  it("evaluate like ordinary arithmetic", () => {
    const leaf = fc.integer({ min: 1, max: 99 }).map((n) => String(n));
    const tree = fc.letrec<{ e: string }>((tie) => ({
      e: fc.oneof(
        { depthSize: "small" },
        leaf,
        fc
          .tuple(tie("e"), fc.constantFrom("+", "-", "*", "/"), tie("e"))
          .map(([a, o, b]) => `(${a} ${o} ${b})`),
      ),
    })).e;
    fc.assert(
      fc.property(tree, (source) => {
        // The reference is the language's own arithmetic.
        const expected = new Function(`return ${source}`)() as number;
        const got = value(source);
        expect(Object.is(got, expected) || Math.abs(got - expected) <= 1e-12 * Math.abs(expected)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});

describe("quantities", () => {
  it("have names that are their own, and a unit of their measure", () => {
    expect(new Set(QUANTITIES.map(({ name }) => name)).size).toBe(QUANTITIES.length);
    for (const { name, bench, run, moment, meaning } of QUANTITIES) {
      expect(bench ?? run ?? moment, name).not.toBeNull();
      expect(meaning).not.toBe("");
    }
  });

  it("of the bench show in their working the numbers that give the result", () => {
    for (const { name, unit, bench } of QUANTITIES) {
      if (!bench) continue;
      const working = workingFor(parseExpression(name), here, unit);
      expect(plainTokens(working.formula), name).not.toBe("");
      expect(
        working.live.some(({ kind }) => kind === "number"),
        name,
      ).toBe(true);
      expect(working.result.text, name).not.toContain("–");
    }
  });

  it("units are there and back the same", () => {
    for (const { id, toSi, fromSi } of LESSON_UNITS) {
      if (id === "mpg") continue;
      for (const x of [-3.7, 0, 12, 4500]) expect(fromSi(toSi(x)), id).toBeCloseTo(x, 9);
    }
  });
});

describe("hints", () => {
  const working = workingFor(parseExpression("sun speed"), here, unitById("rev/min"));

  it("start with the formula and fill one blank a push", () => {
    const blanks = (level: number): number =>
      hintOf(working, level)
        .lines.flat()
        .filter(({ kind }) => kind === "blank").length;
    // 3.5 × 2000 − 2.5 × 1000: four numbers, then the result.
    expect(hintLevels(working)).toBe(6);
    expect([1, 2, 3, 4, 5, 6].map(blanks)).toEqual([4, 3, 2, 1, 1, 0]);
    expect(hintOf(working, 0)).toEqual(hintOf(working, 1));
    expect(hintOf(working, 99)).toEqual(hintOf(working, 6));
  });

  it("mark the next blank, and only it", () => {
    for (let level = 1; level < hintLevels(working); level += 1) {
      const next = hintOf(working, level)
        .lines.flat()
        .filter((token) => token.kind === "blank" && token.next);
      expect(next).toHaveLength(1);
    }
  });

  it("do not tell the result before the last push", () => {
    const said = (level: number): string => JSON.stringify(hintOf(working, level));
    expect(said(5)).not.toContain("4\u202f500");
    expect(said(6)).toContain("4\u202f500");
  });
});
