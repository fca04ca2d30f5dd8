import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { kmhToMps } from "../../../shared/units.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { limitsIn } from "../../../sim/limits.ts";
import { CHANNELS, EXPORT_COLUMNS } from "../../../sim/run/channels.ts";
import { runCsv } from "../../../sim/run/export.ts";
import { limitsRun } from "../../../sim/run/limits-run.ts";
import { moments } from "../../../sim/run/moments.ts";
import { pathsAt } from "../../../sim/run/power-paths.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { summarize } from "../../../sim/run/summary.ts";
import { traceQuality } from "../../../sim/run/trace-quality.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { traceOf } from "../../support/random.ts";

const compact = vehicleById("compact");
const udds = cycleById("udds");
const run = simulate(compact, udds, rules);
const summary = summarize(run, compact, udds, "rules");

describe("export", () => {
  it("has the agreed columns in the agreed order", () => {
    expect(EXPORT_COLUMNS.slice(0, 31)).toEqual(
      (
        "time_s,target_mps,speed_mps,distance_m,grade,wheel_force_ask_n,wheel_power_ask_w,engine_on,engine_speed_radps," +
        "engine_torque_nm,fuel_power_w,fuel_j,sun_machine_speed_radps,sun_machine_torque_nm,sun_machine_electric_w," +
        "output_machine_speed_radps,output_machine_torque_nm,output_machine_electric_w,ring_speed_radps,sun_torque_nm," +
        "ring_torque_nm,carrier_torque_nm,friction_brake_n,battery_power_w,battery_current_a,battery_voltage_v,soc," +
        "aux_w,recovered_j,regime,limits"
      ).split(","),
    );
    expect(EXPORT_COLUMNS.slice(31).every((name) => name.endsWith("_j"))).toBe(true);
  });

  it("writes each channel under its own name", () => {
    const [header = "", ...rows] = [...runCsv(run.log, regimes(run.log, run.p))]
      .join("")
      .trimEnd()
      .split("\n");
    expect(rows.length).toBe(run.log.rows);
    const names = header.split(",");
    const cells = (rows[5000] ?? "").split(",");
    for (const { id, column } of CHANNELS) {
      expect(Number(cells[names.indexOf(column)]), column).toBe(at(run.log.view(id), 5000));
    }
  });

  it("keeps a log of 1,800 s under 12 MB", () => {
    const long = simulate(compact, cycleById("wltc-class3b"), rules);
    expect(long.log.bytes).toBeLessThan(12e6);
  });
});

describe("log", () => {
  it("gives the same columns whether they are read at the end or while it grows", () => {
    const trace = traceOf("short", [0, 5, 60], [0, 12, 12]);
    const whole = simulate(compact, trace, rules);
    const early = simulate(compact, trace, rules, {}, { report: () => 0 });
    early.log.view("speed");
    for (let i = 0; i < 50; i += 1) {
      whole.tick();
      early.tick();
    }
    for (const { id } of CHANNELS) expect(early.log.view(id), id).toEqual(whole.log.view(id));
    expect(early.log.carrierAngle).toEqual(whole.log.carrierAngle);
  });
});

describe("summary", () => {
  it("regimes fill the whole time", () => {
    const seconds = summary.regimes.reduce((sum, regime) => sum + regime.seconds, 0);
    expect(seconds).toBeCloseTo(run.time, 6);
  });

  it("energy recovered falls from place to place", () => {
    const r = summary.recovered;
    expect(r.at_machine_shaft_j).toBeLessThan(r.asked_at_wheels_j);
    expect(r.into_battery_j).toBeLessThan(r.at_machine_shaft_j);
    expect(r.share).toBeGreaterThan(0.55);
    expect(r.share).toBeLessThan(0.85);
  });

  it("net battery energy at the terminals and inside differ by the losses", () => {
    const losses = run.b.ohmic + run.b.polarisation;
    const inside = summary.battery.net_j - summary.battery.net_terminal_j;
    expect(Math.abs(inside - losses)).toBeLessThan(2000);
  });

  it("engine starts lie in the range set for the compact, 25 to 60", () => {
    expect(summary.engine.starts).toBeGreaterThanOrEqual(25);
    expect(summary.engine.starts).toBeLessThanOrEqual(60);
  });

  it("is plain data", () => {
    expect(JSON.parse(JSON.stringify(summary)).closure_relative).toBe(summary.closure_relative);
  });
});

describe("moments", () => {
  const found = moments(run.log, regimes(run.log, run.p));

  it("come in the order of time, each with a row, a value and a sentence", () => {
    expect(found.length).toBeGreaterThanOrEqual(6);
    for (const [index, m] of found.entries()) {
      expect(at(run.log.view("time"), m.row)).toBe(m.time);
      expect(m.sentence).toMatch(/^[A-Z].*\.$/);
      if (index > 0) expect(m.time).toBeGreaterThanOrEqual(at(found, index - 1).time);
    }
  });

  it("the sun does pass through zero where they say so", () => {
    const zero = found.find((m) => m.id === "sun-through-zero");
    expect(zero).toBeDefined();
    const sun = run.log.view("sunMachineSpeed");
    const row = zero?.row ?? 1;
    expect(at(sun, row) * at(sun, row - 1)).toBeLessThanOrEqual(0);
  });

  it("nothing generates more than the strongest regeneration", () => {
    const strongest = found.find((m) => m.id === "strongest-regeneration");
    const electric = run.log.view("outputMachineElectric");
    const ask = run.log.view("wheelForceAsk");
    for (let i = 0; i < run.log.rows; i += 1) {
      if (at(ask, i) < 0) expect(-at(electric, i)).toBeLessThanOrEqual(strongest?.value ?? 0);
    }
  });
});

describe("power paths", () => {
  it("S3 electrical share and circulating power at known ratios (derived; k = 2.6)", () => {
    const k = 2.6;
    for (const [ratio, electrical] of [
      [0, 1],
      [0.5, 0.638889],
      [1, 0.277778],
      [18 / 13, 0],
      [2, -0.444444],
    ] as const) {
      const sun = 1 + k - k * ratio;
      const paths = pathsAt(k, 100, 1, sun);
      expect(paths.electrical - paths.circulating).toBeCloseTo(electrical * 100, 3);
      expect(paths.mechanical + paths.electrical - paths.circulating).toBeCloseTo(100, 9);
    }
  });
});

describe("trace quality", () => {
  it("a drive the vehicle can do has no second outside", () => {
    expect(traceQuality(run.log).secondsOutside).toBe(0);
  });

  it("a drive it cannot do is reported with the limits that bound", () => {
    const sprint = simulate(compact, traceOf("sprint", [0, 2, 6, 20], [0, 0, 50, 50]), rules);
    const quality = traceQuality(sprint.log);
    expect(quality.secondsOutside).toBeGreaterThan(5);
    expect(quality.misses.length).toBeGreaterThan(0);
    expect(
      quality.misses.every(
        (miss) => miss.limits.includes("demand-unmet") || miss.limits.includes("tyre-grip"),
      ),
    ).toBe(true);
  });

  it("every published cycle is followed by every preset, or the log says which limit bound", () => {
    for (const preset of ["compact", "family", "van"]) {
      for (const id of ["udds", "hwfet", "us06", "sc03", "nycc", "la92", "wltc-class3b", "nedc", "jc08"]) {
        const driven = simulate(vehicleById(preset), cycleById(id), rules);
        for (const miss of traceQuality(driven.log).misses) {
          expect(miss.limits.length, `${preset} ${id} ${miss.start} s`).toBeGreaterThan(0);
        }
      }
    }
  });
});

describe("limits run", () => {
  const found = limitsRun(compact, rules);

  it("MODEL plausible: the compact reaches 100 km/h in about 11 s", () => {
    expect(found.zeroTo100).toBeGreaterThan(10);
    expect(found.zeroTo100).toBeLessThan(12.5);
  });

  it("top speeds lie below what the machines' speeds allow", () => {
    expect(found.topSpeed).toBeLessThan((1450 / 2.5 / 3.3) * 0.305);
    expect(found.topElectricSpeed).toBeLessThan((1100 / 2.5 / 3.3) * 0.305);
    expect(found.topElectricSpeed).toBeGreaterThan(kmhToMps(80));
  });

  it("R5 the steepest grade is near what the force at the wheels allows", () => {
    const force = (190 * 2.5 * 3.3) / 0.305;
    const sine = force / (compact.body.mass * 9.81);
    expect(found.steepestGrade).toBeGreaterThan(0.7 * sine);
    expect(found.steepestGrade).toBeLessThan(1.1 * (sine / Math.sqrt(1 - sine * sine)));
  });
});

describe("backing up and hills", () => {
  it("drives backward and comes to rest", () => {
    const back = simulate(compact, cycleById("back-up"), rules);
    expect(Math.min(...back.log.view("speed"))).toBeLessThan(-2);
    expect(back.s.ringSpeed).toBe(0);
    expect(back.b.distance).toBeLessThan(-10);
  });

  it("holds on a hill without rolling", () => {
    const hold = simulate(compact, traceOf("hill", [0, 30], [0, 0], [0.12, 0.12]), rules);
    expect(hold.b.travelled).toBe(0);
    expect(limitsIn(at(hold.log.limits, 10))).not.toContain("demand-unmet");
  });
});
