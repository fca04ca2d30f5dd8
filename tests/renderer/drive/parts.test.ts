import { describe, expect, it } from "vitest";
import { OPTION_FIELDS, parseOption, shownOption } from "../../../renderer/drive/option-fields.ts";
import { moved } from "../../../renderer/drive/pedal-keys.ts";
import { HIDEABLE } from "../../../renderer/state/predict.ts";
import { QUANTITY } from "../../../renderer/state/quantity.ts";
import { readNow } from "../../../renderer/state/run.ts";
import { t } from "../../../renderer/texts/catalogue.ts";
import { clockTime } from "../../../renderer/ui/time.ts";
import { OPTION_RANGES } from "../../../sim/options.ts";
import { REGIMES } from "../../../sim/run/regimes.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { aRun } from "../support/a-run.ts";

describe("a run option", () => {
  for (const field of OPTION_FIELDS) {
    it(`${field.of}: typed as shown comes back, out of range is refused with the range`, () => {
      const [least, most] = OPTION_RANGES[field.of];
      const middle = (least + most) / 2;
      const read = parseOption(field, shownOption(field, middle));
      expect(read.ok && read.value).toBeCloseTo(middle, 2);
      expect(parseOption(field, "")).toEqual({ ok: true, value: null });
      expect(parseOption(field, String(field.toShown(most) * 2 + 1)).ok).toBe(false);
      expect(parseOption(field, "much").ok).toBe(false);
      expect(field.standard(vehicleById("compact"))).toMatch(/\d/);
    });
  }

  it("may be typed with a comma, a true minus and its unit", () => {
    const wind = OPTION_FIELDS.find((field) => field.of === "headWind");
    if (!wind) throw new Error("no head wind");
    const read = parseOption(wind, "−7,2 km/h");
    expect(read.ok && read.value).toBeCloseTo(-2, 12);
  });
});

describe("a key's pedal", () => {
  it("goes down while pressed, comes up faster, and stays between 0 and 1", () => {
    expect(moved(0, true, 0.1)).toBeCloseTo(0.14, 12);
    expect(moved(0.5, false, 0.1)).toBeCloseTo(0.2, 12);
    expect(moved(0.95, true, 1)).toBe(1);
    expect(moved(0.05, false, 1)).toBe(0);
  });
});

describe("times", () => {
  it("carry into minutes and hours without a sixty", () => {
    expect(clockTime(0)).toBe("0:00.0");
    expect(clockTime(59.96)).toBe("1:00.0");
    expect(clockTime(310.5)).toBe("5:10.5");
    expect(clockTime(3723.44)).toBe("1:02:03.4");
    expect(clockTime(61, 0)).toBe("1:01");
  });
});

describe("quantities that can be asked for", () => {
  it("have a name, a unit and a finite value at any instant, and read what they show", () => {
    const run = aRun("udds");
    const units = { shaft: "rpm", road: "kmh" } as const;
    for (const row of [0, 500, 3333, 9000]) {
      const now = readNow(run, row);
      for (const id of HIDEABLE) {
        const value = QUANTITY[id].of(now);
        expect(t.road.quantities[id]).toBeTruthy();
        if (typeof value === "string") continue;
        expect(Number.isFinite(value)).toBe(true);
        expect(QUANTITY[id].say(value, units)).toContain(QUANTITY[id].unit(units));
      }
    }
    expect(QUANTITY["road-speed"].read(36, units)).toBeCloseTo(10, 12);
    expect(QUANTITY["sun-speed"].read(60, units)).toBeCloseTo(2 * Math.PI, 12);
  });
});

describe("regimes of the road", () => {
  it("each have their sentence", () => {
    for (const { id } of REGIMES) expect(t.roadRegimes[id]?.say, id).toBeTruthy();
  });
});
