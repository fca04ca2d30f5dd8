import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { openCircuit, openCircuitTable, storedEnergy } from "../../../sim/drivetrain/battery.ts";
import { drawCurrent, openBattery } from "../../../sim/drivetrain/plant.ts";
import { lookUp } from "../../../sim/drivetrain/table.ts";
import { batteryPowers } from "../../../sim/vehicle/battery-power.ts";
import { compactWith, HeldPlant } from "../../reference/drivetrain/held-plant.ts";
import { even } from "./even.ts";

const SEED = 718;
const compact = compactWith(() => ({}));
const { battery } = compact;

describe("open-circuit table", () => {
  it("passes the cell's points, times the cells in series", () => {
    const table = openCircuitTable(battery);
    battery.cellSoc.forEach((soc, i) => {
      expect(Math.abs(lookUp(table, soc) - battery.cells * at(battery.cellVoltage, i))).toBeLessThan(1e-9);
    });
  });

  it("is made once for each set of parameters", () => {
    expect(openCircuit(battery)).toBe(openCircuit(battery));
    expect(openCircuit({ ...battery })).not.toBe(openCircuit(battery));
  });
});

describe(`stored energy (seed ${SEED})`, () => {
  const share = even(0, 1);

  it("of a straight curve is charge times mean voltage, and signed", () => {
    const straight = { ...battery, cellSoc: [0, 1], cellVoltage: [3, 4] };
    fc.assert(
      fc.property(share, share, (from, to) => {
        const mean = straight.cells * (3 + (from + to) / 2);
        const expected = mean * (to - from) * straight.capacityAh * 3600;
        expect(Math.abs(storedEnergy(straight, from, to) - expected)).toBeLessThan(
          1e-6 + 1e-9 * Math.abs(expected),
        );
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("adds up over a middle charge, and is nothing from a charge to itself", () => {
    fc.assert(
      fc.property(share, share, share, (a, b, c) => {
        const whole = storedEnergy(battery, a, c);
        const parts = storedEnergy(battery, a, b) + storedEnergy(battery, b, c);
        // Midpoint sums over pieces of an eighth of the table's step: 1e-7 of the pack.
        expect(Math.abs(whole - parts)).toBeLessThan(1e-7 * storedEnergy(battery, 0, 1));
        expect(storedEnergy(battery, a, a)).toBe(0);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

describe(`current of a step (seed ${SEED})`, () => {
  it("is the small root for its power, with the resistance of its direction; infinite beyond the greatest", () => {
    const plant = new HeldPlant(
      compactWith((plain) => ({ battery: { ...plain.battery, resistanceCharge: 0.2 } })),
    );
    const { p, s } = plant;
    fc.assert(
      fc.property(even(0, 1), even(-8, 8), even(-150_000, 150_000), (soc, rc, power) => {
        s.soc = soc;
        s.rcVoltage = rc;
        s.batteryPower = power;
        openBattery(p, s);
        drawCurrent(p, s);
        const r = s.sourceResistance + (power >= 0 ? 0.12 : 0.2);
        const most = (s.sourceVoltage * s.sourceVoltage) / (4 * r);
        if (power > most * (1 + 1e-12)) {
          expect(s.current).toBe(Number.POSITIVE_INFINITY);
          return;
        }
        expect(Math.abs(s.voltage * s.current - power)).toBeLessThan(1e-8 * (1 + Math.abs(power)));
        expect(s.voltage).toBeGreaterThanOrEqual(s.sourceVoltage / 2 - 1e-6);
        expect(s.current * power).toBeGreaterThanOrEqual(0);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });
});

describe("greatest powers", () => {
  it("stand on a limit of current or voltage, and no more is allowed", () => {
    for (const soc of [0.36, 0.5, 0.58, 0.75]) {
      const open = lookUp(openCircuit(battery), soc);
      const { discharge, charge } = batteryPowers(battery, soc);
      const out = (open - Math.sqrt(open * open - 4 * 0.12 * discharge)) / 0.24;
      const into = (-open + Math.sqrt(open * open + 4 * 0.12 * charge)) / 0.24;
      const atLimit = (current: number, most: number, voltage: number, bound: number): boolean =>
        Math.abs(current - most) < 1e-6 || Math.abs(voltage - bound) < 1e-6;
      expect(atLimit(out, 130, open - 0.12 * out, 54 * 2.7)).toBe(true);
      expect(atLimit(into, 130, open + 0.12 * into, 54 * 4.3)).toBe(true);
      expect(out).toBeLessThan(130 + 1e-6);
      expect(into).toBeLessThan(130 + 1e-6);
    }
  });
});
