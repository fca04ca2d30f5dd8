import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ControlState, ENGINE, ENGINE_MODES } from "../../../sim/control/state.ts";
import { StrategyAnswer, StrategyInput } from "../../../sim/control/strategy.ts";
import { supervise } from "../../../sim/control/supervisor.ts";
import { prepare } from "../../../sim/drivetrain/prepared.ts";
import { PlantState } from "../../../sim/drivetrain/state.ts";
import { type LimitId, limitsIn } from "../../../sim/limits.ts";
import { runSettings } from "../../../sim/options.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { even } from "../drivetrain/even.ts";

const SEED = 4000;
const p = prepare(vehicleById("compact"), runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));
const IDLE = p.idleSpeed;
/** Friction torque of the engine in these scenes, N·m. */
const FRICTION = 15;

type Mode = 0 | 1 | 2 | 3;

/** One period under the supervisor: warm, charged, slow, with a battery that can do everything, unless said otherwise. */
interface Scene {
  readonly mode?: Mode;
  readonly wanted?: boolean;
  readonly power?: number;
  readonly engineSpeed?: number;
  readonly askedPower?: number;
  readonly modeTime?: number;
  readonly carrier?: number;
  readonly ring?: number;
  readonly soc?: number;
  readonly coolant?: number;
  readonly batteryOut?: number;
  readonly batteryIn?: number;
  readonly demand?: number;
  readonly electricOnly?: number;
}

function supervised(r: Scene) {
  const s = new PlantState();
  const c = new ControlState();
  const now = new StrategyInput();
  const answer = new StrategyAnswer();
  c.engineMode = r.mode ?? ENGINE.off;
  c.modeTime = r.modeTime ?? 100;
  c.enginePower = r.power ?? 0;
  c.electricOnly = r.electricOnly ?? 0;
  s.carrierSpeed = r.carrier ?? (c.engineMode === ENGINE.running ? 200 : 0);
  c.carrierTarget = s.carrierSpeed;
  s.ringSpeed = r.ring ?? 50;
  s.coolant = r.coolant ?? 363;
  s.frictionBound = FRICTION;
  now.soc = r.soc ?? 0.58;
  now.speed = s.ringSpeed * p.metresPerRing;
  now.batteryOut = r.batteryOut ?? 25_000;
  now.batteryIn = r.batteryIn ?? 25_000;
  now.demand = r.demand ?? 5_000;
  now.wheelPower = r.demand ?? 5_000;
  answer.engineOn = r.wanted ?? false;
  answer.enginePower = r.askedPower ?? 10_000;
  answer.engineSpeed = r.engineSpeed ?? 0;
  supervise(p, s, c, now, answer);
  return { s, c, answer, mode: c.engineMode, names: limitsIn(s.limits) };
}

describe("the engine's states: one row each", () => {
  const cold = { coolant: 300 };
  const low = { soc: 0.36 };
  // MODEL 5.2 and the supervisor's own thresholds: least times 4 s on, 1 s off.
  it.each<[string, Scene, Mode, LimitId[]]>([
    ["off, nothing asked: stays off", {}, ENGINE.off, []],
    ["off, asked: cranks", { wanted: true }, ENGINE.cranking, []],
    ["off for too short a time: waits", { wanted: true, modeTime: 0.5 }, ENGINE.off, ["start-refused-time"]],
    ["off, charge low: cranks all the same", low, ENGINE.cranking, ["start-charge"]],
    [
      "off, charge low: even within the least time",
      { ...low, modeTime: 0.2 },
      ENGINE.cranking,
      ["start-charge"],
    ],
    ["off, sun too fast: cranks", { ring: 430 }, ENGINE.cranking, ["start-sun-speed"]],
    ["off, sun too fast backward: cranks", { ring: -430 }, ENGINE.cranking, ["start-sun-speed"]],
    [
      "off, battery weak: cranks while it can",
      { batteryOut: 5_000 },
      ENGINE.cranking,
      ["start-crank-reserve"],
    ],
    [
      "off, electric drive held: the strategy is not heard",
      { wanted: true, electricOnly: 1 },
      ENGINE.off,
      [],
    ],
    [
      "off, electric drive held, charge low: cranks",
      { ...low, electricOnly: 1 },
      ENGINE.cranking,
      ["start-charge"],
    ],
    ["cranking, slow: goes on", { mode: 1, wanted: true, carrier: 0.5 * IDLE }, ENGINE.cranking, []],
    ["cranking, fast enough: fires", { mode: 1, wanted: true, carrier: 0.81 * IDLE }, ENGINE.running, []],
    ["cranking, not wanted: stops", { mode: 1 }, ENGINE.stopping, []],
    [
      "cranking, not wanted but young: goes on",
      { mode: 1, modeTime: 1 },
      ENGINE.cranking,
      ["stop-refused-time"],
    ],
    ["running, asked: runs", { mode: 2, wanted: true }, ENGINE.running, []],
    ["running, not asked: stops", { mode: 2 }, ENGINE.stopping, []],
    ["running, young: kept on", { mode: 2, modeTime: 1 }, ENGINE.running, ["stop-refused-time"]],
    ["running, cold: kept on", { mode: 2, ...cold }, ENGINE.running, ["stop-refused-cold"]],
    [
      "running, charge low: kept on, and charges",
      { mode: 2, ...low },
      ENGINE.running,
      ["start-charge", "charge-low"],
    ],
    [
      "running, sun too fast at rest: kept on",
      { mode: 2, ring: 425 },
      ENGINE.running,
      ["stop-refused-speed"],
    ],
    ["stopping, still turning: goes on", { mode: 3, carrier: 40 }, ENGINE.stopping, []],
    ["stopping, at rest: off", { mode: 3 }, ENGINE.off, []],
    [
      "stopping, asked again: cranks from where it is",
      { mode: 3, wanted: true, carrier: 40 },
      ENGINE.cranking,
      [],
    ],
  ])("%s", (_title, scene, mode, logged) => {
    const { c, s, names } = supervised({ ...scene, askedPower: 5_000, power: 5_000 });
    expect(ENGINE_MODES[c.engineMode]).toBe(ENGINE_MODES[mode]);
    expect(names).toEqual(logged);
    expect(s.firing).toBe(mode === ENGINE.running ? 1 : 0);
    // The time off counts from the beginning of the stop.
    const counts = mode === ENGINE.off && scene.mode === ENGINE.stopping;
    if (mode !== (scene.mode ?? ENGINE.off) && !counts) expect(c.modeTime).toBe(0);
  });

  it("firing counts one start, and its extra fuel flows at once and then no more", () => {
    const { s, c, answer } = supervised({ mode: 1, wanted: true, carrier: IDLE });
    expect(c.starts).toBe(1);
    expect(Math.abs(s.startFuelPower - p.startFuel / 0.4)).toBeLessThan(1e-6);
    const now = new StrategyInput();
    Object.assign(now, { soc: 0.58, batteryOut: 25e3, batteryIn: 25e3 });
    for (let i = 0; i < 20; i += 1) {
      answer.engineOn = true;
      supervise(p, s, c, now, answer);
      if (i > 4) expect(s.startFuelPower).toBe(0);
    }
    expect(c.starts).toBe(1);
  });
});

describe(`any sequence of wishes and states (seed ${SEED})`, () => {
  const NEXT: Record<Mode, readonly Mode[]> = {
    [ENGINE.off]: [ENGINE.off, ENGINE.cranking],
    [ENGINE.cranking]: [ENGINE.cranking, ENGINE.running, ENGINE.stopping],
    [ENGINE.running]: [ENGINE.running, ENGINE.stopping],
    [ENGINE.stopping]: [ENGINE.stopping, ENGINE.off, ENGINE.cranking],
  };
  const odd = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -0, 1e300);
  const period = fc.record({
    wanted: fc.boolean(),
    power: fc.oneof(even(-80e3, 120e3), odd),
    speed: fc.oneof(fc.constant(0), even(-100, 900), odd),
    carrier: fc.oneof(fc.constant(0), even(0, 530)),
    ring: even(-60, 460),
    soc: even(0.3, 0.85),
    demand: even(-60e3, 90e3),
    batteryOut: even(0, 30e3),
    batteryIn: even(0, 30e3),
    coolant: even(260, 365),
  });

  it("changes along the table only, keeps every number in range, and flags what it had to bring in", () => {
    fc.assert(
      fc.property(fc.array(period, { minLength: 5, maxLength: 40 }), (periods) => {
        const s = new PlantState();
        const c = new ControlState();
        const now = new StrategyInput();
        const answer = new StrategyAnswer();
        for (const r of periods) {
          const before = c.engineMode;
          const power = c.enginePower;
          s.limits = 0;
          s.carrierSpeed = r.carrier;
          s.ringSpeed = r.ring;
          s.coolant = r.coolant;
          s.frictionBound = FRICTION;
          Object.assign(now, r, { speed: r.ring * p.metresPerRing, wheelPower: r.demand });
          now.demand = Math.max(0, r.demand) + 320;
          Object.assign(answer, { engineOn: r.wanted, enginePower: r.power, engineSpeed: r.speed });
          supervise(p, s, c, now, answer);
          expect(NEXT[before]).toContain(c.engineMode);
          expect(s.firing).toBe(c.engineMode === ENGINE.running ? 1 : 0);
          expect(Number.isFinite(c.enginePower) && Number.isFinite(c.carrierTarget)).toBe(true);
          if (c.engineMode === ENGINE.running) {
            expect(c.enginePower).toBeLessThanOrEqual(p.enginePower);
            // A rise begins at fuel cut: below it less power asked is no other torque.
            const from = Math.max(power, -FRICTION * r.carrier);
            expect(c.enginePower - from).toBeLessThanOrEqual(p.control.enginePowerRise * 0.1 + 1e-9);
            expect(Math.abs(c.carrierTargetRate)).toBeLessThanOrEqual(p.control.engineSpeedRate);
          } else if (c.engineMode !== ENGINE.cranking) expect(c.enginePower).toBe(0);
          const names = limitsIn(s.limits);
          const silly =
            !Number.isFinite(r.power) ||
            Math.abs(r.power) > p.enginePower ||
            (r.speed !== 0 && !(r.speed >= p.idleSpeed && r.speed <= p.engineTop));
          expect(names.includes("strategy-answer")).toBe(silly);
          // An engine started or kept against the strategy is an override, and logged as one.
          const on = c.engineMode === ENGINE.cranking || c.engineMode === ENGINE.running;
          if (on && !r.wanted)
            expect(names.some((name) => /^(start-|stop-refused|engine-holds-back)/.test(name))).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 400, endOnFailure: true },
    );
  });
});

describe("power and speed of the running engine", () => {
  it("rises and falls at its rates", () => {
    const rise = p.control.enginePowerRise * 0.1;
    expect(
      supervised({ mode: 2, wanted: true, power: 0, askedPower: 40e3, demand: 50e3 }).c.enginePower,
    ).toBe(rise);
    const fallen = supervised({ mode: 2, wanted: true, power: 40e3, askedPower: 0 }).c.enginePower;
    expect(Math.abs(fallen - (40e3 - 3 * rise))).toBeLessThan(1e-9);
  });

  it("rises from fuel cut at once, however far below it the power asked had been", () => {
    const rise = p.control.enginePowerRise * 0.1;
    const scene: Scene = { mode: 2, wanted: true, power: -p.enginePower, askedPower: 40e3, demand: 50e3 };
    // 15 N·m of friction at 200 rad/s are 3 kW: the first period's power is 2.5 kW above that.
    expect(Math.abs(supervised(scene).c.enginePower - (rise - FRICTION * 200))).toBeLessThan(1e-9);
  });

  it("is cut to what wheels and battery take, logged, and makes nothing for a full battery", () => {
    const scene: Scene = {
      mode: 2,
      wanted: true,
      power: 30e3,
      askedPower: 30e3,
      demand: 10e3,
      batteryIn: 5_000,
    };
    const cut = supervised({ ...scene, power: 15e3 });
    expect(Math.abs(cut.c.enginePower - (10e3 + 0.9 * 5_000))).toBeLessThan(1e-9);
    expect(cut.names).toContain("engine-power-cut");
    const full = supervised({ ...scene, power: 11e3, soc: 0.79 });
    expect(full.c.enginePower).toBe(10e3);
    expect(full.names).toContain("charge-high");
  });

  it("carries the load and charges near the floor, whatever is asked", () => {
    const scene: Scene = { mode: 2, wanted: true, power: 10e3, demand: 5_000, askedPower: 0 };
    const least = 5_000 + p.control.leastEnginePower;
    expect(supervised(scene).c.enginePower).toBeLessThan(least);
    const low = { ...scene, soc: p.socFloor + 0.01 };
    expect(supervised(low).c.enginePower).toBe(least);
    expect(supervised(low).names).toContain("charge-low");
    const more = supervised({ ...low, askedPower: 12e3, power: 12e3 });
    expect(more.c.enginePower).toBe(12e3);
    expect(more.names).not.toContain("charge-low");
  });

  it("keeps the sun inside its window whatever speed a strategy wants, and says so", () => {
    for (const ring of [0, 150, 420]) {
      for (const wanted of [110, 300, 520]) {
        const s = new PlantState();
        const c = new ControlState();
        const now = new StrategyInput();
        const answer = new StrategyAnswer();
        Object.assign(now, { soc: 0.58, batteryOut: 25e3, batteryIn: 25e3, demand: 10e3, wheelPower: 10e3 });
        c.engineMode = ENGINE.running;
        s.carrierSpeed = 250;
        c.carrierTarget = 250;
        s.ringSpeed = ring;
        for (let i = 0; i < 40; i += 1) {
          Object.assign(answer, { engineOn: true, enginePower: 10e3, engineSpeed: wanted });
          supervise(p, s, c, now, answer);
          c.modeTime = 100;
        }
        const target = c.carrierTarget + c.carrierTargetRate * 0.1;
        expect(Math.abs(p.k1 * target - p.k * ring)).toBeLessThanOrEqual(0.95 * p.sunTop + 1e-6);
        const kept = Math.abs(target - wanted) < 1e-6;
        expect(limitsIn(s.limits).includes("engine-speed")).toBe(!kept);
      }
    }
  });
});
