import { describe, expect, it } from "vitest";
import { lastPassed, momentValue } from "../../../renderer/plots/Moments.tsx";
import { t } from "../../../renderer/texts/catalogue.ts";
import { aRun } from "../support/a-run.ts";

const one = aRun("udds");
const list = one.summary?.moments ?? [];
const METRIC = { shaft: "rpm", road: "kmh" } as const;

describe("the list of moments", () => {
  it("marks the last one that the cursor has passed", () => {
    expect(lastPassed(list, -1)).toBe(-1);
    list.forEach((moment, i) => {
      expect(list[lastPassed(list, moment.time)]?.time).toBe(moment.time);
      if ((list[i - 1]?.time ?? -1) < moment.time - 1) {
        expect(lastPassed(list, moment.time - 0.2)).toBeLessThan(i);
      }
    });
    expect(lastPassed(list, 1e9)).toBe(list.length - 1);
  });

  it("has a short name for each moment of a run", () => {
    for (const { id } of list) expect(t.plots.moments.short[id], id).toBeDefined();
  });

  it("says values in the person's units", () => {
    expect(momentValue({ value: 5, unit: "m/s" }, METRIC)).toBe("18 km/h");
    expect(momentValue({ value: 5, unit: "m/s" }, { ...METRIC, road: "mph" })).toBe("11 mph");
    expect(momentValue({ value: 10_380, unit: "W" }, METRIC)).toBe("10.4 kW");
    expect(momentValue({ value: 42.4, unit: "s" }, METRIC)).toBe("42 s");
  });
});
