import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { CycleDriver, setGrade, TraceReader } from "../../../sim/control/driver.ts";
import { ControlState } from "../../../sim/control/state.ts";
import { prepare } from "../../../sim/drivetrain/prepared.ts";
import { PlantState } from "../../../sim/drivetrain/state.ts";
import { limitsIn } from "../../../sim/limits.ts";
import { runSettings } from "../../../sim/options.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { traceOf } from "../../support/random.ts";
import { even } from "../drivetrain/even.ts";

const SEED = 55;
const p = prepare(vehicleById("compact"), runSettings({}, { startSoc: 0.58, auxiliaryPower: 320 }));

/** What the driver decides over a trace at a time, the vehicle at a speed (m/s). */
function decided(trace: ReturnType<typeof traceOf>, time: number, speed: number) {
  const s = new PlantState();
  const c = new ControlState();
  s.ringSpeed = speed * p.perMetresPerRing;
  new CycleDriver(trace).decide(time, p, s, c);
  return { s, c };
}

describe(`trace reader (seed ${SEED})`, () => {
  const trace = fc
    .array(
      fc.record({
        gap: even(0.05, 9),
        speed: even(-5, 40),
      }),
      {
        minLength: 2,
        maxLength: 30,
      },
    )
    .map((list) => {
      let time = -at(list, 0).gap;
      return list.map(({ gap, speed }) => {
        time += gap;
        return { time, speed };
      });
    });

  it("agrees with an interpolation that looks every time through the whole list, on every path of rising times", () => {
    fc.assert(
      fc.property(trace, fc.array(even(0, 12), { maxLength: 40 }), (list, gaps) => {
        const times = list.map(({ time }) => time);
        const speeds = list.map(({ speed }) => speed);
        const grades = speeds.map((v, i) => v / 200 - i / 400);
        const naive = (values: readonly number[], t: number): number => {
          const after = times.findIndex((time) => time > t);
          if (after < 0) return at(values, values.length - 1);
          if (after === 0) return at(values, 0);
          const share = (t - at(times, after - 1)) / (at(times, after) - at(times, after - 1));
          return at(values, after - 1) * (1 - share) + at(values, after) * share;
        };
        const reader = new TraceReader(traceOf("t", times, speeds, grades));
        let t = 0;
        // Every sample's own time, and times between, in order.
        const asked = [...gaps.map((gap) => (t += gap)), ...times].sort((a, b) => a - b);
        for (const time of asked) {
          reader.moveTo(time);
          expect(Math.abs(reader.speed - naive(speeds, time))).toBeLessThan(1e-10);
          expect(Math.abs(reader.grade - naive(grades, time))).toBeLessThan(1e-12);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("gives the same answer when asked twice, and skips over many samples at once", () => {
    const reader = new TraceReader(traceOf("t", [0, 1, 2, 3, 4], [0, 10, 0, 10, 0]));
    reader.moveTo(3.5);
    expect(reader.speed).toBe(5);
    reader.moveTo(3.5);
    expect(reader.speed).toBe(5);
    reader.moveTo(1e9);
    expect(reader.speed).toBe(0);
  });
});

describe("cycle driver", () => {
  const stop = traceOf("stop", [0, 10, 20, 60], [10, 0, 0, 0]);

  it("holds at rest by the brakes alone: no force asked, on a slope what it pulls besides", () => {
    const level = decided(stop, 15, 0.1);
    expect(level.c.wheelForceAsk).toBe(0);
    expect(level.c.braking).toBe(0);
    expect(Math.abs(level.c.holdForce - 3 * p.mass)).toBeLessThan(1e-9);
    for (const grade of [0.2, -0.2]) {
      const hill = traceOf("hill", [0, 60], [0, 0], [grade, grade]);
      const { s, c } = decided(hill, 15, 0);
      expect(c.holdForce).toBeGreaterThan(Math.abs(s.gradeForce) + 0.99 * 3 * p.mass);
    }
  });

  it("does not hold while the trace still moves, while the vehicle still rolls, or just before it pulls away", () => {
    expect(decided(stop, 5, 5).c.holdForce).toBe(0);
    const rolling = decided(stop, 15, 3);
    expect(rolling.c.holdForce).toBe(0);
    expect(rolling.c.braking).toBe(1);
    expect(rolling.c.wheelForceAsk).toBeLessThan(0);
    const go = traceOf("go", [0, 10, 14], [0, 0, 12]);
    expect(decided(go, 9.3, 0).c.holdForce).toBeGreaterThan(0);
    expect(decided(go, 9.7, 0).c.holdForce).toBe(0);
    expect(decided(go, 9.7, 0).c.wheelForceAsk).toBeGreaterThan(0);
  });

  it("asks for what keeps a steady speed: rolling, air and weight", () => {
    for (const [speed, grade] of [
      [20, 0],
      [20, 0.04],
      [30, -0.02],
    ] as const) {
      const { s, c } = decided(traceOf("steady", [0, 60], [speed, speed], [grade, grade]), 15, speed);
      const needed = s.rollingForce + p.dragC * speed * speed + s.gradeForce;
      expect(Math.abs(c.wheelForceAsk - needed)).toBeLessThan(1e-9);
      expect(c.braking).toBe(needed < 0 ? 1 : 0);
    }
  });

  it("presses on when behind, eases off when ahead, and remembers it", () => {
    const steady = traceOf("steady", [0, 60], [20, 20]);
    const even = decided(steady, 15, 20).c;
    const behind = decided(steady, 15, 19.5).c;
    const ahead = decided(steady, 15, 20.5).c;
    expect(behind.wheelForceAsk).toBeGreaterThan(even.wheelForceAsk);
    expect(ahead.wheelForceAsk).toBeLessThan(even.wheelForceAsk);
    expect(behind.driverIntegral).toBeGreaterThan(0);
    expect(ahead.driverIntegral).toBeLessThan(0);
    // Far behind there is nothing to learn: the vehicle cannot.
    expect(decided(steady, 15, 12).c.driverIntegral).toBe(0);
  });

  it("drives backward: force, direction and braking turn round", () => {
    const back = traceOf("back", [0, 5, 10, 15], [0, -3, -3, 0]);
    const go = decided(back, 2, -0.5).c;
    expect(go.direction).toBe(-1);
    expect(go.wheelForceAsk).toBeLessThan(0);
    expect(go.braking).toBe(0);
    const slow = decided(back, 13, -2.9).c;
    expect(slow.wheelForceAsk).toBeGreaterThan(0);
    expect(slow.braking).toBe(1);
    const first = decided(back, 0, 0).c;
    expect(first.direction).toBe(-1);
    expect(first.braking).toBe(0);
  });

  it("asks for no more than the tyres carry, and that is logged", () => {
    const sprint = traceOf("sprint", [0, 1, 5], [0, 40, 40]);
    const { s, c } = decided(sprint, 0, 0);
    expect(c.wheelForceAsk).toBeCloseTo(p.gripDriven, 9);
    expect(limitsIn(s.limits)).toContain("tyre-grip");
    const hard = decided(traceOf("hard", [0, 1, 5], [40, 0, 0]), 0.3, 40);
    expect(hard.c.wheelForceAsk).toBeCloseTo(-p.gripAll, 9);
  });

  it("the road under the vehicle: weight along it, rolling by the weight on it", () => {
    const s = new PlantState();
    setGrade(p, s, 0.75);
    expect(s.gradeForce).toBeCloseTo(p.weight * 0.6, 9);
    expect(s.rollingForce).toBeCloseTo(p.rolling * 0.8, 9);
    setGrade(p, s, -0.75);
    expect(s.gradeForce).toBeCloseTo(-p.weight * 0.6, 9);
    expect(s.rollingForce).toBeCloseTo(p.rolling * 0.8, 9);
  });
});
