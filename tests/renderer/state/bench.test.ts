import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type BenchState,
  changeVehicle,
  firstBench,
  giveRole,
  loadSituation,
  moveShaft,
  pivotFor,
  shiftLine,
  situationOf,
} from "../../../renderer/state/bench.ts";
import { SITUATIONS, situationById } from "../../../renderer/state/situations.ts";
import { radPerSToRpm, rpmToRadPerS } from "../../../shared/units.ts";
import { SHAFTS, type Shaft, speedLimits } from "../../../sim/bench/shafts.ts";
import { basicRatio, sunSpeed } from "../../../sim/drivetrain/gear-set.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const start = firstBench("compact", compact);
const rpm = (state: BenchState, shaft: Shaft): number => radPerSToRpm(state.speeds[shaft]);

/** What must hold of every bench: one follower, the teeth's equation, the limits, held shafts at rest. */
function expectSound(state: BenchState, id = "compact"): void {
  const v = vehicleById(id);
  const { sun, carrier, ring } = state.speeds;
  expect(SHAFTS.filter((shaft) => state.roles[shaft] === "follow")).toHaveLength(1);
  expect(sun).toBeCloseTo(sunSpeed(basicRatio(v.gearSet), carrier, ring), 6);
  const limits = speedLimits(v);
  for (const shaft of SHAFTS) {
    expect(state.speeds[shaft]).toBeGreaterThanOrEqual(limits[shaft].least - 1e-6);
    expect(state.speeds[shaft]).toBeLessThanOrEqual(limits[shaft].most + 1e-6);
    if (state.roles[shaft] === "hold") expect(Math.abs(state.speeds[shaft])).toBeLessThan(1e-6);
  }
}

describe("two speeds given, the third follows", () => {
  it("begins with the engine pulling away", () => {
    expect([rpm(start, "sun"), rpm(start, "carrier"), rpm(start, "ring")].map(Math.round)).toEqual([
      5900, 2400, 1000,
    ]);
    expect(start.roles).toEqual({ sun: "follow", carrier: "drive", ring: "drive" });
  });

  it("moves about the other given shaft when a given one moves", () => {
    const { state } = moveShaft(start, compact, "carrier", rpmToRadPerS(2000));
    expect(rpm(state, "ring")).toBeCloseTo(1000, 6);
    expect(rpm(state, "sun")).toBeCloseTo(4500, 6);
    expect(state.roles.sun).toBe("follow");
  });

  it("moves about the one touched longest ago when the follower moves", () => {
    const touched = moveShaft(start, compact, "carrier", rpmToRadPerS(2400)).state;
    expect(pivotFor(touched, "sun")).toBe("ring");
    const { state } = moveShaft(touched, compact, "sun", rpmToRadPerS(2400));
    expect(rpm(state, "ring")).toBeCloseTo(1000, 6);
    expect(rpm(state, "carrier")).toBeCloseTo(1400, 6);
    expect(state.roles).toEqual({ sun: "drive", carrier: "follow", ring: "drive" });
  });

  it("moves about the held one before all", () => {
    const held = giveRole(start, compact, "ring", "hold").state;
    expect(rpm(held, "ring")).toBe(0);
    expect(held.roles.ring).toBe("hold");
    const { state } = moveShaft(held, compact, "sun", rpmToRadPerS(3500));
    expect(rpm(state, "carrier")).toBeCloseTo(1000, 6);
    expect(state.roles).toEqual({ sun: "drive", carrier: "follow", ring: "hold" });
  });

  it("gives the old follower its speed when another is to follow", () => {
    const { state } = giveRole(start, compact, "ring", "follow");
    expect(state.roles).toEqual({ sun: "drive", carrier: "drive", ring: "follow" });
    expect(state.speeds).toEqual(start.speeds);
  });

  it("shifts all three by the same speed", () => {
    const { state } = shiftLine(start, compact, rpmToRadPerS(300));
    expect(SHAFTS.map((shaft) => Math.round(rpm(state, shaft)))).toEqual([6200, 2700, 1300]);
  });
});

describe("limits", () => {
  it("stop a move where the third shaft meets its own, and say which", () => {
    const { state, stop } = moveShaft(start, compact, "ring", rpmToRadPerS(-5000));
    expect(stop).toEqual({ shaft: "sun", end: "most" });
    expect(state.speeds.sun).toBeCloseTo(compact.sunMachine.maxSpeed, 6);
  });

  it("keep the engine from turning backward", () => {
    const { state, stop } = moveShaft(start, compact, "carrier", -50);
    expect(stop).toEqual({ shaft: "carrier", end: "least" });
    expect(state.speeds.carrier).toBe(0);
  });

  it("name the end the shaft stands at, whichever way the moved one went", () => {
    const driven = moveShaft(start, compact, "sun", rpmToRadPerS(-9000));
    expect(driven.stop).toEqual({ shaft: "ring", end: "most" });
  });

  it("stop a shift at the first shaft", () => {
    expect(shiftLine(start, compact, 1e4).stop).toEqual({ shaft: "carrier", end: "most" });
    expect(shiftLine(start, compact, -1e4).stop).toEqual({ shaft: "carrier", end: "least" });
  });

  it("hold through any sequence of moves (seed 20240611)", () => {
    const shaft = fc.constantFrom<Shaft>(...SHAFTS);
    const step = fc.oneof(
      fc.record({ kind: fc.constant("move" as const), shaft, by: fc.integer({ min: -1400, max: 1400 }) }),
      fc.record({ kind: fc.constant("shift" as const), shaft, by: fc.integer({ min: -600, max: 600 }) }),
      fc.record({ kind: fc.constantFrom("drive", "hold", "follow"), shaft, by: fc.constant(0) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        let state = start;
        for (const { kind, shaft: s, by } of steps) {
          if (kind === "move") state = moveShaft(state, compact, s, by).state;
          else if (kind === "shift") state = shiftLine(state, compact, by).state;
          else state = giveRole(state, compact, s, kind).state;
          expectSound(state);
        }
      }),
      { seed: 20240611, numRuns: 200 },
    );
  });
});

describe("situations", () => {
  it("are ten", () => expect(SITUATIONS).toHaveLength(10));

  for (const { id } of PRESETS) {
    const v = vehicleById(id);
    it.each(SITUATIONS.map((one) => one.id))(`of the ${id} satisfy the teeth and all limits: %s`, (name) => {
      const state = loadSituation(firstBench(id, v), v, situationById(name));
      expectSound(state, id);
      expect(situationOf(state, v)?.id).toBe(name);
    });
  }

  it("are left by hand and found again by hand", () => {
    const moved = moveShaft(start, compact, "carrier", rpmToRadPerS(2500)).state;
    expect(situationOf(moved, compact)).toBeNull();
    const back = moveShaft(moved, compact, "carrier", rpmToRadPerS(2400)).state;
    expect(situationOf(back, compact)?.id).toBe("engine-pull-away");
  });

  it("give way to another vehicle: the given speeds stay, or its pull-away comes", () => {
    for (const { id } of PRESETS) expectSound(changeVehicle(start, id, vehicleById(id)), id);
    const fast = moveShaft(start, compact, "ring", rpmToRadPerS(5500)).state;
    expectSound(changeVehicle(fast, "family", vehicleById("family")), "family");
  });
});
