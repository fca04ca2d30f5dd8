import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { at } from "../../../../shared/at.ts";
import { litres } from "../../../../sim/run/fuel.ts";
import { fuelOver, whereTheyDiffer } from "../../../../sim/study/compare/differ.ts";
import { compareJobs } from "../../../../sim/study/compare/job.ts";
import { runJob } from "../../../../sim/study/compare/run-job.ts";
import { compareCsv } from "../../../../sim/study/compare/table.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const cycle = cycleById("nycc");
const strategies = ["rules", "no-regeneration", "thermostat"].map((id) => ({
  kind: "built-in" as const,
  id,
}));
const jobs = compareJobs([compact, vehicleById("van")], [cycle], strategies);
const results = jobs.map((job) => runJob(job));

describe("a comparison", () => {
  it("lists every vehicle × cycle × strategy once, in a fixed order", () => {
    expect(jobs.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(
      jobs.map(({ vehicle, strategy }) => `${vehicle.id} ${strategy.kind === "built-in" && strategy.id}`),
    ).toEqual([
      "compact rules",
      "compact no-regeneration",
      "compact thermostat",
      "van rules",
      "van no-regeneration",
      "van thermostat",
    ]);
  });

  it("carries net battery energy, and a corrected figure or a reason", () => {
    for (const { row } of results) {
      if (row.fuel.balanced) {
        const left = row.fuel.energy_j - (row.raw_fuel_j + row.slope * row.net_battery_j);
        expect(Math.abs(left)).toBeLessThan(1e-6 * row.fuel.energy_j);
        const volume = litres(compact.fuel, row.fuel.energy_j) / (row.distance_m / 1e5);
        expect(row.fuel.litres_per_100km).toBeCloseTo(volume, 9);
      } else expect(row.fuel.reason).not.toBe("");
      expect(Number.isFinite(row.net_battery_j)).toBe(true);
    }
  });

  it("shows that regeneration saves fuel on a town cycle", () => {
    const of = (index: number): number => {
      const { fuel } = results[index]?.row ?? {};
      if (!fuel?.balanced) throw new Error("not balanced");
      return fuel.litres_per_100km;
    };
    expect(of(1)).toBeGreaterThan(of(0));
    expect(of(4)).toBeGreaterThan(of(3));
    expect(results[1]?.row.recovered_j).toBeLessThan(0.02 * (results[0]?.row.recovered_j ?? 0));
  });

  it("goes to CSV with a line a row, whatever order the rows come in", () => {
    const text = compareCsv(results.map(({ row }) => row).reverse());
    // A reason may hold a comma; it is quoted then.
    const lines = text
      .trimEnd()
      .split("\n")
      .map((line) => line.replaceAll(/"[^"]*"/g, "quoted").split(","));
    expect(lines).toHaveLength(7);
    expect(lines[1]?.slice(0, 2)).toEqual(["compact", cycle.id]);
    for (const line of lines) expect(line.length).toBe(lines[0]?.length);
  });
});

describe("where two runs differ", () => {
  const [rules, without] = results;
  it("the stretches do not overlap, come in the order of time, and add up to no more than all losses", () => {
    if (!rules || !without) throw new Error("no results");
    const found = whereTheyDiffer(without.series, rules.series, rules.row.slope);
    expect(found.length).toBeGreaterThan(0);
    expect(found.length).toBeLessThanOrEqual(3);
    for (let i = 1; i < found.length; i += 1) {
      expect(found[i]?.from).toBeGreaterThanOrEqual(found[i - 1]?.to ?? 0);
    }
    const curve = fuelOver(without.series, rules.series, rules.row.slope);
    for (const { from, to, energy } of found) {
      expect(energy).toBeCloseTo(at(curve, to) - at(curve, from), 6);
    }
  });

  it("there are none between a run and itself", () => {
    if (!rules) throw new Error("no results");
    expect(whereTheyDiffer(rules.series, rules.series, 2.7)).toEqual([]);
  });
});
