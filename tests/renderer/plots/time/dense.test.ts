import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drawable, drawable } from "../../../../renderer/plots/time/dense.ts";
import { BLOCK, emptyPeak, Peaks } from "../../../../renderer/plots/time/peaks.ts";

const known = (values: Float64Array) => {
  const peaks = new Peaks();
  peaks.extend(values);
  return { values, peaks };
};

const times = (rows: number): Float64Array => Float64Array.from({ length: rows }, (_, i) => i / 10);

/** A day at ten rows a second, quiet but for what a test puts into it. */
const DAY = 864_001;
const day = times(DAY);
const quiet = new Float64Array(DAY);
for (let i = 0; i < DAY; i += 1) quiet[i] = Math.sin(i / 5000);

const curveOf = (drawn: Drawable): number[] => [...(drawn.curves[0] ?? [])];

describe("least and most of a stretch of rows", () => {
  it("are those that one finds row by row, wherever it begins and ends", () => {
    const { values, peaks } = known(Float64Array.from({ length: 40_000 }, (_, i) => (i * 7919) % 10_007));
    const found = emptyPeak();
    fc.assert(
      fc.property(fc.nat(39_990), fc.integer({ min: 1, max: 5 * BLOCK }), (from, length) => {
        const end = Math.min(40_000, from + length);
        peaks.between(values, from, end, found);
        const part = values.subarray(from, end);
        expect(found.least).toBe(Math.min(...part));
        expect(found.most).toBe(Math.max(...part));
        expect(values[found.leastAt]).toBe(found.least);
        expect(found.mostAt).toBeGreaterThanOrEqual(from);
        expect(found.mostAt).toBeLessThan(end);
      }),
      { numRuns: 300 },
    );
  });

  it("follow a curve that grows and whose last row still changes", () => {
    const all = new Float64Array(30_000);
    const peaks = new Peaks();
    const found = emptyPeak();
    for (const rows of [20_032, 20_033, 25_000, 30_000]) {
      all[rows - 1] = 99;
      peaks.extend(all.subarray(0, rows));
      all[rows - 1] = -rows;
      peaks.between(all.subarray(0, rows), 0, rows, found);
      expect(found.most).toBe(0);
      expect(found.least).toBe(-rows);
    }
  });
});

describe("a dense curve", () => {
  it("loses no spike: one single row in a day is drawn at its full height, in its column", () => {
    fc.assert(
      fc.property(fc.nat(DAY - 1), fc.boolean(), fc.integer({ min: 200, max: 4000 }), (row, up, columns) => {
        const before = quiet[row] ?? 0;
        quiet[row] = up ? 50 : -50;
        const drawn = drawable(day, [known(quiet)], 0, DAY - 1, columns);
        quiet[row] = before;
        const points = curveOf(drawn);
        const place = points.indexOf(up ? 50 : -50);
        expect(place).toBeGreaterThanOrEqual(0);
        expect(Math.abs((drawn.time[place] ?? 0) - row / 10)).toBeLessThanOrEqual(DAY / 10 / columns);
      }),
      { numRuns: 6 },
    );
  });

  it("has the least and the most of every column, two points each, in growing times", () => {
    const values = Float64Array.from({ length: 50_000 }, (_, i) => ((i * 7919) % 10_007) - 5000);
    const [first, last, columns] = [1234, 48_765, 700];
    const { time, curves, paired } = drawable(times(50_000), [known(values)], first, last, columns);
    expect(paired).toBe(true);
    expect(time).toHaveLength(2 * columns);
    for (let i = 1; i < time.length; i += 1) expect(time[i]).toBeGreaterThan(time[i - 1] ?? 0);
    const rows = last - first + 1;
    for (let column = 0; column < columns; column += 1) {
      const from = first + Math.floor((column * rows) / columns);
      const end = first + Math.floor(((column + 1) * rows) / columns);
      const part = values.subarray(from, end);
      const pair = [curves[0]?.[2 * column] ?? 0, curves[0]?.[2 * column + 1] ?? 0];
      expect(Math.min(...pair)).toBe(Math.min(...part));
      expect(Math.max(...pair)).toBe(Math.max(...part));
    }
  });

  it("rises and falls in a column as it does in its rows", () => {
    const values = Float64Array.from({ length: 8000 }, (_, i) => (i < 4000 ? i : 8000 - i));
    const points = curveOf(drawable(times(8000), [known(values)], 0, 7999, 100));
    for (let i = 1; i < 99; i += 1) expect(points[i]).toBeGreaterThanOrEqual(points[i - 1] ?? 0);
    for (let i = 102; i < 200; i += 1) expect(points[i]).toBeLessThanOrEqual(points[i - 1] ?? 0);
  });

  it("is the log itself, uncopied, where there are few rows", () => {
    const curve = known(quiet);
    const drawn = drawable(day, [curve], 1000, 1500, 700);
    expect(drawn.paired).toBe(false);
    expect(drawn.time.buffer).toBe(day.buffer);
    expect((drawn.curves[0] as Float64Array).buffer).toBe(quiet.buffer);
    expect(drawn.curves[0]?.[0]).toBe(quiet[1000]);
    expect(drawn.curves[0]).toHaveLength(501);
  });
});
