import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { equivalentAdapted } from "../../../sim/control/strategies/equivalent.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** Rows of the steady part of the cruise. */
const FIRST = 600;
const LAST = 3000;

/** A change of speed that counts, rad/s. */
const LITTLE = 5;

/** How often a speed turns round between the rows by more than a little. */
function turns(speed: Float64Array): number {
  let found = 0;
  let way = 0;
  let extreme = at(speed, FIRST);
  for (let i = FIRST; i < LAST; i += 1) {
    const change = at(speed, i) - extreme;
    if (way * change > 0) extreme = at(speed, i);
    else if (Math.abs(change) > LITTLE) {
      found += 1;
      way = Math.sign(change);
      extreme = at(speed, i);
    }
  }
  return found;
}

describe("equivalent consumption, its price following the charge, at a steady speed", () => {
  it.each([
    ["van", -0.03, 0],
    ["compact", 0, -8],
    ["van", 0, 0],
  ])(
    "does not let two engine points of equal cost take turns: %s, grade %d, head wind %d m/s",
    (id, grade, headWind) => {
      const flat = cycleById("cruise");
      const trace = { ...flat, grade: flat.grade.map((rise) => rise + grade) };
      const run = simulate(vehicleById(id), trace, equivalentAdapted, { headWind });
      // At most one turn in 2.5 s of these 240 s; without a hold there are some two a second.
      expect(turns(run.log.view("engineSpeed"))).toBeLessThan(96);
    },
  );
});
