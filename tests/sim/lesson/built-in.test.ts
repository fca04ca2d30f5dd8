import { describe, expect, it } from "vitest";
import { LESSONS, lessonById } from "../../../sim/lesson/built-in/registry.ts";
import type { BenchScene } from "../../../sim/lesson/lesson.ts";
import { readLessonText } from "../../../sim/lesson/read.ts";
import type { WorkedStep } from "../../../sim/lesson/work.ts";
import { asksOf, keyOf, rightOf, shown, worked } from "./works.ts";

/** Numbers of the demo gear set, 40/30/100, and of the demo compact, written here once more by hand. */
const K = 100 / 40;
const REDUCTION = 2.5;
const TURN = (2 * Math.PI) / 60;

/** What the bench of a step is given, rev/min and N·m; a follower is no number. */
interface Given {
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
  readonly engine: number;
  readonly output: number;
}

function givenIn(step: WorkedStep): Given {
  const scene = step.stage as BenchScene;
  const rpm = (shaft: "sun" | "carrier" | "ring"): number =>
    scene.shafts[shaft].role === "follow" ? Number.NaN : scene.shafts[shaft].speed.value / TURN;
  return {
    sun: rpm("sun"),
    carrier: rpm("carrier"),
    ring: rpm("ring"),
    engine: scene.engineTorque.value,
    output: scene.outputTorque?.value ?? Number.NaN,
  };
}

/** kW of a torque, N·m, at a speed, rev/min. */
const kw = (torque: number, rpm: number): number => (torque * rpm * TURN) / 1000;

/** Keys by hand: Willis' equation and the lever, nothing of the engine's code. */
const BY_HAND: Readonly<Record<string, (g: Given) => number>> = {
  "basic-ratio": () => 2.5,
  "ring-held": (g) => 3.5 * g.carrier,
  "sun-held": (g) => 1.4 * g.carrier,
  "two-give-the-third": (g) => 3.5 * g.carrier - 2.5 * g.ring,
  "backing-up": (g) => -2.5 * g.ring,
  "sun-torque": (g) => -g.engine / 3.5,
  "ring-torque": (g) => (-2.5 * g.engine) / 3.5,
  "torque-again": (g) => (-2.5 * g.engine) / 3.5,
  "ring-share": () => 100 * (2.5 / 3.5),
  "mechanical-power": (g) => kw((2.5 * g.engine) / 3.5, g.ring),
  "electrical-power": (g) => kw(g.engine, g.carrier) - kw((2.5 * g.engine) / 3.5, g.ring),
  "other-set": (g) => -g.engine / (1 + 104 / 40),
  "cranking-speed": (g) => g.sun / 3.5,
  "cranking-torque": (g) => -g.engine / 3.5,
  "cranking-power": (g) => kw(-g.engine / 3.5, g.sun),
  "ring-reaction": (g) => (-2.5 * g.engine) / 3.5,
  "sun-idles-backward": (g) => -2.5 * g.ring,
  "battery-power": (g) => kw(g.output, REDUCTION * g.ring),
  // 1,100 rad/s of the sun machine.
  "electric-limit": () => 1100 / TURN / 2.5,
  "electric-share": (g) => 100 * (1 - (2.5 * g.ring) / (3.5 * g.carrier)),
  "at-standstill": () => 100,
  // All that the sun machine makes, given back on a shaft 2.5 times as fast as the ring.
  "output-machine-torque": (g) => (g.engine * (g.carrier - (2.5 / 3.5) * g.ring)) / (REDUCTION * g.ring),
  "direct-share": () => 100 * (2.5 / 3.5),
  "above-direct-share": (g) => (100 * 2.5 * g.ring) / (3.5 * g.carrier),
  "rest-ratio": () => 1.4,
  "rest-power": () => 0,
  circulating: (g) => kw((2.5 * g.engine) / 3.5, g.ring) - kw(g.engine, g.carrier),
  "regenerated-power": (g) => kw(g.output, REDUCTION * g.ring),
};

const STUDENTS = [null, "Ada Lindqvist", "Ben Okoro", "Chiara Bianchi", "Đỗ Minh"];

describe("the built-in lessons", () => {
  it("are at least eight, each read without a fault under its own id", () => {
    expect(LESSONS.length).toBeGreaterThanOrEqual(8);
    for (const { id, text } of LESSONS) {
      const { lesson, faults } = readLessonText(text, id);
      expect(faults).toEqual([]);
      expect(lesson.id).toBe(id);
      expect(lesson.about).not.toBe("");
      expect(lesson.steps.length).toBeGreaterThanOrEqual(5);
    }
  });

  it("carry the usual caution where they speak of real hardware", () => {
    for (const id of ["three-shafts", "starting-the-engine", "regeneration"]) {
      expect(LESSONS.find((lesson) => lesson.id === id)?.text).toContain("> **Caution.**");
    }
    for (const { id, text } of LESSONS) {
      if (/orange cable|real bench|by hand, towed|lethal/i.test(text))
        expect(text, id).toContain("> **Caution.**");
    }
  });

  it("name no maker's symbols", () => {
    for (const { text } of LESSONS) expect(text).not.toMatch(/MG1|MG2|power split device/i);
  });

  it.each(STUDENTS)("have keys that the hand formulas give, with the numbers of %s", (student) => {
    const found = new Set<string>();
    for (const { id } of LESSONS.slice(0, 6)) {
      for (const step of worked(id, student ? { seed: 11, student } : null).steps) {
        if (step.stage?.kind !== "bench") continue;
        for (const ask of step.asks) {
          if (ask.kind !== "number") continue;
          const by = BY_HAND[ask.name];
          expect(by, `${id}: no hand formula for ${ask.name}`).toBeDefined();
          const expected = by?.(givenIn(step)) ?? Number.NaN;
          const got = shown(ask);
          expect(
            Math.abs(got - expected),
            `${id} ${ask.name}: ${got}, by hand ${expected}`,
          ).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
          found.add(ask.name);
        }
      }
    }
    expect([...found].sort()).toEqual(Object.keys(BY_HAND).sort());
  });

  it("have right choices that the hand formulas give", () => {
    // Told by the lever: sun and ring push against the engine; below direct the sun is forward and generates; beyond
    // the mechanical point it runs backward and motors; a pushed ring rolls the vehicle backward.
    expect(rightOf(worked("three-shafts"), "as-one")).toBe(0);
    expect(rightOf(worked("torque-split"), "direction")).toBe(0);
    expect(rightOf(worked("starting-the-engine"), "who-holds")).toBe(1);
    expect(rightOf(worked("pulling-away"), "sun-role")).toBe(0);
    expect(rightOf(worked("mechanical-point"), "sun-backward-role")).toBe(0);
    expect(rightOf(worked("mechanical-point"), "hill-sun")).toBe(0);
    expect(K).toBe(2.5);
  });

  it("have exactly one right choice a question, whatever numbers are drawn", () => {
    for (let i = 0; i < 25; i += 1) {
      for (const { id } of LESSONS.slice(0, 5)) {
        for (const ask of asksOf(worked(id, { seed: i, student: `student ${i}` }))) {
          if (ask.kind === "choice") expect(ask.choices.filter(({ right }) => right)).toHaveLength(1);
        }
      }
    }
  });

  it("hide what they ask for", () => {
    const [first] = asksOf(worked("three-shafts")).filter(({ name }) => name === "ring-held");
    expect(first?.hides).toEqual(["sun speed"]);
    expect(lessonById("torque-split").steps[0]?.scenes[0]?.hide).toEqual(["sun torque", "ring torque"]);
    expect(keyOf(worked("three-shafts"), "ring-held")).toBeCloseTo(3500, 9);
  });
});
