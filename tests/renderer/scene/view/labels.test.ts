import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PARTS } from "../../../../renderer/scene/graph/pieces.ts";
import { type Anchor, type LabelSheet, layLabels, overlap } from "../../../../renderer/scene/view/labels.ts";

const sheet = (width: number, height: number): LabelSheet => ({
  width,
  height,
  boxWidth: 128,
  boxHeight: 22,
  covered: (x, y) => Math.hypot(x - width / 2, y - height / 2) < 0.35 * Math.min(width, height),
});

const anchors = (width: number, height: number): fc.Arbitrary<Anchor[]> =>
  fc
    .array(
      fc.record({
        x: fc.double({ min: 0, max: 1, noNaN: true }),
        y: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      {
        maxLength: PARTS.length,
      },
    )
    .map((places) =>
      places.map(({ x, y }, i) => ({
        part: PARTS[i] ?? "sun",
        anchorX: x * width,
        anchorY: y * height,
      })),
    );

describe("labels", () => {
  for (const [width, height] of [
    [364, 400],
    [1280, 720],
    [140, 60],
  ] as const) {
    it(`never overlap and never leave the sheet (${width} × ${height}, any anchors)`, () => {
      fc.assert(
        fc.property(anchors(width, height), (all) => {
          const on = sheet(width, height);
          const placed = layLabels(all, on);
          placed.forEach((a, i) => {
            expect(a.x).toBeGreaterThanOrEqual(on.boxWidth / 2);
            expect(a.x).toBeLessThanOrEqual(width - on.boxWidth / 2);
            expect(a.y).toBeGreaterThanOrEqual(on.boxHeight / 2);
            expect(a.y).toBeLessThanOrEqual(height - on.boxHeight / 2);
            for (const b of placed.slice(i + 1)) expect(overlap(a, b, on)).toBe(false);
          });
        }),
        { numRuns: 60 },
      );
    });
  }

  it("find room for all ten parts on a bench-sized sheet", () => {
    const all = PARTS.map((part, i) => ({
      part,
      anchorX: 640 + 200 * Math.cos(i),
      anchorY: 360 + 200 * Math.sin(i),
    }));
    expect(layLabels(all, sheet(1280, 720))).toHaveLength(PARTS.length);
  });

  it("are none on a sheet too small for one", () => {
    expect(layLabels([{ part: "sun", anchorX: 10, anchorY: 10 }], sheet(100, 20))).toEqual([]);
  });

  it("keep their anchors, and lie the same each time", () => {
    const all = PARTS.slice(0, 4).map((part, i) => ({ part, anchorX: 150 + 30 * i, anchorY: 100 + 50 * i }));
    const placed = layLabels(all, sheet(600, 500));
    for (const { part, anchorX, anchorY } of placed) {
      expect(all.find((anchor) => anchor.part === part)).toMatchObject({ anchorX, anchorY });
    }
    expect(layLabels(all, sheet(600, 500))).toEqual(placed);
  });
});
