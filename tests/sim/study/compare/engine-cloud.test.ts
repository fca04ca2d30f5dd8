import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { engineCloud } from "../../../../sim/study/compare/engine-cloud.ts";
import { compareJobs } from "../../../../sim/study/compare/job.ts";
import { runJob } from "../../../../sim/study/compare/run-job.ts";
import type { Series } from "../../../../sim/study/compare/series.ts";
import { bestEfficiencyCurve } from "../../../../sim/vehicle/maps.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const vehicle = vehicleById("compact");
const { engine } = vehicle;

/** A drive whose engine stays at one point. */
function steady(speed: number, torque: number, seconds: number): Series {
  const count = seconds + 1;
  const all = (value: number): Float64Array => new Float64Array(count).fill(value);
  return {
    time: Float64Array.from({ length: count }, (_, i) => i),
    speed: all(0),
    soc: all(0.5),
    fuel: all(0),
    battery: all(0),
    regime: new Uint8Array(count),
    engineSpeed: all(speed),
    engineTorque: all(torque),
  };
}

describe("where an engine worked", () => {
  it("is one spot of all its seconds for an engine that stays at a point", () => {
    const cloud = engineCloud(steady(200, 80, 40), engine, "time");
    expect(cloud.spots).toHaveLength(1);
    expect(cloud.spots[0]).toMatchObject({ weight: 40 });
    expect(cloud.spots[0]?.speed).toBeCloseTo(200, 9);
    expect(cloud.torque).toBeCloseTo(80, 9);
    expect(cloud.seconds).toBe(40);
  });

  it("is near the best on the best-efficiency line at middle powers, and not at idle", () => {
    const { x, y } = bestEfficiencyCurve(engine);
    const middle = Math.floor(x.length / 2);
    expect(engineCloud(steady(x[middle] ?? 0, y[middle] ?? 0, 10), engine, "time").near).toBe(1);
    expect(engineCloud(steady(engine.idleSpeed, 5, 10), engine, "time").near).toBe(0);
  });

  it("adds up to the time fired or the fuel burnt, whichever it weighs", () => {
    const [job] = compareJobs([vehicle], [cycleById("nycc")], [{ kind: "built-in", id: "rules" }]);
    if (!job) throw new Error("no job");
    const { row, series } = runJob(job);
    const time = engineCloud(series, engine, "time");
    const fuel = engineCloud(series, engine, "fuel");
    const sum = ({ spots }: typeof time): number => spots.reduce((all, { weight }) => all + weight, 0);
    expect(sum(time)).toBeCloseTo(time.seconds, 9);
    // A point a second stands for the ten rows of that second.
    expect(Math.abs(time.seconds - row.engine_seconds)).toBeLessThan(0.15 * row.engine_seconds);
    expect(Math.abs(sum(fuel) - row.raw_fuel_j)).toBeLessThan(0.15 * row.raw_fuel_j);
    expect(time.efficiency).toBeGreaterThan(0.2);
    expect(time.efficiency).toBeLessThan(0.45);
  });

  it("is empty without a number when the engine never fired", () => {
    const cloud = engineCloud(steady(0, 0, 5), engine, "fuel");
    expect(cloud.spots).toEqual([]);
    expect(cloud.seconds).toBe(0);
    expect(cloud.efficiency).toBeNaN();
  });
});
