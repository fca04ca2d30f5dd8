import { describe, expect, it } from "vitest";
import { HEAT_PATTERNS } from "../../../../renderer/compare/HeatPatterns.tsx";
import { BRAKE_LIMITS, limitWords, patternOf } from "../../../../renderer/compare/regeneration/limit-look.ts";
import { cellKey, faultsIn, planOf, type StudyForm } from "../../../../renderer/compare/regeneration/plan.ts";
import { kmhToMps } from "../../../../shared/units.ts";
import { rules } from "../../../../sim/control/strategies/rules.ts";
import { regenerationMap } from "../../../../sim/study/regeneration/study.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const form: StudyForm = {
  speeds: { from: "60", to: "30", steps: "2" },
  rates: { from: "1", to: "3", steps: "2" },
  charge: "60",
};
const ranges = { speeds: [5, 250], rates: [0.2, 10], charge: [31, 84] } as const;

describe("a typed study of regeneration", () => {
  it("is taken by the engine, and every cell is found again by what was asked", () => {
    expect(faultsIn(form, ranges).size).toBe(0);
    const plan = planOf(form, vehicleById("compact"), {}, kmhToMps);
    expect(plan.charges).toEqual([0.6]);
    const map = regenerationMap(plan, rules);
    const cells = new Map(map.cells.map((cell) => [cellKey(cell), cell]));
    for (const speed of plan.speeds)
      for (const rate of plan.rates)
        expect(cells.get(cellKey({ speed, rate }))?.recovered_share).toBeGreaterThan(0);
    expect(plan.speeds[0]).toBeLessThan(plan.speeds[1] ?? 0);
  });

  it("names every field that is wrong", () => {
    const bad: StudyForm = {
      speeds: { from: "fast", to: "999", steps: "1" },
      rates: { from: "1", to: "", steps: "2.5" },
      charge: "90",
    };
    expect([...faultsIn(bad, ranges)].sort()).toEqual([
      "charge",
      "rates.steps",
      "rates.to",
      "speeds.from",
      "speeds.steps",
      "speeds.to",
    ]);
  });
});

describe("limits on the map", () => {
  it("are told apart by letter and by pattern", () => {
    const letters = BRAKE_LIMITS.map((limit) => limitWords(limit)[0]);
    expect(new Set(letters).size).toBe(letters.length);
    expect(BRAKE_LIMITS.map(patternOf)).toEqual(BRAKE_LIMITS.map((_, i) => i));
    expect(BRAKE_LIMITS.length).toBeLessThanOrEqual(HEAT_PATTERNS);
    expect(patternOf(null)).toBeNull();
  });
});
