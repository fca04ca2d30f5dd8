import { describe, expect, it } from "vitest";
import { MANOEUVRES, manoeuvre } from "../../../cycles/manoeuvres/catalogue.ts";
import { defaultQuantity } from "../../../cycles/manoeuvres/grammar.ts";
import { defineManoeuvre, speedParameter } from "../../../cycles/manoeuvres/parameter.ts";
import { Profile } from "../../../cycles/manoeuvres/profile.ts";
import { findUnit } from "../../../cycles/quantities.ts";
import { sample } from "../../../cycles/sample.ts";
import { statistics } from "../../../cycles/statistics/basics.ts";
import { drivingDynamics } from "../../../cycles/statistics/on-road.ts";
import { at } from "../../../shared/at.ts";
import type { CycleTrace, Phase } from "../../../shared/cycle.ts";
import { kmhToMps } from "../../../shared/units.ts";

function phase(trace: CycleTrace, id: string): Phase {
  const found = trace.phases.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no phase ${id}`);
  return found;
}

describe.each(MANOEUVRES)("$id", (definition) => {
  it("declares sound parameters", () => {
    for (const parameter of Object.values(definition.parameters)) {
      expect(findUnit(parameter.dimension, parameter.unit)?.id).toBe(parameter.unit);
      expect(parameter.min).toBeLessThan(parameter.max);
      expect(parameter.default).toBeGreaterThanOrEqual(parameter.min);
      expect(parameter.default).toBeLessThanOrEqual(parameter.max);
      expect(parameter.meaning).toMatch(/\.$/);
      expect(() => defaultQuantity(parameter)).not.toThrow();
    }
    expect(definition.summary).toMatch(/\.$/);
  });

  it.each(["min", "max"] as const)("starts and ends standing with every parameter at its %s", (end) => {
    const settings = Object.entries(definition.parameters).map(([key, p]) => `${key}=${p[end]}${p.unit}`);
    const { time, speed, phases } = manoeuvre(`${definition.id}:${settings.join(",")}`);
    expect([...speed.subarray(0, 2), ...speed.subarray(-2)]).toEqual([0, 0, 0, 0]);
    expect(time.every((t, i) => i === 0 || t > at(time, i - 1))).toBe(true);
    expect(phases[0]?.start).toBe(0);
    expect(phases.at(-1)?.end).toBe(time.at(-1));
  });

  it("by default asks for no more than a road vehicle can give", () => {
    const figures = statistics(manoeuvre(definition.id));
    expect(figures.maxAcceleration).toBeLessThanOrEqual(2.5 + 1e-9);
    expect(figures.maxDeceleration).toBeLessThanOrEqual(1.5 + 1e-9);
  });
});

describe("launch", () => {
  it("reaches its speed at its rate, on its grade from the start", () => {
    const trace = manoeuvre("launch:speed=72km/h,rate=4m/s2,grade=8%,hold=10s");
    const { start, end } = phase(trace, "launch");
    expect(end - start).toBeCloseTo(5, 12);
    expect(sample(trace, end).speed).toBeCloseTo(20, 12);
    expect(sample(trace, end + 10).speed).toBeCloseTo(20, 12);
    expect(trace.grade.every((grade) => grade === 0.08)).toBe(true);
  });
});

describe("cruise", () => {
  const trace = manoeuvre("cruise:speed=100km/h,grade=-2%,for=300s");

  it("keeps speed and grade for its time", () => {
    const { start, end } = phase(trace, "cruise");
    expect(end - start).toBeCloseTo(300, 9);
    for (const t of [start, (start + end) / 2, end]) {
      expect(sample(trace, t).speed).toBeCloseTo(kmhToMps(100), 12);
      expect(sample(trace, t).grade).toBeCloseTo(-0.02, 12);
    }
  });

  it("starts and stops on the level", () => {
    expect(sample(trace, 3).grade).toBe(0);
    expect(trace.grade.at(-1)).toBe(0);
  });

  it("pulls away calmly: not above 1.2 m/s² and 12 W/kg", () => {
    const fast = manoeuvre("cruise:speed=250km/h");
    expect(statistics(fast).maxAcceleration).toBeLessThanOrEqual(1.2 + 1e-9);
    // Central differences at the knee may show up to half a second of the steeper side.
    expect(drivingDynamics(fast).brisk95).toBeLessThan(12.2);
  });
});

describe("brake-stop", () => {
  it("stops from its speed at its rate after a steady lead", () => {
    const trace = manoeuvre("brake-stop:speed=20m/s,rate=4m/s2,lead=15s");
    const lead = phase(trace, "lead");
    const brake = phase(trace, "brake");
    expect(lead.end - lead.start).toBeCloseTo(15, 12);
    expect(sample(trace, brake.start).speed).toBe(20);
    expect(brake.end - brake.start).toBeCloseTo(5, 12);
    expect(statistics(trace).maxDeceleration).toBeCloseTo(4, 9);
  });
});

describe("hill-down", () => {
  it("falls by drop times length on the full grade", () => {
    const trace = manoeuvre("hill-down:speed=20m/s,drop=8%,length=2km");
    const { start, end } = phase(trace, "hill");
    expect(statistics(trace, { start, end }).distance).toBeCloseTo(2000, 6);
    expect(sample(trace, start).grade).toBe(-0.08);
    expect(sample(trace, end).grade).toBe(-0.08);
    expect(trace.grade.at(-1)).toBe(0);
  });
});

describe("stop-and-go", () => {
  it("stops as often as asked", () => {
    const trace = manoeuvre("stop-and-go:times=5,speed=6m/s,rate=2m/s2,hold=4s,wait=7s");
    expect(statistics(trace).stops).toBe(5);
    // 3 s before, five hops of 3 + 4 + 3 s, four waits of 7 s, 5 s after
    expect(trace.time.at(-1)).toBeCloseTo(3 + 50 + 28 + 5, 9);
    expect(trace.phases).toHaveLength(6);
  });
});

describe("back-up", () => {
  it("drives backwards only", () => {
    const trace = manoeuvre("back-up:speed=2m/s,for=10s,rate=1m/s2");
    expect(Math.min(...trace.speed)).toBe(-2);
    expect(Math.max(...trace.speed)).toBe(0);
    expect(statistics(trace).distance).toBeCloseTo(24, 12);
  });
});

describe("defineManoeuvre", () => {
  it("does not compile with a parameter that is not declared", () => {
    const wrong = defineManoeuvre({
      id: "wrong",
      title: "Wrong",
      summary: "Asks for a rate it never declared.",
      parameters: { speed: speedParameter("Speed.", 50, 5, 100) },
      draw: (value) => {
        // @ts-expect-error there is no "rate"
        value("rate");
        return new Profile();
      },
    });
    expect(wrong.id).toBe("wrong");
  });
});
