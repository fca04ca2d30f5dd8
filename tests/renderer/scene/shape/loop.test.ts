import { describe, expect, it } from "vitest";
import { externalGearOutline } from "../../../../renderer/scene/gears/externalOutline.ts";
import { radiusBounds } from "../../../../renderer/scene/gears/outline.ts";
import { polarOutline, radiusAtAngle, risingAngles } from "../../../../renderer/scene/shape/loop.ts";

describe("radius of an outline in a direction", () => {
  it("finds the points themselves, where no two lie in one direction", () => {
    const outline = externalGearOutline(40, { module: 2 });
    const angles = risingAngles(outline);
    for (let i = 0; i < outline.length; i += 2) {
      const [x = 0, y = 0] = [outline[i], outline[i + 1]];
      expect(radiusAtAngle(outline, angles, Math.atan2(y, x))).toBeCloseTo(Math.hypot(x, y), 9);
    }
  });

  it("is the same after whole turns and stays within the outline's bounds", () => {
    const outline = externalGearOutline(31);
    const angles = risingAngles(outline);
    const { least, greatest } = radiusBounds(outline);
    for (let angle = -9; angle < 9; angle += 0.0137) {
      const radius = radiusAtAngle(outline, angles, angle);
      expect(radius).toBeGreaterThanOrEqual(least * Math.cos(Math.PI / 31) - 1e-9);
      expect(radius).toBeLessThanOrEqual(greatest + 1e-9);
      expect(radiusAtAngle(outline, angles, angle + 4 * Math.PI)).toBeCloseTo(radius, 9);
    }
  });

  it("lies on the straight pieces between points", () => {
    const square = polarOutline(4, () => 1);
    expect(radiusAtAngle(square, risingAngles(square), Math.PI / 4)).toBeCloseTo(Math.SQRT1_2, 12);
  });
});
