import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { laidOver, recordedAt } from "../../../../renderer/plots/time/laid-over.ts";
import { timeLayout } from "../../../../renderer/plots/time/layout.ts";
import { placedTicks, tickDecimals, timeTicks, valueTicks } from "../../../../renderer/plots/time/ticks.ts";
import { followed, LEAST_WINDOW, moved, zoomed } from "../../../../renderer/plots/time/window.ts";
import { num } from "../../../../renderer/state/format.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("ticks of values", () => {
  it("are round, within the range, one to four, with zero among them where it lies inside", () => {
    fc.assert(
      fc.property(
        real(-1e5, 1e5),
        real(1e-3, 1e5),
        fc.constantFrom(1, 1e-3, 3.6, 100, 30 / Math.PI),
        real(1, 6),
        (least, wide, times, count) => {
          const range = { least: least / times, most: (least + wide) / times };
          const ticks = valueTicks(range, times, count);
          expect(ticks.length).toBeLessThanOrEqual(4);
          const shown = ticks.map((value) => value * times);
          for (const value of shown) {
            expect(value).toBeGreaterThanOrEqual(least - 1e-6 * wide);
            expect(value).toBeLessThanOrEqual(least + wide + 1e-6 * wide);
          }
          if (least < 0 && least + wide > 0) expect(shown.some((value) => Math.abs(value) < 1e-9)).toBe(true);
          const said = shown.map((value) => num(value, tickDecimals(ticks, times)));
          expect(new Set(said).size).toBe(ticks.length);
        },
      ),
    );
  });

  it("as one would draw them", () => {
    expect(valueTicks({ least: -22, most: 40 }, 1, 3.7)).toEqual([-20, 0, 20, 40]);
    expect(valueTicks({ least: 0, most: 110 }, 1, 3.5)).toEqual([0, 50, 100]);
    expect(valueTicks({ least: 3, most: 3 }, 1, 3)).toEqual([3]);
  });
});

describe("the numbers of ticks", () => {
  it("stay within the row and clear of each other, and zero is never the one that goes", () => {
    fc.assert(
      fc.property(real(-1e4, 0), real(1, 1e4), real(46, 200), (least, most, height) => {
        const range = { least, most };
        const ticks = valueTicks(range, 1, height / 14);
        const placed = placedTicks(ticks, range, height, 14);
        for (const { y } of placed) expect(y >= 7 && y <= height - 7).toBe(true);
        const ys = placed.map(({ y }) => y).sort((a, b) => a - b);
        ys.forEach((y, i) => {
          if (i > 0) expect(y - (ys[i - 1] ?? 0)).toBeGreaterThanOrEqual(0.85 * 14);
        });
        expect(placed.some(({ value }) => value === 0)).toBe(true);
      }),
    );
  });
});

describe("ticks of time", () => {
  it("keep their distance, and there are at least two from seconds to a day", () => {
    for (const span of [2, 12, 60, 1369, 3600, 86_400]) {
      const ticks = timeTicks(0, span, 840, 60);
      expect(ticks.length).toBeGreaterThanOrEqual(2);
      for (let i = 1; i < ticks.length; i += 1) {
        const gap = (((ticks[i] ?? 0) - (ticks[i - 1] ?? 0)) / span) * 840;
        expect(gap).toBeGreaterThanOrEqual(60 - 1e-9);
      }
    }
  });
});

describe("the window of time", () => {
  const duration = 1369;

  it("keeps the time about which it is zoomed where it is, within the drive", () => {
    fc.assert(
      fc.property(real(0, 1369), real(0.05, 1), (about, factor) => {
        const next = zoomed(null, duration, about, factor);
        if (!next) return;
        expect(next.from).toBeGreaterThanOrEqual(0);
        expect(next.to).toBeLessThanOrEqual(duration + 1e-9);
        expect(next.to - next.from).toBeGreaterThanOrEqual(LEAST_WINDOW - 1e-9);
        expect((about - next.from) / (next.to - next.from)).toBeCloseTo(about / duration, 6);
      }),
    );
  });

  it("is the whole drive as soon as it is as wide, and not narrower than a few rows", () => {
    expect(zoomed({ from: 100, to: 900 }, duration, 300, 2)).toBeNull();
    const near = zoomed({ from: 100, to: 103 }, duration, 101, 0.01);
    expect(near && near.to - near.from).toBeCloseTo(LEAST_WINDOW, 9);
    expect(zoomed(null, duration, 300, Number.POSITIVE_INFINITY)).toBeNull();
    expect(zoomed(null, 1, 0.5, 0.1)).toBeNull();
  });

  it("moves within the drive", () => {
    expect(moved({ from: 10, to: 20 }, duration, -30)).toEqual({ from: 0, to: 10 });
    expect(moved({ from: 10, to: 20 }, duration, 5000)).toEqual({ from: duration - 10, to: duration });
    expect(moved(null, duration, 5)).toBeNull();
  });

  it("turns to the next page when the cursor runs out of it, and always has it inside", () => {
    const window = { from: 100, to: 160 };
    expect(followed(window, duration, 130)).toBe(window);
    expect(followed(null, duration, 900)).toBeNull();
    const page = followed(window, duration, 160.1);
    expect(page?.from).toBeLessThan(160.1);
    expect(page?.to).toBeGreaterThan(210);
    fc.assert(
      fc.property(real(0, 1369), (cursor) => {
        const next = followed(window, duration, cursor);
        expect(next && next.from <= cursor && next.to >= cursor).toBe(true);
        expect(next && next.to - next.from).toBeCloseTo(60, 9);
      }),
    );
  });
});

describe("the layout", () => {
  it("has as many rows as LOOK's grid: four at 1280 × 720, five at 1600 × 900", () => {
    expect(timeLayout(922, 342, 14, 5).rows).toHaveLength(4);
    expect(timeLayout(1160, 415, 14, 5).rows).toHaveLength(5);
  });

  it("keeps rows apart, high enough, and over the foot, whatever the size", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 700, max: 3000 }),
        fc.integer({ min: 240, max: 1600 }),
        fc.constantFrom(14, 18, 20, 25, 27, 40),
        fc.integer({ min: 1, max: 16 }),
        (width, height, text, wanted) => {
          const layout = timeLayout(width, height, text, wanted);
          expect(layout.rows.length).toBe(Math.min(wanted, layout.fits));
          layout.rows.forEach((row, i) => {
            if (layout.fits > 1) expect(row.height).toBeGreaterThanOrEqual(Math.floor(3.3 * text) - 1);
            const above = layout.rows[i - 1];
            if (above) expect(row.top).toBeGreaterThanOrEqual(above.top + above.height + 5);
            expect(row.top + row.height).toBeLessThanOrEqual(layout.foot + 1);
          });
          expect(layout.foot + layout.footHeight).toBeLessThanOrEqual(height);
        },
      ),
    );
  });
});

describe("what was recorded", () => {
  const time = Float64Array.from([1, 2, 4, 5]);
  const values = Float64Array.from([10, 20, 40, Number.NaN]);

  it("is read between its neighbours, and is nothing outside or where nothing was recorded", () => {
    expect(recordedAt(time, values, 3)).toBe(30);
    expect(recordedAt(time, values, 1)).toBe(10);
    expect(recordedAt(time, values, 0.5)).toBeNull();
    expect(recordedAt(time, values, 6)).toBeNull();
    expect(recordedAt(time, values, 4.5)).toBeNull();
  });

  it("keeps its spikes when it is dense", () => {
    const rows = 10_000;
    const dense = Float64Array.from({ length: rows }, (_, i) => i / 100);
    const signal = Float64Array.from({ length: rows }, (_, i) => (i === 7777 ? 9 : Math.sin(i)));
    const columns = Float64Array.from({ length: 200 }, (_, i) => i / 2);
    expect(laidOver(dense, signal, columns, true)).toContain(9);
    expect(laidOver(dense, signal, columns, true)).toHaveLength(200);
  });
});
