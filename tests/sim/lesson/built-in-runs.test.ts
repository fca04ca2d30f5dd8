import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { strategyById } from "../../../sim/control/strategies/registry.ts";
import type { RunOptions } from "../../../sim/options.ts";
import { runCsv } from "../../../sim/run/export.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { keyOf, rightOf, worked } from "./works.ts";

const drive = (cycle: string, strategy: string, options: RunOptions) =>
  simulate(vehicleById("compact"), cycleById(cycle), strategyById(strategy), options);

/** A run read from its CSV alone, as somebody with a spreadsheet would. */
class Sheet {
  private readonly lines: readonly string[];
  private readonly names: readonly string[];

  constructor(cycle: string, strategy: string, options: RunOptions = {}) {
    const run = drive(cycle, strategy, options);
    const text = [...runCsv(run.log, regimes(run.log, run.p))].join("");
    const [head = "", ...lines] = text.trimEnd().split("\n");
    this.names = head.split(",");
    this.lines = lines;
  }

  private place(name: string): number {
    const place = this.names.indexOf(name);
    if (place < 0) throw new Error(`no column ${name}`);
    return place;
  }

  column(name: string): readonly number[] {
    const place = this.place(name);
    return this.lines.map((line) => Number(line.split(",", place + 1)[place]));
  }

  last(name: string): number {
    return Number(this.lines.at(-1)?.split(",")[this.place(name)]);
  }

  /** Value of the row at a time, s. */
  at(name: string, time: number): number {
    const row = this.column("time_s").findIndex((t) => Math.abs(t - time) < 1e-6);
    return this.column(name)[row] ?? Number.NaN;
  }

  /** J: 0.1 s × the part of a power that a condition takes. */
  energy(name: string, take: (power: number) => number): number {
    return this.column(name).reduce((sum, power) => sum + 0.1 * take(power), 0);
  }

  /** L/100 km of an energy, J: 43.2 MJ/kg or whatever the vehicle's fuel holds, by its own parameters. */
  per100(energy: number): number {
    const { lowerHeat, density } = vehicleById("compact").fuel;
    return ((energy / lowerHeat / density) * 1000 * 100_000) / this.last("distance_m");
  }

  get fuel(): number {
    return this.per100(this.last("fuel_j"));
  }

  /** Net energy out of the battery's source, J. */
  get net(): number {
    return -this.last("battery_change_j");
  }
}

const within = (got: number, expected: number, share: number): void =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(share);

/** Recovered over asked, per cent, from the sheet: braking is where the wheels ask for power below zero. */
const recovered = (sheet: Sheet): number =>
  (100 * sheet.last("recovered_j")) / sheet.energy("wheel_power_ask_w", (p) => Math.max(0, -p));

describe("keys of runs, against the run's own table", () => {
  it("regeneration: shares of gentle, hard, hill and town", () => {
    const lesson = worked("regeneration");
    const gentle = new Sheet("brake-stop:speed=60km/h,rate=1m/s2", "rules");
    const hard = new Sheet("brake-stop:speed=60km/h,rate=6m/s2", "rules");
    const hill = new Sheet("hill-down:speed=60km/h,drop=6%,length=3000m", "rules");
    within(keyOf(lesson, "gentle-share"), recovered(gentle), 0.03);
    within(keyOf(lesson, "hard-share"), recovered(hard), 0.06);
    within(keyOf(lesson, "hill-share"), recovered(hill), 0.03);
    within(keyOf(lesson, "town-saved"), recovered(new Sheet("nycc", "rules")), 0.03);
    expect(rightOf(lesson, "hard-or-gentle")).toBe(recovered(gentle) > recovered(hard) ? 0 : 1);
    expect(rightOf(lesson, "why-less")).toBe(recovered(hill) < recovered(gentle) ? 0 : 1);
    const heat = hard.last("friction_brake_j") / hard.energy("wheel_power_ask_w", (p) => Math.max(0, -p));
    within(keyOf(lesson, "friction-heat"), 100 * heat, 0.06);
  });

  it("starting: regime at the first start, and the fuel of starts", () => {
    const lesson = worked("starting-the-engine");
    const sheet = new Sheet("nycc", "rules");
    const share = sheet.last("start_fuel_j") / sheet.last("fuel_j");
    within(keyOf(lesson, "start-fuel-share"), 100 * share, 1e-9);
    const first = sheet.column("engine_on").indexOf(1);
    // Assist: the battery gives more than auxiliaries, 2 kW and a quarter of the engine's power together.
    const battery = (sheet.column("battery_power_w")[first] ?? 0) - (sheet.column("aux_w")[first] ?? 0);
    expect(battery).toBeGreaterThan(2000);
    expect(rightOf(lesson, "starting-regime")).toBe(4);
  });

  it("mechanical point: the sun uphill, by the gear equation from the table", () => {
    const sheet = new Sheet("cruise:speed=100km/h,grade=3%,for=60s", "rules");
    const engine = sheet.at("engine_speed_radps", 80);
    const sun = (3.5 * engine - 2.5 * sheet.at("ring_speed_radps", 80)) * (30 / Math.PI);
    within(keyOf(worked("mechanical-point"), "hill-sun-speed"), sun, 1e-9);
  });

  it("charge balance: raw fuel, charge, slope and correction", () => {
    const lesson = worked("charge-balance");
    const low = new Sheet("nycc", "rules", { startSoc: 0.5 });
    const high = new Sheet("nycc", "rules", { startSoc: 0.7 });
    within(keyOf(lesson, "raw-difference"), low.fuel - high.fuel, 1e-9);
    within(keyOf(lesson, "charge-low"), 100 * (low.last("soc") - 0.5), 1e-9);
    expect(low.net < 0 && high.net > 0).toBe(true);
    expect(rightOf(lesson, "who-paid")).toBe(0);
    // A straight line through the two runs crosses net = 0 near the balanced figure: an estimate of its own.
    const slope = (low.last("fuel_j") - high.last("fuel_j")) / (high.net - low.net);
    within(keyOf(lesson, "worth"), (slope * low.net) / 1000, 0.15);
    within(keyOf(lesson, "corrected"), low.per100(low.last("fuel_j") + slope * low.net), 0.03);
    expect(rightOf(lesson, "still-different")).toBe(0);
  });

  it("comparing: balanced figures are those of a drive that repeats itself", () => {
    const lesson = worked("comparing-strategies");
    // Driven again and again from the charge where it ended, the drive repeats itself; the small rest is corrected with
    // 2.7 J of fuel for 1 J of charge (1 % against some 2.7 %: common practice, no source).
    const balanced = (strategy: string): number => {
      let startSoc = 0.58;
      for (let i = 0; i < 3; i += 1) startSoc = drive("nycc", strategy, { startSoc }).s.soc;
      const sheet = new Sheet("nycc", strategy, { startSoc });
      expect(Math.abs(sheet.net)).toBeLessThan(0.08 * sheet.last("fuel_j"));
      return sheet.per100(sheet.last("fuel_j") + 2.7 * sheet.net);
    };
    const rules = balanced("rules");
    within(keyOf(lesson, "without-regeneration"), balanced("no-regeneration") / rules, 0.02);
    expect(
      Math.abs(keyOf(lesson, "weighing-gain") - 100 * (1 - balanced("equivalent-adapted") / rules)),
    ).toBeLessThan(1.2);
    expect(
      Math.abs(keyOf(lesson, "balanced-difference") - 100 * (balanced("thermostat") / rules - 1)),
    ).toBeLessThan(1.2);
    const ruled = new Sheet("nycc", "rules");
    const on = ruled.energy("engine_on", (running) => running) / 598;
    within(keyOf(lesson, "always-on-share"), 100 * on, 0.05);
    const speed = ruled.column("engine_speed_radps");
    const work = ruled.column("engine_torque_nm").reduce((sum, torque, i) => {
      const power = torque * (speed[i] ?? 0);
      return sum + 0.1 * Math.max(0, power);
    }, 0);
    within(keyOf(lesson, "mean-efficiency"), (100 * work) / ruled.last("fuel_j"), 0.03);
  });
});
