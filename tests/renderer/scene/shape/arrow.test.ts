import { describe, expect, it } from "vitest";
import { signedArea } from "../../../../renderer/scene/gears/outline.ts";
import {
  ARROW_CORNERS,
  ARROW_LINES,
  arrowShape,
  arrowSweep,
} from "../../../../renderer/scene/shape/arrow.ts";

describe("torque arrows", () => {
  it("grow with the torque, turn with its sign, and never close on themselves", () => {
    const torques = [1, 20, 60, 120, 400, 5000];
    const sweeps = torques.map(arrowSweep);
    expect([...sweeps].sort((a, b) => a - b)).toEqual(sweeps);
    expect(Math.max(...sweeps)).toBeLessThan(2 * Math.PI);
    for (const torque of torques) expect(arrowSweep(-torque)).toBe(-arrowSweep(torque));
  });

  it("are in proportion in the range of everyday torques", () => {
    expect(arrowSweep(100) / arrowSweep(50)).toBeCloseTo(2, 12);
  });

  it("vanish without torque, also for what is not a number", () => {
    expect(arrowSweep(0)).toBe(0);
    expect(arrowSweep(Number.NaN)).toBe(0);
  });

  it("end in a tip at the end of the sweep and fit the room kept for them", () => {
    for (const sweep of [-2, -0.3, 0.3, 2, 5]) {
      const { triangles, outline } = arrowShape({ radius: 40, width: 3, middle: 1, sweep });
      expect(triangles.length / 2).toBeLessThanOrEqual(ARROW_CORNERS);
      expect(outline.length / 2).toBeLessThanOrEqual(ARROW_LINES);
      const tip = Array.from(triangles.slice(-2));
      expect(tip[0]).toBeCloseTo(40 * Math.cos(1 + sweep / 2), 9);
      expect(tip[1]).toBeCloseTo(40 * Math.sin(1 + sweep / 2), 9);
      let filled = 0;
      for (let i = 0; i < triangles.length; i += 6) filled += Math.abs(signedArea(triangles.slice(i, i + 6)));
      expect(filled).toBeCloseTo(Math.abs(signedArea(outline)), 6);
    }
  });
});
