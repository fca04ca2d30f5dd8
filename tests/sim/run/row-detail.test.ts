import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { rowDetail, wheelForceReader } from "../../../sim/run/row-detail.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** Flows are kept in single precision. */
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 0.02 + 1e-6 * Math.abs(b);

describe("what lies behind a row", () => {
  for (const [id, cycle, options] of [
    ["compact", "udds", {}],
    ["family", "us06", { coldStart: true, headWind: 6 }],
    ["van", "hill-down", { payload: 400 }],
    ["compact", "back-up", {}],
  ] as const) {
    it(`makes the row's flows by formula: ${id} on ${cycle}`, () => {
      const v = vehicleById(id);
      const run = simulate(v, cycleById(cycle), rules, options);
      const { p, log } = run;
      const force = wheelForceReader(p, log);
      for (let row = 0; row < log.rows; row += 7) {
        const { at, flows, mean, rate, roadMean, meshLoss, resistance, polarisation } = rowDetail(
          v,
          p,
          log,
          row,
        );
        const i = at.batteryCurrent;
        const pairs = {
          engine: [at.engineTorque * mean.carrier, flows.engine],
          sun: [-at.sunMachineTorque * mean.sun, flows.sun],
          outputShaft: [at.outputMachineTorque * mean.output, flows.outputShaft],
          ring: [-at.ringTorque * mean.ring, flows.ring],
          meshLoss: [meshLoss * (mean.sun - mean.carrier), flows.meshLoss],
          gearSetSpin: [
            p.carrierInertia * rate.carrier * mean.carrier +
              p.sunInertia * rate.sun * mean.sun +
              p.planetInertia * rate.planet * mean.planet,
            flows.gearSetSpin,
          ],
          ringSpin: [p.ringSideInertia * rate.ring * mean.ring, flows.ringSpin],
          speedingUp: [p.wheelSideInertia * rate.ring * mean.ring, flows.speedingUp],
          brake: [at.frictionBrake * Math.abs(roadMean), flows.brake],
          battery: [at.batteryVoltage * i, flows.battery],
          batteryLoss: [(resistance * i + polarisation) * i, flows.batteryLoss],
          wheels: [force(row) * roadMean, Math.abs(roadMean) < 1e-4 ? 0 : flows.wheels - flows.brake],
        };
        for (const [name, [mine = 0, logged = 0]] of Object.entries(pairs)) {
          if (!near(mine, logged)) expect.fail(`${name} at row ${row}: ${mine} and ${logged}`);
        }
        expect(at.sunTorque + at.ringTorque + at.carrierTorque).toBeCloseTo(p.planetInertia * rate.planet, 6);
      }
    });
  }

  it("makes the terminal voltage from open circuit, ohmic drop and RC pair", () => {
    const v = vehicleById("compact");
    const { p, log } = simulate(v, cycleById("udds"), rules);
    for (let row = 1; row < log.rows; row += 5) {
      const { at, openCircuit, resistance, polarisation } = rowDetail(v, p, log, row);
      const made = openCircuit - resistance * at.batteryCurrent - polarisation;
      expect(Math.abs(made - at.batteryVoltage)).toBeLessThan(1e-3);
    }
  });
});
