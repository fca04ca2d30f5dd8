import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { equivalentAdapted } from "../../../sim/control/strategies/equivalent.ts";
import { noRegeneration, rules } from "../../../sim/control/strategies/rules.ts";
import { thermostat } from "../../../sim/control/strategies/thermostat.ts";
import { litres } from "../../../sim/run/fuel.ts";
import { BALANCE_WINDOW, balance, fuelSlope } from "../../../sim/study/balance.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const per100 = (energy: number, distance: number): number => (litres(compact.fuel, energy) / distance) * 1e5;

describe("equivalent consumption", () => {
  it("needs less charge-balanced fuel than the rules, within 5 %, and starts the engine less often", () => {
    for (const id of ["udds", "wltc-class3b"]) {
      const plain = balance(compact, cycleById(id), rules);
      const priced = balance(compact, cycleById(id), equivalentAdapted);
      expect(priced.fuelEnergy, id).toBeLessThan(plain.fuelEnergy);
      expect(priced.fuelEnergy, id).toBeGreaterThan(0.95 * plain.fuelEnergy);
      expect(priced.run.c.starts, id).toBeLessThan(plain.run.c.starts);
    }
  });
});

describe("charge balance", () => {
  it("N1 ends with the net battery energy within 1 % of the fuel energy (SAE J1711, from its abstract)", () => {
    const found = balance(compact, cycleById("udds"), rules);
    expect(found.balanced).toBe(true);
    expect(Math.abs(found.netShare)).toBeLessThanOrEqual(BALANCE_WINDOW);
    expect(found.reason).toBe("");
  });

  it("N2 one unit of battery energy stands for two to four of fuel (SAE 2026-01-0422, abstract: about three)", () => {
    for (const strategy of [rules, thermostat, noRegeneration]) {
      const found = balance(compact, cycleById("udds"), strategy);
      expect(found.slope).toBeGreaterThan(2);
      expect(found.slope).toBeLessThan(4);
    }
  });

  it("gives the same fuel from whichever start charge, to 1 %, though raw fuel differs by more", () => {
    const low = balance(compact, cycleById("udds"), rules, { startSoc: 0.52 });
    const high = balance(compact, cycleById("udds"), rules, { startSoc: 0.58 });
    expect(Math.abs(low.fuelEnergy / high.fuelEnergy - 1)).toBeLessThan(0.01);
  });

  it("MODEL plausible: the compact's balanced fuel lies in the ranges set for it before it was built", () => {
    const ranges = {
      udds: [3.0, 3.8],
      hwfet: [3.2, 3.9],
      us06: [4.6, 5.7],
      "wltc-class3b": [3.5, 4.3],
    } as const;
    for (const [id, [least, most]] of Object.entries(ranges)) {
      const found = balance(compact, cycleById(id), rules);
      const fuel = per100(found.fuelEnergy, found.run.b.travelled);
      expect(fuel, id).toBeGreaterThan(least);
      expect(fuel, id).toBeLessThan(most);
    }
  });

  it("says so instead of a number when a drive cannot be balanced", () => {
    const found = balance(vehicleById("family"), cycleById("cruise:speed=30km/h,for=30s"), rules);
    expect(found.balanced).toBe(false);
    expect(found.reason).toMatch(/no fuel|still gives/);
    expect(found.fuelEnergy).toBeNaN();
  });

  it("N5 a line of fuel over battery energy gives back its slope", () => {
    const points = [-3e5, -1e5, 0, 2e5].map((net) => ({ net, fuel: 12e6 - 2.7 * net }));
    expect(fuelSlope(points)).toBeCloseTo(2.7, 12);
  });
});
