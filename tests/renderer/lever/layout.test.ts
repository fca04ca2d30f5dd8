import { describe, expect, it } from "vitest";
import { type LeverInput, leverLayout } from "../../../renderer/lever/layout.ts";
import { niceStep, speedScale } from "../../../renderer/lever/scale.ts";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { num } from "../../../renderer/state/format.ts";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { overlap, roughMeasure } from "../../../renderer/ui/labels.ts";
import { radPerSToRpm } from "../../../shared/units.ts";
import { benchAt } from "../../../sim/bench/bench.ts";
import { eachShaft, SHAFTS, speedLimits } from "../../../sim/bench/shafts.ts";
import { basicRatio } from "../../../sim/drivetrain/gear-set.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

interface Sheet {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly text: number;
  readonly subs: boolean;
}

const SHEETS: readonly Sheet[] = [
  { name: "1280", width: 547, height: 374, text: 14, subs: false },
  { name: "1600", width: 730, height: 480, text: 14, subs: true },
  { name: "1920", width: 966, height: 660, text: 14, subs: true },
  { name: "projector", width: 1200, height: 850, text: 20, subs: true },
];

const inRpm = (speeds: Record<"sun" | "carrier" | "ring", number>) =>
  eachShaft((s) => radPerSToRpm(speeds[s]));

function inputOf(sheet: Sheet, id: string, index: number): LeverInput {
  const v = vehicleById(id);
  const situation = SITUATIONS[index] ?? SITUATIONS[0];
  if (!situation) throw new Error("no situation");
  const state = loadSituation(firstBench(id, v), v, situation);
  const range = speedLimits(v);
  const ends = (shaft: "sun" | "carrier" | "ring") => ({
    least: radPerSToRpm(range[shaft].least),
    most: radPerSToRpm(range[shaft].most),
  });
  const limits = { sun: ends("sun"), carrier: ends("carrier"), ring: ends("ring") };
  const speeds = inRpm(state.speeds);
  return {
    ...sheet,
    nameSize: sheet.text * 1.15,
    speedSize: sheet.text * 2,
    k: basicRatio(v.gearSet),
    scale: speedScale(limits, speeds.sun, 10),
    speeds,
    limits,
    idle: 1000,
    torques: benchAt(v, state).torques,
    torqueScale: 0.85,
    texts: {
      unit: "rev/min",
      names: { sun: "Sun", carrier: "Carrier", ring: "Ring" },
      subs: sheet.subs ? { sun: "machine: follows", carrier: "engine: given", ring: "output: given" } : null,
      number: (value) => num(value),
      torque: (value) => `${num(value, 1)} N·m`,
      idle: (value) => `idle ${value}`,
      to: (value) => `to ${value}`,
      never: "never back",
      teeth: ["100 teeth: k = 2.5", "40: 1"],
    },
    measure: roughMeasure,
  };
}

describe("the lever line", () => {
  const demo = inputOf({ name: "", width: 730, height: 480, text: 14, subs: true }, "compact", 2);

  it("spaces its axes as k to 1", () => {
    const { x } = leverLayout(demo).frame;
    expect((x.carrier - x.sun) / (x.ring - x.carrier)).toBeCloseTo(2.5, 9);
  });

  it("runs through all three points", () => {
    for (const { id } of PRESETS) {
      for (const index of SITUATIONS.keys()) {
        const input = inputOf({ name: "", width: 730, height: 480, text: 14, subs: true }, id, index);
        const { frame, hero } = leverLayout(input);
        const at = (x: number): number =>
          hero.y1 + ((hero.y2 - hero.y1) * (x - hero.x1)) / (hero.x2 - hero.x1);
        for (const shaft of SHAFTS) expect(at(frame.x[shaft])).toBeCloseTo(frame.y(input.speeds[shaft]), 6);
      }
    }
  });

  it("has one scale for all, with zero, ticks and blocks on it", () => {
    const { frame, ticks, blocks } = leverLayout(demo);
    expect(frame.y(0) - frame.y(1000)).toBeCloseTo(1000 / frame.perPixel, 9);
    expect(ticks).toEqual([-6000, -4000, -2000, 2000, 4000, 6000, 8000, 10000]);
    const bar = (shaft: string, end: string) =>
      blocks.find((b) => b.shaft === shaft && b.end === end && b.kind === "limit")?.bar;
    expect(bar("carrier", "least")).toBeCloseTo(frame.y(0), 9);
    expect(bar("sun", "most")).toBeCloseTo(frame.y(demo.limits.sun.most), 9);
    expect(bar("sun", "least")).toBeUndefined();
  });

  it("draws torques to one scale, standing on the line, adding up to nothing", () => {
    const { arrows, hero } = leverLayout(demo);
    const length = (shaft: string): number => {
      const arrow = arrows.find((one) => one.shaft === shaft);
      return arrow ? arrow.from - arrow.to : 0;
    };
    expect(length("carrier")).toBeCloseTo(85, 6);
    expect(length("sun") + length("carrier") + length("ring")).toBeCloseTo(0, 6);
    for (const { x, from } of arrows) {
      const on = hero.y1 + ((hero.y2 - hero.y1) * (x - hero.x1)) / (hero.x2 - hero.x1);
      expect(from).toBeCloseTo(on, 6);
    }
  });

  it("shows the whole of the sun's range once the sun is down there", () => {
    const limits = demo.limits;
    expect(speedScale(limits, -2000, 10).low).toBeGreaterThan(-7000);
    expect(speedScale(limits, -6000, 10).low).toBeLessThan(limits.sun.least);
    expect([niceStep(1.1), niceStep(2), niceStep(340), niceStep(0.06)]).toEqual([2, 2, 500, 0.1]);
  });

  for (const sheet of SHEETS) {
    it(`never puts a label on another or off the sheet (${sheet.name})`, () => {
      for (const { id } of PRESETS) {
        for (const index of SITUATIONS.keys()) {
          const input = inputOf(sheet, id, index);
          const { labels } = leverLayout(input);
          const where = `${id} ${SITUATIONS[index]?.id}`;
          for (const [i, a] of labels.entries()) {
            for (const b of labels.slice(i + 1)) {
              expect(overlap(a.box, b.box), `${where}: ${a.id} over ${b.id}`).toBe(0);
            }
            expect(a.box.x, `${where}: ${a.id}`).toBeGreaterThanOrEqual(-0.5);
            expect(a.box.x + a.box.width, `${where}: ${a.id}`).toBeLessThanOrEqual(sheet.width + 0.5);
          }
          for (const shaft of SHAFTS) expect(labels.map((l) => l.id)).toContain(`speed:${shaft}`);
        }
      }
    });
  }
});
