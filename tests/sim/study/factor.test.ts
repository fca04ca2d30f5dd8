import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { equivalent } from "../../../sim/control/strategies/equivalent.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { balance } from "../../../sim/study/balance.ts";
import { balanceByFactor, hasFactor } from "../../../sim/study/factor.ts";
import { distanceOf } from "../../../sim/study/optimum/distance.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { cancelAfter, notCancelled } from "./optimum/cases.ts";

const compact = vehicleById("compact");

describe("the price that balances a drive", () => {
  it.each(["udds", "hwfet", "wltc-class3b"])(
    "on %s: within 0.1 % of the fuel, 1.5 % above the optimum quasi-statically at most, 3 % forward",
    (cycle) => {
      if (!hasFactor(equivalent)) throw new Error("it has a price");
      const found = balanceByFactor(compact, cycleById(cycle), equivalent, {}, 0.001);
      expect(found.balanced).toBe(true);
      expect(Math.abs(found.netShare)).toBeLessThan(0.001);
      // Q2: fuel for battery energy is 2 to 4 (SAE 2026-01-0422, abstract).
      expect(found.factor).toBeGreaterThan(2);
      expect(found.factor).toBeLessThan(4);
      const distance = notCancelled(distanceOf(found.run, true));
      expect(distance.quasiStatic.over).toBeLessThan(0.015);
      expect(distance.forward.over).toBeLessThan(0.03);
      expect(distance.quasiStatic.over).toBeGreaterThan(-distance.gridError);
    },
  );

  it("is what `balance` finds for a strategy that has one, and for no other", () => {
    const nycc = cycleById("nycc");
    const found = balance(compact, nycc, equivalent, {}, 0.001);
    expect(found.run.p.socStart).toBe(compact.battery.socTarget);
    expect(found.slope).toBeGreaterThan(2);
    expect(hasFactor(rules)).toBe(false);
  });

  it("says so when no price balances the drive", () => {
    const still = cycleById("cruise:speed=5km/h,for=1min");
    const found = balance(compact, still, equivalent, {}, 0.001);
    expect(found.balanced).toBe(false);
    expect(found.reason).not.toBe("");
    expect(found.fuelEnergy).toBeNaN();
  });

  it("can be cancelled, and says so", () => {
    const found = balance(compact, cycleById("nycc"), equivalent, {}, 1e-9, cancelAfter(2));
    expect(found.balanced).toBe(false);
    expect(found.reason).toMatch(/cancelled/);
  });
});
