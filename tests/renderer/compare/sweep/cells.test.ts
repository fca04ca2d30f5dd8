import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { cellOf, extentOf, indexOf, shareOf } from "../../../../renderer/compare/sweep/cells.ts";
import { FUEL, QUANTITIES } from "../../../../renderer/compare/sweep/quantities.ts";
import { type SweepPlan, sweepJobs } from "../../../../sim/study/sweep/plan.ts";
import { runSweepJob } from "../../../../sim/study/sweep/run-sweep-job.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const plan: SweepPlan = {
  vehicles: [vehicleById("compact")],
  axes: [
    { path: "run.payload", values: ["0", "100", "200"] },
    { path: "battery.socTarget", values: ["0.5", "0.9"] },
  ],
  cycles: [cycleById("stop-and-go")],
  strategies: [
    { kind: "built-in", id: "rules" },
    { kind: "built-in", id: "thermostat" },
  ],
  options: {},
};

describe("cells of a sweep", () => {
  it("have the indices of the engine's own runs", () => {
    for (const job of sweepJobs(plan)) {
      const place = job.values.map((value, i) => plan.axes[i]?.values.indexOf(value) ?? -1);
      const strategy = job.index % 2;
      expect(indexOf(plan, place, strategy)).toBe(job.index);
    }
  });

  it("hold a figure, the reason why there is none, or that they wait", () => {
    const [job] = sweepJobs(plan);
    if (!job) throw new Error("no runs");
    const row = runSweepJob(job);
    const cell = cellOf(row, FUEL);
    expect(cell.kind === "value" && cell.value).toBe(
      row.row?.fuel.balanced ? row.row.fuel.litres_per_100km : "not balanced",
    );
    expect(cellOf(undefined, FUEL)).toEqual({ kind: "waiting" });
    const refused = [...sweepJobs(plan)].find((one) => one.refused !== "");
    if (!refused) throw new Error("0.9 lies over the window and is refused");
    expect(cellOf(runSweepJob(refused), FUEL)).toEqual({ kind: "refused", why: refused.refused });
    const unbalanced = row.row && {
      ...row,
      row: { ...row.row, fuel: { balanced: false as const, reason: "too short" } },
    };
    if (!unbalanced) throw new Error("no row");
    for (const quantity of QUANTITIES.filter(({ id }) => id === "fuel" || id === "over"))
      expect(cellOf(unbalanced, quantity)).toMatchObject({ kind: "none", why: "too short" });
  });

  it("have a scale of their figures alone", () => {
    const value = (number: number) => ({ kind: "value" as const, value: number, row: {} as never });
    expect(extentOf([{ kind: "waiting" }])).toBeNull();
    const extent = extentOf([value(3), { kind: "waiting" }, value(5)]);
    expect(extent).toEqual([3, 5]);
    expect(shareOf(4, [3, 5])).toBe(0.5);
    expect(shareOf(4, [4, 4])).toBe(0.5);
  });
});
