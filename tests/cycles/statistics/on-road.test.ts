import { describe, expect, it } from "vitest";
import { drivingDynamics } from "../../../cycles/statistics/on-road.ts";
import { percentile } from "../../../cycles/statistics/percentile.ts";
import { traceOf } from "../trace-of.ts";

describe("percentile", () => {
  it("sorts as numbers, not as text", () => {
    expect(percentile([100, 9, 2, 0.5, 10], 0.5)).toBe(9);
  });

  it.each([
    [0, 1],
    [1, 5],
    [0.5, 3],
    [0.95, 4.8],
    [0.1, 1.4],
  ])("at %d of 1 … 5 is %d", (share, value) => {
    expect(percentile([5, 3, 1, 2, 4], share)).toBeCloseTo(value, 12);
  });

  it("has the single value everywhere, leaves its input alone, and is not a number without any", () => {
    expect(percentile([7], 0.95)).toBe(7);
    const values = [3, 1, 2];
    percentile(values, 0.5);
    expect(values).toEqual([3, 1, 2]);
    expect(percentile([], 0.5)).toBeNaN();
  });
});

describe("drivingDynamics", () => {
  it("multiplies speed and acceleration second by second", () => {
    // Inner samples of an even rise of 1 m/s² from 0 to 10 m/s: products 1, 2 … 9 m²/s³ over 55 m of samples.
    const rise = traceOf([
      [0, 0],
      [10, 10],
    ]);
    const { relativePositiveAcceleration, brisk95 } = drivingDynamics(rise);
    expect(brisk95).toBeCloseTo(8.6, 9);
    expect(relativePositiveAcceleration).toBeCloseTo(45 / 55, 9);
  });

  it("leaves out rises up to 0.1 m/s² and slowing down", () => {
    const gentle = traceOf([
      [0, 10],
      [50, 14.9],
      [60, 0],
    ]);
    expect(drivingDynamics(gentle)).toEqual({ relativePositiveAcceleration: 0, brisk95: 0 });
  });

  it("gives zeros for standing", () => {
    const still = traceOf([
      [0, 0],
      [5, 0],
    ]);
    expect(drivingDynamics(still)).toEqual({ relativePositiveAcceleration: 0, brisk95: 0 });
  });
});
