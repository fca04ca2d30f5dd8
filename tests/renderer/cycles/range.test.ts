import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { curveRange, isLevel } from "../../../renderer/cycles/plot/range.ts";
import { LEAST_STRETCH, stretchBetween } from "../../../renderer/cycles/plot/window.ts";

const speeds = fc
  .array(fc.double({ min: -10, max: 60, noNaN: true }), { minLength: 2, maxLength: 30 })
  .map((list) => Float64Array.from(list));

describe("the range of a curve", () => {
  it("holds the whole cycle and zero, and is never flat", () => {
    fc.assert(
      fc.property(speeds, fc.option(speeds), (values, before) => {
        const { least, most } = curveRange(values, before, 3.6, 1 / 3.6);
        expect(least).toBeLessThanOrEqual(Math.min(0, ...values));
        expect(most).toBeGreaterThanOrEqual(Math.max(0, ...values) - 1e-9);
        expect(most - least).toBeGreaterThan(0);
      }),
    );
  });

  it("lets a wild recorded value run out of the picture", () => {
    const calm = Float64Array.of(0, 20, 0);
    const wild = Float64Array.of(0, 500, 0);
    expect(curveRange(calm, wild, 3.6, 0.1).most).toBeLessThan(50);
    expect(curveRange(calm, Float64Array.of(0, 22, 0), 3.6, 0.1).most).toBeGreaterThanOrEqual(22);
  });

  it("knows a level road", () => {
    expect(isLevel(Float64Array.of(0, 0))).toBe(true);
    expect(isLevel(Float64Array.of(0, 0.01))).toBe(false);
  });
});

describe("a chosen stretch", () => {
  it("lies in the drive, in order, in tenths of a second, or is none", () => {
    const time = fc.double({ min: -50, max: 500, noNaN: true });
    fc.assert(
      fc.property(time, time, (one, other) => {
        const found = stretchBetween(one, other, 300);
        if (!found) return;
        expect(found.from).toBeGreaterThanOrEqual(0);
        expect(found.to).toBeLessThanOrEqual(300);
        expect(found.to - found.from).toBeGreaterThanOrEqual(LEAST_STRETCH);
        expect(Math.round(found.from * 10) / 10).toBe(found.from);
      }),
    );
    expect(stretchBetween(10, 10.4, 300)).toBeNull();
    expect(stretchBetween(40, 10, 300)).toEqual({ from: 10, to: 40 });
  });
});
