import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { simulate } from "../../../../sim/run/simulate.ts";
import { distanceOf } from "../../../../sim/study/optimum/distance.ts";
import { evaluate } from "../../../../sim/study/optimum/evaluate.ts";
import { prepareFor } from "../../../../sim/study/optimum/optimum.ts";
import { replayOf } from "../../../../sim/study/optimum/replay.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { notCancelled, optimumFor } from "./cases.ts";

const CASES = [
  ["compact", "udds"],
  ["compact", "hwfet"],
  ["van", "sc03"],
  ["family", "sc03"],
] as const;

describe("the optimum replayed", () => {
  it.each(CASES)(
    "%s on %s: quasi-statically the same fuel within 0.3 per cent, forward within 2.5",
    (id, cycle) => {
      const found = optimumFor(id, cycle);
      const vehicle = vehicleById(id);
      const startSoc = vehicle.battery.socTarget;
      const p = prepareFor(vehicle, { startSoc });
      const decisions = {
        on: found.path.on,
        speed: found.engineSpeed,
        torque: found.engineTorque,
        regeneration: true,
      };
      const counted = evaluate(p, found.demand, decisions, startSoc, found.actions.wheelTorque);
      expect(Math.abs(counted.fuelEnergy / found.fuelEnergy - 1)).toBeLessThan(0.003);
      expect(Math.abs((counted.soc[found.demand.stages] ?? 0) - startSoc)).toBeLessThan(5e-4);
      expect(counted.starts).toBe(found.starts);

      const run = simulate(vehicle, cycleById(cycle), replayOf(found), { startSoc });
      const { forward } = notCancelled(distanceOf(run, true));
      expect(Math.abs(forward.over)).toBeLessThan(0.025);
      // It also ends near the charge that it should end at.
      expect(Math.abs(run.b.source)).toBeLessThan(0.015 * forward.fuelEnergy);
    },
  );
});
