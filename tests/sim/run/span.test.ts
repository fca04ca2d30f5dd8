import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { spanFigures } from "../../../sim/run/span.ts";
import { summarize } from "../../../sim/run/summary.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const v = vehicleById("compact");
const cycle = cycleById("udds");
const run = simulate(v, cycle, rules);
const regime = regimes(run.log, run.p);
const whole = spanFigures(run.log, regime, v, 0, run.log.rows - 1);

describe("figures of a stretch", () => {
  it("of the whole drive are the summary's", () => {
    const summary = summarize(run, v, cycle, "rules", regime);
    expect(whole.duration).toBeCloseTo(summary.duration_s, 6);
    expect(Math.abs(whole.distance / summary.distance_m - 1)).toBeLessThan(1e-9);
    expect(whole.fuel).toBeCloseTo(summary.fuel.energy_j, 3);
    expect(whole.used.litresPer100Km).toBeCloseTo(summary.fuel.l_per_100km, 6);
    expect(whole.battery).toBeCloseTo(summary.battery.net_j, 3);
    expect(whole.recovered).toBeCloseTo(summary.recovered.into_battery_j, 3);
    expect(Math.abs(whole.asked / summary.recovered.asked_at_wheels_j - 1)).toBeLessThan(1e-6);
    for (const { id, seconds } of summary.regimes) {
      expect(whole.regimes.find((one) => one.id === id)?.seconds).toBeCloseTo(seconds, 6);
    }
    for (const { id, seconds } of summary.limits) {
      expect(whole.limits.find((one) => one.id === id)?.seconds).toBeCloseTo(seconds, 6);
    }
  });

  it("give braking as the run's own books do, in stop and go, fast, and over hills", () => {
    for (const id of ["nycc", "us06", "hill-down"]) {
      const other = simulate(v, cycleById(id), rules);
      const found = spanFigures(other.log, regimes(other.log, other.p), v, 0, other.log.rows - 1);
      const { brakingAsked, brakingFriction, recovered } = other.b;
      expect(Math.abs(found.asked - brakingAsked), id).toBeLessThan(1e-6 * brakingAsked + 1e-3);
      expect(Math.abs(found.friction - brakingFriction), id).toBeLessThan(0.002 * brakingAsked + 1);
      expect(found.recovered, id).toBeCloseTo(recovered, 3);
      expect(found.recovered + found.friction + found.rest, id).toBeCloseTo(found.asked, 6);
      expect(found.rest, id).toBeGreaterThan(0);
    }
  });

  it("of neighbouring stretches add up", () => {
    const middle = 4321;
    const parts = [
      spanFigures(run.log, regime, v, 0, middle),
      spanFigures(run.log, regime, v, middle, run.log.rows - 1),
    ];
    for (const name of [
      "duration",
      "distance",
      "fuel",
      "battery",
      "asked",
      "recovered",
      "friction",
      "engineOn",
    ] as const) {
      const sum = parts.reduce((total, part) => total + part[name], 0);
      expect(Math.abs(sum - whole[name]), name).toBeLessThan(1e-6 * Math.max(1, Math.abs(whole[name])));
    }
  });

  it("of a stop at rest have no braking to share", () => {
    const rest = spanFigures(run.log, regime, v, 0, 20);
    expect(rest.distance).toBe(0);
    expect(rest.share).toBeNaN();
  });
});
