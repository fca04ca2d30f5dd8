import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plotLayout, spaced } from "../../../../renderer/compare/sweep/line-plot.ts";

const size = { width: 800, height: 400, text: 14, left: 60 };

describe("lines over a parameter", () => {
  it("lie inside the plot, in the order of their values, with gaps where there is none", () => {
    const value = fc.option(fc.double({ min: -1e4, max: 1e4, noNaN: true }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 2, maxLength: 12 }), (values) => {
        const along = values.map((_, i) => i * 3 - 5);
        const { lines, top, bottom, left, right } = plotLayout({ ...size, along, lines: [{ values }] });
        const points = lines[0]?.points ?? [];
        values.forEach((given, i) => {
          const point = points[i];
          if (given === null) {
            expect(point).toBeNull();
            return;
          }
          expect(point?.y).toBeGreaterThanOrEqual(top - 1e-6);
          expect(point?.y).toBeLessThanOrEqual(bottom + 1e-6);
          expect(point?.x).toBeGreaterThanOrEqual(left);
          expect(point?.x).toBeLessThanOrEqual(right);
          values.forEach((other, j) => {
            if (other !== null && given > other)
              expect(point?.y ?? 0).toBeLessThanOrEqual((points[j]?.y ?? 0) + 1e-6);
          });
        });
        const started = values.filter((one, i) => one !== null && (values[i - 1] ?? null) === null).length;
        expect(lines[0]?.d.split("M").length).toBe(started + 1);
      }),
    );
  });

  it("has room for every number that is written under it", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5, max: 80, noNaN: true }), { minLength: 2, maxLength: 20 }),
        (widths) => {
          const x = widths.map((_, i) => i * 30);
          const kept = spaced(x, widths, 6);
          expect(kept[0]).toBe(0);
          kept.slice(1).forEach((i, k) => {
            const before = kept[k] ?? 0;
            const between = (x[i] ?? 0) - (x[before] ?? 0);
            expect(between).toBeGreaterThanOrEqual(((widths[i] ?? 0) + (widths[before] ?? 0)) / 2 + 6 - 1e-9);
          });
        },
      ),
    );
  });
});
