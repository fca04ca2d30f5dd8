import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { kmhToMps } from "../../../shared/units.ts";
import { PedalDriver } from "../../../sim/control/pedals.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { engineTables } from "../../../sim/drivetrain/engine.ts";
import { runSettings } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { flowsAt } from "../../../sim/run/flows.ts";
import { limitsRun } from "../../../sim/run/limits-run.ts";
import { wheelForceReader } from "../../../sim/run/row-detail.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { Simulation } from "../../../sim/run/simulation.ts";
import { batteryPowers } from "../../../sim/vehicle/battery-power.ts";
import { outputTopSpeed } from "../../../sim/vehicle/figures.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { type Traction, traction } from "../../../sim/vehicle/traction.ts";
import { anyVehicle } from "../../support/random.ts";

const tractionOf = (v: Vehicle, options = {}): Traction =>
  traction(v, runSettings(options, { startSoc: v.battery.socStart, auxiliaryPower: v.auxiliary.power }));

/** Rows of a drive at full throttle. */
function fullThrottle(v: Vehicle, seconds: number) {
  const driver = new PedalDriver();
  driver.accelerator = 1;
  const run = new Simulation(v, driver, rules, {});
  while (run.time < seconds) run.tick();
  const force = wheelForceReader(run.p, run.log);
  const speed = run.log.view("speed");
  return Array.from({ length: run.log.rows }, (_, i) => ({ speed: at(speed, i), force: force(i) }));
}

/** What the shafts give back for a moment while the engine's speed is let fall, as a share. */
const SHAFTS_GIVE = 0.04;

describe("traction limits", () => {
  for (const { id } of PRESETS) {
    it(`bound a drive at full throttle, and are nearly reached: ${id}`, () => {
      const v = vehicleById(id);
      const limits = tractionOf(v);
      const rows = fullThrottle(v, 25);
      for (const { speed, force } of rows.slice(2)) {
        expect(force).toBeLessThanOrEqual(limits.most(speed) * (1 + SHAFTS_GIVE));
      }
      const fast = rows.filter(({ speed }) => speed > kmhToMps(60));
      expect(fast.length).toBeGreaterThan(20);
      for (const { speed, force } of fast) expect(force).toBeGreaterThan(limits.most(speed) * 0.93);
    });
  }

  it("meet the road load at the top speed that a simulation finds", () => {
    const v = vehicleById("van");
    const limits = tractionOf(v);
    const { topSpeed } = limitsRun(v, rules);
    expect(limits.most(topSpeed)).toBeGreaterThan(limits.roadLoad(topSpeed) * 0.98);
    const over = Math.min(outputTopSpeed(v), topSpeed * 1.25);
    // Above it, only the engine and an emptying battery: the steady limit may still carry more for a while.
    expect(limits.most(over)).toBeLessThan(limits.most(topSpeed));
  });

  it("give no more power than engine and battery have", () => {
    fc.assert(
      fc.property(anyVehicle, fc.double({ min: 0.5, max: 40, noNaN: true }), (v, speed) => {
        const limits = tractionOf(v);
        const { discharge } = batteryPowers(v.battery, v.battery.socTarget);
        const top = Math.min(speed, outputTopSpeed(v));
        expect(limits.most(top) * top).toBeLessThanOrEqual(engineTables(v.engine).top.power + discharge);
        const electric = limits.electric(top);
        if (!Number.isNaN(electric)) {
          expect(electric * top).toBeLessThanOrEqual(discharge);
          expect(electric).toBeLessThanOrEqual(limits.most(top) + 1e-9);
        }
        expect(limits.regeneration(top)).toBeLessThanOrEqual(0);
        expect(limits.most(top)).toBeLessThanOrEqual(limits.grip);
      }),
      { numRuns: 40 },
    );
  });

  it("bound what the driven axle brakes with the engine off", () => {
    const v = vehicleById("compact");
    const limits = tractionOf(v);
    const { log } = simulate(v, cycleById("us06"), rules);
    let [seen, hardest] = [0, 0];
    for (let row = 0; row < log.rows; row += 1) {
      const speed = at(log.view("speed"), row);
      const axle = flowsAt(log, row).wheels / speed;
      if (at(log.engineMode, row) !== 0 || speed < 3 || axle >= 0) continue;
      seen += 1;
      hardest = Math.max(hardest, axle / limits.regeneration(speed));
    }
    expect(seen).toBeGreaterThan(300);
    // The battery of the run is not always at the charge that the limit stands for.
    expect(hardest).toBeLessThan(1.06);
    expect(hardest).toBeGreaterThan(0.9);
  });

  it("fall with speed as constant power does: F v stays within a few per cent (common practice, no source)", () => {
    const limits = tractionOf(vehicleById("compact"));
    const power = [70, 90, 110].map((kmh) => limits.most(kmhToMps(kmh)) * kmhToMps(kmh));
    const mean = power.reduce((a, b) => a + b, 0) / power.length;
    for (const one of power) expect(Math.abs(one / mean - 1)).toBeLessThan(0.08);
  });

  it("take the electric force to its end where the sun would turn too fast with the engine at rest", () => {
    const limits = tractionOf(vehicleById("compact"));
    expect(limits.electric(kmhToMps(125))).toBeGreaterThan(0);
    expect(limits.electric(kmhToMps(150))).toBeNaN();
  });

  it("know payload and head wind", () => {
    const v = vehicleById("compact");
    const plain = tractionOf(v);
    const loaded = tractionOf(v, { payload: 300, headWind: 10 });
    expect(loaded.roadLoad(0) - plain.roadLoad(0)).toBeCloseTo(
      v.body.rollingCoefficient * 300 * 9.80665 + 0.5 * 1.189 * v.body.dragArea * 100,
      6,
    );
    expect(loaded.grip).toBeGreaterThan(plain.grip);
  });
});
