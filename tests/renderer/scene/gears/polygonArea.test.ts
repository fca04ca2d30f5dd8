import fc from "fast-check";
import { expect, test } from "vitest";
import { overlapArea } from "./polygonArea.ts";

const square = (x: number, y: number, side: number): Float64Array =>
  Float64Array.from([x, y, x + side, y, x + side, y + side, x, y + side]);
/** A square of 4 with a notch of 2 × 3 cut from above: not convex. */
const notched = Float64Array.from([0, 0, 4, 0, 4, 4, 3, 4, 3, 1, 1, 1, 1, 4, 0, 4]);
const turned = (polygon: Float64Array, angle: number): Float64Array =>
  polygon.map((value, index) => {
    const other = polygon[index % 2 === 0 ? index + 1 : index - 1] ?? Number.NaN;
    return Math.cos(angle) * value + (index % 2 === 0 ? -1 : 1) * Math.sin(angle) * other;
  });

test.each([
  ["a square with itself", square(0, 0, 2), square(0, 0, 2), 4],
  ["shifted squares", square(0, 0, 2), square(1, 1, 2), 1],
  ["a square inside another", square(0, 0, 5), square(1, 2, 1), 1],
  ["squares that touch along an edge", square(0, 0, 2), square(2, 0, 2), 0],
  ["squares apart, one above the other", square(0, 0, 2), square(0, 3, 2), 0],
  ["a bar through a notch", notched, Float64Array.from([-1, 2, 5, 2, 5, 3, -1, 3]), 2],
  ["a block inside the notch", notched, square(1.25, 1.25, 1.5), 0],
  ["a block set into the notch too deep", notched, square(1, 0.5, 2), 1],
  [
    "a square and its copy turned by 45°",
    square(-1, -1, 2),
    turned(square(-1, -1, 2), Math.PI / 4),
    8 * (Math.SQRT2 - 1),
  ],
])("%s", (_, first, second, area) => {
  for (const angle of [0, 0.3, Math.PI / 2, 2, Math.PI, 5]) {
    expect(overlapArea(turned(first, angle), turned(second, angle))).toBeCloseTo(area, 12);
    expect(overlapArea(turned(second, angle), turned(first, angle))).toBeCloseTo(area, 12);
  }
});

test("two rectangles anywhere, seed 7: the product of the shared sides", () => {
  const side = fc.double({ min: 0.1, max: 5, noNaN: true });
  const place = fc.double({ min: -4, max: 4, noNaN: true });
  const box = fc.record({ x: place, y: place, w: side, h: side });
  const shared = (a: number, wa: number, b: number, wb: number): number =>
    Math.max(0, Math.min(a + wa, b + wb) - Math.max(a, b));
  const polygon = ({ x, y, w, h }: { x: number; y: number; w: number; h: number }): Float64Array =>
    Float64Array.from([x, y, x + w, y, x + w, y + h, x, y + h]);
  fc.assert(
    fc.property(box, box, fc.double({ min: 0, max: 7, noNaN: true }), (one, two, angle) => {
      const expected = shared(one.x, one.w, two.x, two.w) * shared(one.y, one.h, two.y, two.h);
      const got = overlapArea(turned(polygon(one), angle), turned(polygon(two), angle));
      expect(Math.abs(got - expected)).toBeLessThan(1e-9);
    }),
    { seed: 7, numRuns: 300 },
  );
});
