import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../cycles/catalogue.ts";
import { crop, resample } from "../../cycles/edit.ts";
import { sample } from "../../cycles/sample.ts";
import { statistics } from "../../cycles/statistics/basics.ts";
import { at } from "../../shared/at.ts";
import { faultsOf } from "./faults-of.ts";
import { traceOf } from "./trace-of.ts";

const trace = traceOf(
  [
    [0, 0, 0],
    [10, 20, 0.1],
    [20, 20, 0],
    [30, 0, 0],
  ],
  {
    phases: [
      { id: "a", title: "A", start: 0, end: 12 },
      { id: "b", title: "B", start: 12, end: 30 },
    ],
    soaks: [{ start: 28, end: 30 }],
  },
);

describe("crop", () => {
  it("finds its ends on the straight lines, starts at 0 and says so", () => {
    const cropped = crop(trace, { start: 5, end: 15 });
    expect([...cropped.time]).toEqual([0, 5, 10]);
    expect([...cropped.speed]).toEqual([10, 20, 20]);
    expect([...cropped.grade]).toEqual([0.05, 0.1, 0.05]);
    expect(cropped.treatment).toEqual(["Cut to 5 to 15 s; time counted from the cut."]);
  });

  it("cuts phases and soaks along and drops those outside", () => {
    const cropped = crop(trace, { start: 20, end: 29 });
    expect(cropped.phases).toEqual([{ id: "b", title: "B", start: 0, end: 9 }]);
    expect(cropped.soaks).toEqual([{ start: 8, end: 9 }]);
  });

  it("leaves the original alone", () => {
    crop(trace, { start: 5, end: 15 });
    expect(trace.time.length).toBe(4);
    expect(trace.treatment).toEqual([]);
  });

  it.each([
    { start: -1, end: 5 },
    { start: 5, end: 31 },
    { start: 5, end: 5 },
    { start: 9, end: 3 },
    { start: Number.NaN, end: 3 },
  ])("refuses $start to $end s", (span) => {
    const [fault] = faultsOf(() => crop(trace, span));
    expect(fault?.value).toBe(`${span.start} to ${span.end} s`);
    expect(fault?.accepted).toContain("from 0 to 30 s");
  });

  it("loses no way when a cycle is cut in two", () => {
    const udds = cycleById("udds");
    const whole = statistics(udds).distance;
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1368, noNaN: true }), (t) => {
        const parts = [
          { start: 0, end: t },
          { start: t, end: 1369 },
        ].map((span) => statistics(crop(udds, span)).distance);
        expect(Math.abs(at(parts, 0) + at(parts, 1) - whole)).toBeLessThan(1e-6);
      }),
      { numRuns: 30 },
    );
  });
});

describe("resample", () => {
  it("keeps the end though the step does not fit", () => {
    const even = resample(trace, 7);
    expect([...even.time]).toEqual([0, 7, 14, 21, 28, 30]);
    expect(at(even.speed, 1)).toBeCloseTo(14, 12);
    expect(even.treatment).toEqual(["Sampled anew every 7 s by straight lines."]);
    expect(even.phases).toEqual(trace.phases);
  });

  it("makes no double sample at the end when the step does fit but for rounding", () => {
    // In binary arithmetic 2.1 / 0.7 is a little more than 3.
    const short = traceOf([
      [0, 0],
      [2.1, 21],
    ]);
    expect(resample(short, 0.7).time.length).toBe(4);
    expect(resample(trace, 100).time.length).toBe(2);
  });

  it("lies on the original lines and rises strictly for any step", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 60, noNaN: true }), (step) => {
        const even = resample(trace, step);
        even.time.forEach((t, i) => {
          expect(at(even.speed, i)).toBe(sample(trace, t).speed);
          if (i > 0) expect(t).toBeGreaterThan(at(even.time, i - 1));
        });
        expect(at(even.time, even.time.length - 1)).toBe(30);
      }),
    );
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-6])("refuses a step of %d s", (step) => {
    expect(faultsOf(() => resample(trace, step))[0]?.value).toBe(`${step} s`);
  });
});
