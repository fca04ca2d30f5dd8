import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { boundSeries } from "../../../../sim/study/compare/bound-series.ts";
import { fuelOver } from "../../../../sim/study/compare/differ.ts";
import { compareJobs } from "../../../../sim/study/compare/job.ts";
import { runJob } from "../../../../sim/study/compare/run-job.ts";
import { optimum } from "../../../../sim/study/optimum/optimum.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const vehicle = vehicleById("compact");
const cycle = cycleById("nycc");
const found = optimum(vehicle, cycle, { grid: { socSteps: 60, points: 24 }, run: { startSoc: 0.58 } });
if (!found) throw new Error("cancelled");
const series = boundSeries(found);

describe("the least-fuel path over time", () => {
  it("ends at the optimum's fuel, starts included, and never gives fuel back", () => {
    expect(series.fuel.at(-1)).toBeCloseTo(found.fuelEnergy, 3);
    expect(series.fuel.every((value, i) => i === 0 || value >= (series.fuel[i - 1] ?? 0))).toBe(true);
    expect(series.fuel).toHaveLength(found.path.soc.length);
    expect(series.time.at(-1)).toBe((found.path.soc.length - 1) * found.demand.stage);
  });

  it("has a battery that gives what its charge loses", () => {
    const { charge, openCircuit } = found.values.problem.source;
    const [first = 0, last = 0] = [found.path.soc[0], found.path.soc.at(-1)];
    // Between the voltages at the lowest and the highest charge of the path.
    const volts = [Math.min(...openCircuit), Math.max(...openCircuit)];
    const given = (first - last) * charge;
    const energy = series.battery.at(-1) ?? Number.NaN;
    expect(Math.abs(energy)).toBeLessThanOrEqual(Math.abs(given) * (volts[1] ?? 0) + 1e3);
    found.path.soc.forEach((soc, i) => {
      if (soc < first - 1e-4) expect(series.battery[i]).toBeGreaterThan(0);
    });
  });

  it("lies under a strategy's fuel at the end, charge counted, by the table's distance", () => {
    const [job] = compareJobs([vehicle], [cycle], [{ kind: "built-in", id: "rules" }]);
    if (!job) throw new Error("no job");
    const { row, series: driven } = runJob(job);
    const over = fuelOver(driven, series, row.slope);
    if (!row.fuel.balanced) throw new Error(row.fuel.reason);
    const byTable = row.fuel.energy_j - found.fuelEnergy;
    expect(Math.abs((over.at(-1) ?? 0) - byTable)).toBeLessThan(0.02 * row.fuel.energy_j);
  });
});
