import { describe, expect, it } from "vitest";
import { fullLine, MANOEUVRES, manoeuvre } from "../../../cycles/manoeuvres/catalogue.ts";
import { lineFaults } from "../../../renderer/cycles/edit.ts";
import {
  parameterRange,
  parameterUnit,
  shownParameters,
  typedSetting,
  withSetting,
} from "../../../renderer/cycles/manoeuvre-line.ts";

const kmh = { shaft: "rpm", road: "kmh" } as const;
const mph = { shaft: "rpm", road: "mph" } as const;

const cruise = MANOEUVRES.find(({ id }) => id === "cruise");
const speed = cruise?.parameters.speed;
if (!cruise || !speed) throw new Error("no cruise");

describe("a manoeuvre's parameters as fields", () => {
  it("put back as they are shown give the same line, for every manoeuvre", () => {
    for (const definition of MANOEUVRES) {
      const shown = shownParameters(definition.id, definition, kmh);
      let line: string = definition.id;
      for (const [key, parameter] of Object.entries(definition.parameters))
        line = withSetting(line, key, typedSetting(parameter, shown.get(key) ?? "", kmh));
      expect(fullLine(line)).toBe(fullLine(definition.id));
    }
  });

  it("are typed and shown in the person's unit", () => {
    const line = withSetting("cruise", "speed", typedSetting(speed, "60", mph));
    // 60 mph = 26.8224 m/s exactly (international mile).
    expect(Math.max(...manoeuvre(line).speed)).toBeCloseTo(26.8224, 9);
    expect(shownParameters(line, cruise, mph).get("speed")).toBe("60");
    expect(shownParameters(line, cruise, kmh).get("speed")).toBe("96.561");
    expect(parameterUnit(speed, mph)).toBe("mph");
    expect(parameterRange(speed, kmh)).toBe("5 … 250 km/h");
    expect(parameterRange(speed, mph)).toBe("3.1 … 155.3 mph");
  });

  it("take a unit that is written, true minus and decimal comma", () => {
    expect(typedSetting(speed, "20 m/s", kmh)).toBe("20m/s");
    expect(typedSetting(speed, "50,5", kmh)).toBe("50.5km/h");
    const grade = cruise.parameters.grade;
    if (!grade) throw new Error("no grade");
    expect(typedSetting(grade, "−2", kmh)).toBe("-2%");
  });

  it("are refused with the reason, and cannot break the line apart", () => {
    const told = (text: string) => lineFaults(withSetting("cruise", "speed", typedSetting(speed, text, kmh)));
    expect(told("60")).toBeNull();
    expect(told("900")?.[0]?.what).toContain("out of range");
    expect(told("60 kg")?.[0]?.what).toContain("not known");
    expect(told("fast, grade=5")).toHaveLength(1);
    expect(told("")).toHaveLength(1);
  });
});
