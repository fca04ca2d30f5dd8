import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { InputError } from "../../../../shared/errors.ts";
import { optimum } from "../../../../sim/study/optimum/optimum.ts";
import { PATH_COLUMNS, pathCsv } from "../../../../sim/study/optimum/path-csv.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { cancelAfter, notCancelled, optimumFor } from "./cases.ts";

const compact = vehicleById("compact");
const nycc = cycleById("nycc");

describe("the optimum", () => {
  it("moves by less than 0.2 % on the urban schedule when every grid is refined by two", () => {
    const usual = optimumFor("compact", "udds");
    const fine = optimumFor("compact", "udds", {
      grid: { stage: 0.5, socSteps: 400, points: 120, speeds: 2 },
    });
    expect(Math.abs(fine.fuelEnergy / usual.fuelEnergy - 1)).toBeLessThan(0.002);
    expect(Math.abs(fine.fuelEnergy - usual.fuelEnergy)).toBeLessThan(usual.gridError);
    expect(usual.gridError / usual.fuelEnergy).toBeLessThan(0.004);
    expect(fine.gridError).toBeLessThan(usual.gridError);
  }, 300_000);

  it("ends exactly at the charge asked, and stays inside the battery's window", () => {
    for (const endSoc of [0.55, 0.58, 0.62]) {
      const found = optimumFor("compact", "nycc", { endSoc });
      expect(found.feasible).toBe(true);
      expect(Math.abs((found.path.soc[found.demand.stages] ?? 0) - endSoc)).toBeLessThan(2e-4);
      for (const soc of found.path.soc) {
        expect(soc).toBeGreaterThanOrEqual(compact.battery.socFloor);
        expect(soc).toBeLessThanOrEqual(compact.battery.socCeiling);
      }
    }
  });

  it("costs more the more charge is to be left", () => {
    const fuel = [0.5, 0.54, 0.58, 0.62].map(
      (endSoc) => optimumFor("compact", "nycc", { endSoc }).fuelEnergy,
    );
    expect([...fuel].sort((a, b) => a - b)).toEqual(fuel);
  });

  it("lists the seconds that the vehicle cannot do, and takes them at its limit", () => {
    const found = optimumFor("compact", "us06");
    expect(found.unmet.length).toBeGreaterThan(0);
    expect(found.unmet.length).toBeLessThan(12);
    expect(found.feasible).toBe(true);
    expect(Math.abs((found.path.soc[found.demand.stages] ?? 0) - 0.58)).toBeLessThan(2e-4);
    expect(optimumFor("compact", "udds").unmet).toEqual([]);
  });

  it("says so when no way of driving ends at the charge asked", () => {
    const launch = cycleById("launch");
    const found = notCancelled(optimum(compact, launch, { run: { startSoc: 0.4 }, endSoc: 0.79 }));
    expect(found.feasible).toBe(false);
    expect(found.reason).toMatch(/no way of driving/);
    expect(found.fuelEnergy).toBeNaN();
  });

  it("needs no fuel when the battery may be emptied", () => {
    const family = vehicleById("family");
    const found = notCancelled(optimum(family, nycc, { run: { startSoc: 0.9 }, endSoc: 0.3 }));
    expect(found.fuelEnergy).toBe(0);
    expect(found.starts).toBe(0);
  });

  it("gives the same bytes again, tells its progress, and can be cancelled", () => {
    const shares: number[] = [];
    const options = { run: { startSoc: 0.58 } };
    const first = notCancelled(optimum(compact, nycc, options, { report: (share) => shares.push(share) }));
    const again = notCancelled(optimum(compact, nycc, options));
    expect(again.path).toEqual(first.path);
    expect(again.gridError).toBe(first.gridError);
    expect(shares.length).toBeGreaterThan(10);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
    expect(optimum(compact, nycc, options, cancelAfter(3))).toBeNull();
  });

  it.each([
    [{ grid: { socSteps: 2 } }, /optimum socSteps/],
    [{ grid: { points: Number.NaN } }, /optimum points/],
    [{ grid: { stage: 0.01 } }, /optimum stage/],
    [{ endSoc: 0.2 }, /optimum endSoc/],
    [{ run: { startSoc: 0.9 } }, /optimum startSoc/],
    [{ run: { coldStart: true } }, /coldStart/],
  ])("refuses %j", (options, where) => {
    const work = () => optimum(compact, nycc, options);
    expect(work).toThrow(InputError);
    expect(work).toThrow(where);
  });

  it("writes its path, a line a stage and one for the end", () => {
    const found = optimumFor("compact", "nycc");
    const lines = [...pathCsv(found)].join("").trimEnd().split("\n");
    expect(lines.length).toBe(found.demand.stages + 2);
    for (const line of lines) expect(line.split(",").length).toBe(PATH_COLUMNS.length);
    const fuel = lines.slice(1, -1).reduce((sum, line) => sum + Number(line.split(",")[7]), 0);
    const starts = found.starts * compact.engine.startFuel;
    expect(Math.abs((fuel * found.demand.stage + starts) / found.fuelEnergy - 1)).toBeLessThan(1e-9);
  });
});
