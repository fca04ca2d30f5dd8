import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { STRATEGIES } from "../../../sim/control/strategies/registry.ts";
import type { StrategyDefinition } from "../../../sim/control/strategy.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { CHANNELS } from "../../../sim/run/channels.ts";
import { LEDGER_LINES } from "../../../sim/run/ledger.ts";
import { REGIMES, regimes } from "../../../sim/run/regimes.ts";
import { CLOSURE_LIMIT, checkClosure, simulate } from "../../../sim/run/simulate.ts";
import type { Simulation } from "../../../sim/run/simulation.ts";
import { anyCycle, anyVehicle, randomStrategy } from "../../support/random.ts";

const SEED = 20261125;
const anyStrategy: fc.Arbitrary<StrategyDefinition> = fc.oneof(
  fc.constantFrom(...STRATEGIES),
  fc.integer({ min: 1, max: 1e6 }).map(randomStrategy),
);

/** Runs with every step logged over random vehicles, cycles, strategies, start charges and steps. */
function everyRun(runs: number, check: (run: Simulation, vehicle: Vehicle) => void): void {
  fc.assert(
    fc.property(
      anyVehicle,
      anyCycle,
      anyStrategy,
      fc.double({ min: 0.35, max: 0.8, noNaN: true }),
      fc.constantFrom(0.01, 0.02, 0.05),
      fc.boolean(),
      (vehicle, cycle, strategy, startSoc, step, coldStart) => {
        check(simulate(vehicle, cycle, strategy, { startSoc, step, coldStart, logEvery: "step" }), vehicle);
      },
    ),
    // A case is a whole run: to look for the least one that fails would take hours.
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
}

/** The greatest value of a function over the rows after the first. */
function most(run: Simulation, value: (i: number) => number): number {
  let greatest = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < run.log.rows; i += 1) greatest = Math.max(greatest, value(i));
  return greatest;
}

describe(`random vehicles, cycles and strategies (seed ${SEED})`, () => {
  it("L1 nothing is non-finite", () => {
    everyRun(60, (run) => {
      for (const { id } of CHANNELS) expect(run.log.view(id).every(Number.isFinite), id).toBe(true);
      LEDGER_LINES.forEach((line, index) => {
        expect(run.log.ledgerLine(index).every(Number.isFinite), line.id).toBe(true);
      });
    });
  });

  it("L2 the energy ledger closes, and no loss is negative", () => {
    everyRun(60, (run) => {
      expect(checkClosure(run)).toBeLessThanOrEqual(CLOSURE_LIMIT);
      LEDGER_LINES.forEach((line, index) => {
        // A tail wind may push: there is none here, so air counts as a loss like the others.
        if (line.side === "loss")
          expect(at(run.log.ledgerLine(index), run.log.rows - 1), line.id).toBeGreaterThan(-1e-6);
      });
    });
  });

  it("G1 the gear equation holds on every row", () => {
    everyRun(60, (run, vehicle) => {
      const k = vehicle.gearSet.ringTeeth / vehicle.gearSet.sunTeeth;
      const sun = run.log.view("sunMachineSpeed");
      const carrier = run.log.view("engineSpeed");
      const ring = run.log.view("ringSpeed");
      expect(
        most(run, (i) => Math.abs(at(sun, i) + k * at(ring, i) - (1 + k) * at(carrier, i))),
      ).toBeLessThan(1e-9 * 1100);
    });
  });

  it("M1 electrical power is never below shaft power, in every quadrant", () => {
    everyRun(60, (run) => {
      for (const part of ["sun", "output"] as const) {
        const torque = run.log.view(`${part}MachineTorque`);
        const speed = run.log.view(`${part}MachineSpeed`);
        const electric = run.log.view(`${part}MachineElectric`);
        expect(
          most(run, (i) => (at(torque, i) * (at(speed, i) + at(speed, i - 1))) / 2 - at(electric, i)),
        ).toBeLessThanOrEqual(1e-9);
      }
    });
  });

  it("M2 torques keep within peak torque and peak power at the step's start speed", () => {
    everyRun(60, (run, vehicle) => {
      for (const part of ["sun", "output"] as const) {
        const machine = part === "sun" ? vehicle.sunMachine : vehicle.outputMachine;
        const torque = run.log.view(`${part}MachineTorque`);
        const speed = run.log.view(`${part}MachineSpeed`);
        const over = (i: number): number => {
          const w = Math.abs(at(speed, i - 1));
          return (
            Math.abs(at(torque, i)) - Math.min(machine.peakTorque, machine.peakPower / Math.max(w, 1e-9))
          );
        };
        expect(most(run, over)).toBeLessThan(1e-9 * machine.peakTorque);
      }
    });
  });

  it("B1 currents and voltages keep within the battery's limits, charge within its window", () => {
    everyRun(60, (run, vehicle) => {
      const b = vehicle.battery;
      const current = run.log.view("batteryCurrent");
      const voltage = run.log.view("batteryVoltage");
      const soc = run.log.view("soc");
      expect(most(run, (i) => at(current, i) - b.maxDischargeCurrent)).toBeLessThan(1e-6);
      expect(most(run, (i) => -at(current, i) - b.maxChargeCurrent)).toBeLessThan(1e-6);
      expect(most(run, (i) => b.cells * b.cellVoltageMin - at(voltage, i))).toBeLessThan(1e-6);
      expect(most(run, (i) => at(voltage, i) - b.cells * b.cellVoltageMax)).toBeLessThan(1e-6);
      expect(most(run, (i) => at(soc, i) - b.socCeiling)).toBeLessThan(1e-6);
      expect(most(run, (i) => b.socFloor - at(soc, i))).toBeLessThan(0.003);
    });
  });

  it("C1 the engine never turns backward, and burns nothing unless it fires", () => {
    everyRun(60, (run) => {
      const speed = run.log.view("engineSpeed");
      const on = run.log.view("engineOn");
      const fuel = run.log.view("fuelPower");
      expect(most(run, (i) => -at(speed, i))).toBeLessThanOrEqual(0);
      expect(most(run, (i) => (at(on, i) === 0 ? at(fuel, i) : 0))).toBe(0);
    });
  });

  it("R0 every row has exactly one regime", () => {
    everyRun(40, (run) => {
      const found = regimes(run.log, run.p);
      expect(found.length).toBe(run.log.rows);
      expect(Math.max(...found)).toBeLessThan(REGIMES.length);
    });
  });

  it("P1 battery power is both machines and the auxiliaries, and V times I", () => {
    everyRun(40, (run) => {
      const power = run.log.view("batteryPower");
      const sum = (i: number): number =>
        at(run.log.view("sunMachineElectric"), i) +
        at(run.log.view("outputMachineElectric"), i) +
        at(run.log.view("auxiliary"), i);
      const electric = (i: number): number =>
        at(run.log.view("batteryVoltage"), i) * at(run.log.view("batteryCurrent"), i);
      expect(most(run, (i) => Math.abs(at(power, i) - sum(i)))).toBeLessThan(1e-6);
      expect(
        most(run, (i) => Math.abs(at(power, i) - electric(i)) / (1000 + Math.abs(at(power, i)))),
      ).toBeLessThan(1e-9);
    });
  });
});
