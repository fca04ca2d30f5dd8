import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { besideStandard, standardRows } from "../../../cycles/statistics/beside-standard.ts";
import { standLayout } from "../../../renderer/cycles/stand-layout.ts";
import { overlap, roughMeasure } from "../../../renderer/ui/labels.ts";

const [own] = besideStandard(cycleById("brake-stop"));
if (!own) throw new Error("no row");

const layout = (times: number, width = 320, height = 260) =>
  standLayout({
    rows: standardRows(),
    own,
    width,
    height,
    text: 14,
    times,
    limitName: "limit",
    measure: roughMeasure,
  });

describe("where a cycle stands", () => {
  it("keeps every point and label in the picture, and labels apart", () => {
    for (const times of [3.6, 3600 / 1609.344]) {
      const { points, labels, left, right, top, foot } = layout(times);
      expect(points).toHaveLength(standardRows().length + 1);
      for (const { x, y } of points) {
        expect(x).toBeGreaterThanOrEqual(left);
        expect(x).toBeLessThanOrEqual(right + 1e-9);
        expect(y).toBeGreaterThanOrEqual(top - 1e-9);
        expect(y).toBeLessThanOrEqual(foot);
      }
      labels.forEach((one, i) => {
        for (const other of labels.slice(i + 1)) expect(overlap(one.box, other.box)).toBe(0);
      });
    }
  });

  it("draws the regulation's line: 0.1755 at rest, 0.1755 − 0.0016 v̄, 0.025 from 94.05 km/h (EU 2016/646)", () => {
    const { limit, xTicks, yTicks, left } = layout(3.6);
    const [x0, x1] = [xTicks[0], xTicks[1]];
    const [y0, y1] = [yTicks[0], yTicks[1]];
    if (!x0 || !x1 || !y0 || !y1) throw new Error("no ticks");
    const kmh = (x: number): number => ((x - x0.x) / (x1.x - x0.x)) * x1.value;
    const brisk = (y: number): number => ((y - y0.y) / (y1.y - y0.y)) * y1.value;
    expect(limit[0]?.[0]).toBeCloseTo(left, 9);
    for (const [x, y] of limit) {
      const v = kmh(x);
      expect(brisk(y)).toBeCloseTo(v <= 94.05 ? 0.1755 - 0.0016 * v : 0.025, 6);
    }
  });

  it("marks one as its own, and only once when it is a standard one", () => {
    expect(layout(3.6).points.filter((point) => point.own)).toHaveLength(1);
    const rows = standardRows();
    const [first] = rows;
    if (!first) throw new Error("no rows");
    const same = standLayout({
      rows,
      own: first,
      width: 300,
      height: 300,
      text: 14,
      times: 3.6,
      limitName: "l",
      measure: roughMeasure,
    });
    expect(same.points).toHaveLength(rows.length);
  });
});
