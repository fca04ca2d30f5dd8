import { describe, expect, it } from "vitest";
import { cycleById, listCycles } from "../../../cycles/catalogue.ts";
import { statistics } from "../../../cycles/statistics/basics.ts";
import { besideStandard, standardRows } from "../../../cycles/statistics/beside-standard.ts";
import { drivingDynamics } from "../../../cycles/statistics/on-road.ts";
import { traceOf } from "../trace-of.ts";

describe("besideStandard", () => {
  const own = traceOf([
    [0, 0.2],
    [10, 10],
    [20, 10],
    [30, 0.2],
    [40, 0.2],
  ]);

  it("has the own cycle first and every standard one once", () => {
    const rows = besideStandard(own);
    const standard = listCycles().filter((info) => info.kind === "standard");
    expect(rows.map((row) => row.id)).toEqual(["test", ...standard.map((info) => info.id)]);
    expect(rows.map((row) => row.kind)).toEqual(["own", ...standard.map(() => "standard")]);
  });

  it("gives each the figures of its own functions", () => {
    for (const row of standardRows()) {
      expect(row.statistics).toEqual(statistics(cycleById(row.id)));
      expect(row.dynamics).toEqual(drivingDynamics(cycleById(row.id)));
    }
  });

  it("counts a recorded creep as standing, or not, as asked", () => {
    expect(besideStandard(own)[0]?.statistics.restTime).toBe(10);
    expect(besideStandard(own, 0)[0]?.statistics.restTime).toBe(0);
  });
});
