import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { curvePath } from "../../../renderer/lesson/curve.ts";

const frame = { left: 40, right: 340, top: 0, bottom: 100 };

const pointsOf = (path: string): number[][] =>
  path
    .slice(1)
    .split("L")
    .map((point) => point.split(" ").map(Number));

describe("a long curve as a path", () => {
  it("keeps the highest and the lowest value, and at most two points a pixel", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: 2, maxLength: 3000 }),
        (list) => {
          const values = Float64Array.from(list);
          const time = Float64Array.from(list, (_, i) => i / 10);
          const points = pointsOf(curvePath(time, values, frame, 0, 50));
          const heights = points.map(([, y = Number.NaN]) => y);
          const y = (value: number): number => Number((100 - 2 * value).toFixed(1));
          expect(Math.min(...heights)).toBe(y(Math.max(...list)));
          expect(Math.max(...heights)).toBe(y(Math.min(...list)));
          expect(points.length).toBeLessThanOrEqual(2 * (frame.right - frame.left + 1));
          const across = points.map(([x = Number.NaN]) => x);
          expect([...across].sort((a, b) => a - b)).toEqual(across);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("is nothing where there is no room or no curve", () => {
    expect(curvePath(new Float64Array(), new Float64Array(), frame, 0, 1)).toBe("");
    expect(curvePath(Float64Array.of(0, 1), Float64Array.of(0, 1), { ...frame, right: 40 }, 0, 1)).toBe("");
  });
});
