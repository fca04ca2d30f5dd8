import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { InputError } from "../../../../shared/errors.ts";
import { runJob } from "../../../../sim/study/compare/run-job.ts";
import { checkAxes, evenValues, settingAt, unitOf } from "../../../../sim/study/sweep/axis.ts";
import {
  mergeResults,
  missing,
  readResults,
  resultsJson,
  type SweepResults,
} from "../../../../sim/study/sweep/file.ts";
import { countIn, countJobs, isIn, type SweepPlan, sweepJobs } from "../../../../sim/study/sweep/plan.ts";
import { runSweepJob } from "../../../../sim/study/sweep/run-sweep-job.ts";
import { sweepCsv } from "../../../../sim/study/sweep/table.ts";
import { presentEngineMap } from "../../../../sim/vehicle/engine-map/write.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../../../sim/vehicle/read.ts";

const plan: SweepPlan = {
  vehicles: [vehicleById("compact")],
  axes: [
    { path: "run.payload", values: ["0", "300"] },
    { path: "body.dragArea", values: ["0.6", "0.9"] },
  ],
  cycles: [cycleById("brake-stop")],
  strategies: [{ kind: "built-in", id: "rules" }],
  options: {},
};
const jobs = [...sweepJobs(plan)];
const rows = jobs.map((job) => runSweepJob(job));
const whole: SweepResults = { plan, part: null, rows, version: "1" };

const refusal = (work: () => unknown): string => {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error("nothing was refused");
};

describe("the runs of a sweep", () => {
  it("are every combination once, the last axis first, with the values set", () => {
    expect(jobs.map(({ values }) => values.join(" "))).toEqual(["0 0.6", "0 0.9", "300 0.6", "300 0.9"]);
    expect(jobs.map(({ job }) => job?.options.payload)).toEqual([0, 0, 300, 300]);
    expect(jobs.map(({ job }) => job?.vehicle.body.dragArea)).toEqual([0.6, 0.9, 0.6, 0.9]);
    expect(jobs[3]?.job?.vehicle.engine).toEqual(plan.vehicles[0]?.engine);
  });

  it("are the figures of a comparison of the vehicle changed by hand", () => {
    const { vehicle, cycle, strategy } = jobs[0]?.job ?? {};
    if (!vehicle || !cycle || !strategy) throw new Error("no run");
    const changed = readVehicle({ ...vehicle, body: { ...vehicle.body, dragArea: 0.9 } }, "");
    const { row } = runJob({ index: 3, vehicle: changed, cycle, strategy, options: { payload: 300 } });
    expect(rows[3]?.row).toEqual(row);
    expect(rows[3]?.row?.raw_fuel_j).not.toBe(rows[0]?.row?.raw_fuel_j);
  });

  it("of all parts together are the whole, each once, and no part is longer than another by more than one", () => {
    const count = { min: 1, max: 30 };
    fc.assert(
      fc.property(fc.integer(count), fc.integer(count), (of, values) => {
        const axes = [{ path: "run.payload", values: evenValues(0, 100, values) }];
        const one: SweepPlan = { ...plan, axes };
        const parts = Array.from({ length: of }, (_, i) => ({ number: i + 1, of }));
        const lists = parts.map((part) => [...sweepJobs(one, part)]);
        const indices = lists.flat().map(({ index }) => index);
        expect(indices.sort((a, b) => a - b)).toEqual(Array.from({ length: values }, (_, i) => i));
        const lengths = lists.map((list) => list.length);
        expect(lengths).toEqual(parts.map((part) => countIn(one, part)));
        expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("that do not go together are rows with a reason, and the others are driven", () => {
    const axes = [{ path: "battery.socTarget", values: ["0.58", "0.9"] }];
    const [good, bad] = [...sweepJobs({ ...plan, axes })];
    expect(good?.job).not.toBeNull();
    if (!bad) throw new Error("no second run");
    const row = runSweepJob(bad);
    expect(row.row).toBeNull();
    expect(row.failure).toMatch(/socTarget/);
  });
});

describe("axes", () => {
  it("are refused where they are wrong in themselves, naming what would be right", () => {
    expect(refusal(() => checkAxes([{ path: "body.dragAria", values: ["2"] }]))).toMatch(/body\.dragArea/);
    expect(refusal(() => checkAxes([{ path: "body.dragArea", values: ["-1"] }]))).toMatch(/too small/);
    expect(refusal(() => checkAxes([{ path: "run.load", values: ["1"] }]))).toMatch(/run\.payload/);
    expect(refusal(() => checkAxes([{ path: "run.payload", values: ["9000"] }]))).toMatch(/5000 kg/);
    expect(refusal(() => checkAxes([{ path: "run.payload", values: [""] }]))).toMatch(/not a number/);
    expect(refusal(() => checkAxes([{ path: "run.payload", values: [] }]))).toMatch(/count of values/);
    const one = { path: "run.payload", values: ["1"] };
    expect(refusal(() => checkAxes([one, one]))).toMatch(/varied twice/);
    expect(refusal(() => checkAxes([one, { ...one, path: "run.headWind" }, one]))).toMatch(/one or two/);
  });

  it("take flags and words too, and know their units", () => {
    const base = { vehicle: vehicleById("compact"), options: {} };
    const cold = settingAt(base, [{ path: "run.coldStart", values: ["true"] }], ["true"]);
    expect(cold.options.coldStart).toBe(true);
    expect(cold.vehicle).toBe(base.vehicle);
    expect(unitOf("run.payload")).toBe("kg");
    expect(unitOf("body.dragArea")).toBe("m2");
  });

  it("take a whole list or table by a factor", () => {
    const vehicle = vehicleById("compact");
    const set = (path: string, value: string) =>
      settingAt({ vehicle, options: {} }, [{ path, values: [value] }], [value]).vehicle;
    const path = "factor.engine.fullLoadTorque";
    expect(set(path, "0.9").engine.fullLoadTorque).toEqual(
      vehicle.engine.fullLoadTorque.map((torque) => torque * 0.9),
    );
    expect(set(path, "0.9").engine.fullLoadSpeed).toEqual(vehicle.engine.fullLoadSpeed);
    expect(set(path, "1")).toEqual(vehicle);
    expect(unitOf(path)).toBe("×");
    const map = presentEngineMap(vehicle.engine);
    const mapped = readVehicle({ ...vehicle, engine: { ...vehicle.engine, map } }, "");
    const fuel = { path: "factor.engine.map.fuelPower", values: ["1.1"] };
    const dearer = settingAt({ vehicle: mapped, options: {} }, [fuel], ["1.1"]).vehicle;
    expect(dearer.engine.map?.fuelPower[2]?.[3]).toBe((map.fuelPower[2]?.[3] ?? 0) * 1.1);
    expect(refusal(() => set("factor.engine.map.fuelPower", "1.1"))).toMatch(/has no such list or table/);
    // A charge beyond 1 is refused by the vehicle, as any other.
    expect(refusal(() => set("factor.battery.cellSoc", "1.2"))).toMatch(/cellSoc/);
    const check = (values: readonly string[], of = path) => refusal(() => checkAxes([{ path: of, values }]));
    expect(check(["0.9", "0"])).toMatch(/out of range.*0\.01 … 100 ×/);
    expect(check(["much"])).toMatch(/not a number/);
    expect(check(["1.1"], "factor.engine.fullLoadTork")).toMatch(/factor\.engine\.fullLoadTorque/);
    expect(check(["1.1"], "factor.body.mass")).toMatch(/no list or table/);
    expect(() => checkAxes([{ path, values: ["0.8", "1.2"] }])).not.toThrow();
  });

  it("spread evenly between both ends, which are met exactly", () => {
    expect(evenValues(0, 1, 5)).toEqual(["0", "0.25", "0.5", "0.75", "1"]);
    const ends = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(ends, ends, fc.integer({ min: 2, max: 50 }), (from, to, count) => {
        const values = evenValues(from, to, count).map(Number);
        expect(values).toHaveLength(count);
        expect(values.at(-1)).toBe(to === 0 ? 0 : to);
        expect(Math.abs((values[0] ?? Number.NaN) - from)).toBeLessThanOrEqual(1e-11 * Math.abs(from));
      }),
    );
  });
});

describe("results", () => {
  const partOf = (number: number): SweepResults => ({
    ...whole,
    part: { number, of: 3 },
    rows: rows.filter(({ index }) => isIn({ number, of: 3 }, index)),
  });
  const read = (results: SweepResults) => readResults(JSON.parse(resultsJson(results)), "part.json");

  it("come back from their file, with the plan, and can be driven again to the same figures", () => {
    const back = read(whole);
    expect(resultsJson(back)).toBe(resultsJson(whole));
    expect(countJobs(back.plan)).toBe(4);
    const again = [...sweepJobs(back.plan)].map((job) => runSweepJob(job));
    expect(again).toEqual(rows);
  });

  it("of all parts merge to the bytes of the whole, in whatever order they come", () => {
    const parts = [3, 1, 2].map((number) => ({ name: `${number}.json`, results: read(partOf(number)) }));
    expect(resultsJson(mergeResults(parts))).toBe(resultsJson(whole));
  });

  it("tell how many runs are missing", () => {
    const two = [1, 3].map((number) => ({ name: `${number}.json`, results: read(partOf(number)) }));
    expect(missing(mergeResults(two))).toEqual({ of: 4, missing: 1 });
    expect(missing(partOf(1))).toEqual({ of: 2, missing: 0 });
    expect(missing({ ...partOf(1), rows: [] })).toEqual({ of: 2, missing: 2 });
  });

  it("are refused where they are not of one plan, disagree, or are no results", () => {
    const first = { name: "1.json", results: partOf(1) };
    const other = { ...partOf(2), plan: { ...plan, options: { payload: 10 } } };
    expect(refusal(() => mergeResults([first, { name: "2.json", results: other }]))).toMatch(/2\.json.*plan/);
    const changed = rows.slice(0, 1).map((row) => ({ ...row, failure: "x" }));
    const disagree = { ...whole, rows: changed };
    expect(refusal(() => mergeResults([first, { name: "3.json", results: disagree }]))).toMatch(/index 0/);
    expect(refusal(() => readResults({ format: "other" }, "x.json"))).toMatch(/x\.json/);
    expect(refusal(() => read({ ...partOf(1), rows }))).toMatch(/not of this plan and part/);
    expect(refusal(() => read({ ...whole, rows: [...rows, ...rows] }))).toMatch(/twice/);
  });

  it("go to CSV with a line a run that an independent reader (Papa Parse) reads back", () => {
    const text = sweepCsv(plan.axes, [...rows].reverse());
    const { data, errors } = Papa.parse<Record<string, string>>(text.trim(), { header: true });
    expect(errors).toEqual([]);
    expect(data.map((line) => line.index)).toEqual(["0", "1", "2", "3"]);
    expect(data.map((line) => line["run.payload"])).toEqual(["0", "0", "300", "300"]);
    expect(data.map((line) => Number(line.fuel_raw_j))).toEqual(rows.map(({ row }) => row?.raw_fuel_j));
  });
});
