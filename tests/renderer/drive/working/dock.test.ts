import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dockNear } from "../../../../renderer/drive/working/dock.ts";
import { overlap } from "../../../../renderer/ui/labels.ts";

const bounds = { x: 0, y: 0, width: 1500, height: 800 };

describe("the panel of a working", () => {
  it("stays inside, off its point and off what is kept, wherever the point is", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 1480 }), fc.integer({ min: 20, max: 780 }), (x, y) => {
        const keep = [{ x: 300, y: 100, width: 24, height: 24 }];
        const at = dockNear(330, 150, { bounds, point: { x, y, r: 16 }, keep, spare: [] });
        const box = { ...at, width: 330, height: 150 };
        expect(overlap(box, bounds)).toBe(330 * 150);
        expect(overlap(box, { x: x - 16, y: y - 16, width: 32, height: 32 })).toBe(0);
        for (const one of keep) expect(overlap(box, one)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });

  it("goes a little farther to leave a number free, but not far", () => {
    const point = { x: 700, y: 300, r: 16 };
    const plain = dockNear(330, 150, { bounds, point, keep: [], spare: [] });
    const number = { x: plain.x + 4, y: plain.y + 4, width: 40, height: 16 };
    const moved = dockNear(330, 150, { bounds, point, keep: [], spare: [number] });
    expect(overlap({ ...moved, width: 330, height: 150 }, number)).toBe(0);
    const away = Math.hypot(moved.x + 165 - 700, moved.y + 75 - 300);
    expect(away).toBeLessThan(400);
  });
});
