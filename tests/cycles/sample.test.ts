import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sample, stretchAt, TraceCursor } from "../../cycles/sample.ts";
import { at } from "../../shared/at.ts";
import { traceOf } from "./trace-of.ts";

const trace = traceOf([
  [0, 0, 0],
  [2, 10, 0.1],
  [2.5, 10, -0.1],
  [10, -5, 0],
]);

/** Random traces with uneven steps. */
const anyTrace = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      fc.double({ min: -10, max: 60, noNaN: true }),
      fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    ),
    { minLength: 2, maxLength: 40 },
  )
  .map((steps) => {
    let time = 0;
    return traceOf(
      steps.map(([step, speed, grade], i) => {
        if (i > 0) time += step;
        return [time, speed, grade];
      }),
    );
  });

describe("sample", () => {
  it.each([
    [-1, 0, 0],
    [0, 0, 0],
    [1, 5, 0.05],
    [2, 10, 0.1],
    [2.25, 10, 0],
    [7.5, 0, -1 / 30],
    [10, -5, 0],
    [99, -5, 0],
  ])("at %d s", (t, speed, grade) => {
    expect(sample(trace, t).speed).toBeCloseTo(speed, 12);
    expect(sample(trace, t).grade).toBeCloseTo(grade, 12);
  });

  it("gives every sample exactly", () => {
    fc.assert(
      fc.property(anyTrace, (any) => {
        any.time.forEach((t, i) => {
          expect(sample(any, t)).toEqual({ speed: at(any.speed, i), grade: at(any.grade, i) });
        });
      }),
    );
  });

  it("stays between its neighbours", () => {
    fc.assert(
      fc.property(anyTrace, fc.double({ min: 0, max: 1, noNaN: true }), (any, share) => {
        const t = share * at(any.time, any.time.length - 1);
        const i = stretchAt(any.time, t);
        const ends = [at(any.speed, i), at(any.speed, i + 1)];
        const { speed } = sample(any, t);
        expect(speed).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-12);
        expect(speed).toBeLessThanOrEqual(Math.max(...ends) + 1e-12);
      }),
    );
  });
});

describe("TraceCursor", () => {
  it("agrees with sample at any times in any order", () => {
    fc.assert(
      fc.property(
        anyTrace,
        fc.array(fc.double({ min: -5, max: 500, noNaN: true }), { maxLength: 60 }),
        (any, times) => {
          const cursor = new TraceCursor(any);
          for (const t of times) {
            expect({ speed: cursor.speedAt(t), grade: cursor.gradeAt(t) }).toEqual(sample(any, t));
          }
        },
      ),
    );
  });

  it("goes back after having been at the end", () => {
    const cursor = new TraceCursor(trace);
    expect(cursor.speedAt(10)).toBe(-5);
    expect(cursor.speedAt(1)).toBe(5);
    expect(cursor.gradeAt(2)).toBe(0.1);
  });
});
