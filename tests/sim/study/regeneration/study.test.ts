import { describe, expect, it } from "vitest";
import { InputError } from "../../../../shared/errors.ts";
import { kmhToMps } from "../../../../shared/units.ts";
import { effectiveMass } from "../../../../sim/control/driver.ts";
import { noRegeneration, rules } from "../../../../sim/control/strategies/rules.ts";
import { prepare } from "../../../../sim/drivetrain/prepared.ts";
import { runSettings } from "../../../../sim/options.ts";
import type { Vehicle } from "../../../../sim/parameters/schema.ts";
import {
  type RegenerationPlan,
  regenerationCell,
  regenerationMap,
} from "../../../../sim/study/regeneration/study.ts";
import { regenerationCsv, regenerationJson } from "../../../../sim/study/regeneration/table.ts";
import { evenNumbers } from "../../../../sim/study/regeneration/values.ts";
import { presetById, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../../../sim/vehicle/read.ts";
import { applySettings } from "../../../../sim/vehicle/setting.ts";

const compact = vehicleById("compact");
const with_ = (...settings: string[]): Vehicle =>
  readVehicle(applySettings(presetById("compact").parameters, settings), "");
const plan = (vehicle: Vehicle, more: Partial<RegenerationPlan> = {}): RegenerationPlan => ({
  vehicle,
  speeds: [kmhToMps(60)],
  rates: [1],
  charges: [0.58],
  options: {},
  ...more,
});
const stopOf = (vehicle: Vehicle, kmh: number, rate: number, charge = 0.58) =>
  regenerationCell(plan(vehicle), rules, kmhToMps(kmh), rate, charge);

describe("a brake stop", () => {
  it("asks the wheels for what Newton's law says: motion's energy less what drag, rolling and the gears take", () => {
    const p = prepare(compact, runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));
    for (const [kmh, rate] of [
      [40, 2],
      [60, 1],
      [100, 3],
    ] as const) {
      const v = kmhToMps(kmh);
      // v falls evenly, so that ∫F v dt = v²/(2a)·(m a − rolling) − ∫(B v² + C v³) dt, with ∫vⁿ dt = vⁿ⁺¹/((n+1) a).
      const motion = 0.5 * effectiveMass(p) * v * v;
      const rolling = (p.rolling * v * v) / (2 * rate);
      const drag = (p.dragB * v ** 3) / (3 * rate) + (p.dragC * v ** 4) / (4 * rate);
      const share = stopOf(compact, kmh, rate).asked_at_wheels_j / (motion - rolling - drag);
      // Final drive and reduction slow the vehicle too, by at most their (1 − η) together.
      const gears = compact.finalDrive.efficiency * compact.outputMachine.reductionEfficiency;
      expect(share).toBeLessThan(1);
      expect(share).toBeGreaterThan(gears - 0.005);
    }
  });

  it("gives each place less than the one before, and the brakes the rest", () => {
    for (const [kmh, rate] of [
      [30, 0.5],
      [60, 1],
      [100, 2],
      [120, 5],
    ] as const) {
      const c = stopOf(compact, kmh, rate);
      expect(c.into_battery_j).toBeLessThan(c.at_machine_shaft_j);
      expect(c.at_machine_shaft_j + c.friction_brakes_j).toBeLessThan(1.01 * c.asked_at_wheels_j);
      expect(c.friction_brakes_j).toBeGreaterThan(
        (1 - compact.body.drivenAxleBrakingShare) * c.asked_at_wheels_j * 0.98,
      );
      expect(c.soc_after).toBeGreaterThan(c.soc);
    }
  });

  it("keeps what it recovers: the battery holds that much more than after a stop with the brakes alone", () => {
    const c = stopOf(compact, 60, 1.5);
    // Beside what comes in at the terminals the auxiliaries are fed, and some is lost in the battery's resistance.
    expect(c.kept_share).toBeGreaterThan(c.recovered_share - 0.06);
    expect(c.kept_share).toBeLessThan(c.recovered_share + 0.02);
    expect(c.fuel_saved_j).toBe(0);
  });

  it("is the same whatever the strategy's own regeneration says", () => {
    const other = regenerationCell(plan(compact), noRegeneration, kmhToMps(60), 1, 0.58);
    expect(other).toEqual(regenerationCell(plan(compact), rules, kmhToMps(60), 1, 0.58));
  });

  it("is asked for at the charge wanted, where that can be", () => {
    for (const charge of [0.42, 0.58, 0.72])
      expect(stopOf(compact, 60, 1, charge).soc).toBeCloseTo(charge, 2);
  });
});

describe("the limit that binds", () => {
  const cases: readonly (readonly [limit: string, setting: string, kmh: number, rate: number])[] = [
    ["axle-share", "body.mass=1500", 40, 0.6],
    ["battery-charge", "battery.maxChargeCurrent=15", 60, 2],
    ["output-torque", "outputMachine.peakTorque=45", 30, 2],
    ["low-speed-fade", "control.fadeStart=9", 25, 1],
  ];
  it.each(cases)("is %s with %s at %d km/h and %d m/s²", (limit, setting, kmh, rate) => {
    const c = stopOf(with_(setting), kmh, rate);
    expect(c.limit).toBe(limit);
    const told = c.limits.reduce((sum, { friction }) => sum + friction, 0);
    expect(told / c.friction_brakes_j).toBeCloseTo(1, 1);
  });

  it("is the battery's above the charge where it is full, and less comes back there", () => {
    const [middle, full] = [stopOf(compact, 80, 2, 0.58), stopOf(compact, 80, 2, 0.79)];
    expect(full.limit).toBe("battery-charge");
    expect(full.recovered_share).toBeLessThan(middle.recovered_share);
  });

  it("lets less come back the harder the stop, once the machine or the battery is at its limit", () => {
    const shares = [2, 3, 4, 6].map((rate) => stopOf(compact, 80, rate).recovered_share);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
  });
});

describe("the map", () => {
  const small = plan(compact, { speeds: evenNumbers(5, 15, 2), rates: [1, 2], charges: [0.5, 0.6] });
  const whole = regenerationMap(small, rules);

  it("has a cell for each charge, speed and rate, in that order, the same every time", () => {
    expect(whole.complete).toBe(true);
    expect(whole.cells.map(({ charge, speed, rate }) => [charge, speed, rate])).toEqual(
      [0.5, 0.6].flatMap((charge) => [5, 15].flatMap((speed) => [1, 2].map((rate) => [charge, speed, rate]))),
    );
    expect(regenerationJson(regenerationMap(small, rules), "rules", "0")).toBe(
      regenerationJson(whole, "rules", "0"),
    );
  });

  it("keeps the cells that were done when it is stopped", () => {
    let seen = 0;
    const stopped = regenerationMap(small, rules, { report: () => (seen += 1), cancelled: () => seen === 3 });
    expect(stopped.complete).toBe(false);
    expect(stopped.cells).toEqual(whole.cells.slice(0, 3));
  });

  it("is told as CSV, a row a stop", () => {
    const [header = "", ...rows] = regenerationCsv(whole).trimEnd().split("\n");
    expect(header.startsWith("speed_mps,rate_mps2,charge_asked")).toBe(true);
    expect(rows.length).toBe(8);
    for (const row of rows) expect(row.split(",").length).toBe(header.split(",").length);
  });

  it("refuses values that cannot be driven, all at once", () => {
    const wrong = plan(compact, { speeds: [0], rates: [20], charges: [] });
    expect(() => regenerationMap(wrong, rules)).toThrow(InputError);
    expect(() => regenerationMap(wrong, rules)).toThrow(/speeds[\s\S]*rates[\s\S]*charges/);
  });
});
