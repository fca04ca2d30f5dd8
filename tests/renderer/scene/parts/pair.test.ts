import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { externalGearOutline } from "../../../../renderer/scene/gears/externalOutline.ts";
import { meshPhase, placePair, teethForRatio } from "../../../../renderer/scene/parts/pair.ts";
import { meshOverlap } from "../gears/meshing.ts";

describe("gear pairs outside the set", () => {
  it("have exactly the ratio where it has at most one decimal", () => {
    for (let tenths = 10; tenths <= 80; tenths += 1) {
      const { pinion, wheel } = teethForRatio(tenths / 10);
      expect(wheel / pinion).toBeCloseTo(tenths / 10, 12);
    }
  });

  it("come as near to any other ratio as half a tooth of the largest pinion tried", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 12, noNaN: true }), (ratio) => {
        const { pinion, wheel } = teethForRatio(ratio);
        expect(Math.abs(wheel / pinion - ratio)).toBeLessThan(0.5 / 60 + 1e-8);
      }),
      { examples: [[1.0083], [1.99168], [1.0025062656651655]] },
    );
  });

  it("stand in mesh without overlap, also after turning", () => {
    for (const direction of [0.4, 2.1, -1.3]) {
      const pair = teethForRatio(2.5);
      const place = placePair(pair, 42, 5);
      const outlineOf = (teeth: number) => externalGearOutline(teeth, { module: place.module });
      for (const turn of [0, 0.3, 7.7]) {
        const first = { outline: outlineOf(pair.pinion), angle: turn, x: 0, y: 0, internal: false };
        const start = meshPhase(pair.pinion, pair.wheel, direction, 0);
        const second = {
          outline: outlineOf(pair.wheel),
          angle: start - (turn * pair.pinion) / pair.wheel,
          x: place.centreDistance * Math.cos(direction),
          y: place.centreDistance * Math.sin(direction),
          internal: false,
        };
        expect(meshOverlap(first, second)).toBeLessThan(1e-3 * place.module ** 2);
      }
    }
  });

  it("keep the pinion thick enough for its shaft", () => {
    const place = placePair(teethForRatio(8), 42, 6);
    expect(place.pinionPitch).toBeGreaterThanOrEqual(6);
    expect(place.wheelPitch / place.pinionPitch).toBeCloseTo(8, 12);
  });
});
