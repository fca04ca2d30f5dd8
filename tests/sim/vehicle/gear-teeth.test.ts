import { describe, expect, it } from "vitest";
import {
  LEAST_TEETH,
  leastPlanetTeethInRing,
  neighbourRoom,
  teethWithoutUndercut,
} from "../../../sim/vehicle/gear-teeth.ts";

describe("limits of standard gears", () => {
  // Bevan, The Theory of Machines, ch. 10 Ex. 4: 18 teeth against a rack (exact 17.10).
  it("needs 17.10 teeth against a rack", () => {
    expect(teethWithoutUndercut()).toBeCloseTo(17.1, 2);
    expect(Math.ceil(teethWithoutUndercut())).toBe(18);
    expect(LEAST_TEETH).toBe(17);
  });

  // Worked by hand from Elements of Metric Gear Technology, eq. 13-9: (40 + 32) sin 45°.
  it("leaves 50.91 teeth of room for four planets of a 40/32/104 set", () => {
    expect(neighbourRoom({ sunTeeth: 40, planetTeeth: 32, planets: 4 })).toBeCloseTo(50.91, 2);
  });

  it("agrees with the tip diameter form of the same condition", () => {
    // The ring's tip on the limiting circle √(rb² + (a sin α)²), radii in modules.
    const alpha = (20 * Math.PI) / 180;
    for (const ring of [50, 62, 78, 100, 150]) {
      const planet = leastPlanetTeethInRing(ring);
      const centre = (ring - planet) / 2;
      const limit = Math.hypot((ring / 2) * Math.cos(alpha), centre * Math.sin(alpha));
      expect(limit).toBeCloseTo(ring / 2 - 1, 9);
    }
  });
});
