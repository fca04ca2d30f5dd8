import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fullLine, isManoeuvre, MANOEUVRES, manoeuvre } from "../../../cycles/manoeuvres/catalogue.ts";
import { faultsOf } from "../faults-of.ts";

describe("the line of a manoeuvre", () => {
  it("may leave everything out", () => {
    expect(fullLine("cruise")).toBe("cruise:speed=100km/h,grade=0%,for=300s");
    expect(fullLine("cruise:")).toBe(fullLine("cruise"));
  });

  it("takes any order, blanks, capitals and other units, and keeps the digits typed", () => {
    expect(fullLine(" Cruise : For = 5 min , SPEED=60mph,grade=-2.50% ")).toBe(
      "cruise:speed=60mph,grade=-2.50%,for=5min",
    );
    expect(fullLine("brake-stop:rate=3mps2,speed=20mps")).toBe(
      "brake-stop:speed=20m/s,rate=3m/s2,lead=10s,grade=0%",
    );
    expect(fullLine("stop-and-go:times=12")).toContain("times=12");
  });

  it("tells a manoeuvre from a table by its name alone", () => {
    expect(isManoeuvre("cruise:nonsense")).toBe(true);
    expect(isManoeuvre("udds")).toBe(false);
  });

  it("spells out what an id cannot hold", () => {
    expect(manoeuvre("cruise:grade=-2.5%").id).toBe("cruise-grade-minus-2-5pct");
    expect(manoeuvre("cruise:grade=2.5%").id).toBe("cruise-grade-2-5pct");
    expect(manoeuvre("cruise").id).toBe("cruise");
    expect(manoeuvre("cruise:grade=2%").title).toBe("Cruise, grade 2 %");
  });
});

describe("a wrong line", () => {
  it.each([
    ["cruise:speed=100", "speed", "100", "unit is missing"],
    ["cruise:speed=100knots", "speed", "100knots", '"knots" is not known'],
    ["cruise:speed=fast", "speed", "fast", "not a number"],
    ["cruise:speed=", "speed", "", "not a number"],
    ["cruise:speed=1e2km/h", "speed", "1e2km/h", "not known"],
    ["cruise:speed=NaNkm/h", "speed", "NaNkm/h", "not a number"],
    ["cruise:speed=900km/h", "speed", "900km/h", "out of range"],
    ["cruise:speed=-50km/h", "speed", "-50km/h", "out of range"],
    ["cruise:grade=45deg", "grade", "45deg", "out of range"],
    ["cruise:colour=red", "colour", "colour", "no such parameter"],
    ["cruise:constructor=1s", "constructor", "constructor", "no such parameter"],
    ["cruise:100km/h", "", "100km/h", "no equals sign"],
    ["cruise:speed=50km/h,", "", "", "no equals sign"],
    ["cruise:speed=50km/h,speed=60km/h", "speed", "60km/h", "given twice"],
    ["stop-and-go:times=2.5", "times", "2.5", "whole"],
    ["stop-and-go:times=0", "times", "0", "out of range"],
    ["launch:rate=3m/s", "rate", "3m/s", "not known"],
  ])("%s names the parameter and the value", (line, key, value, said) => {
    const faults = faultsOf(() => manoeuvre(line));
    expect(faults).toHaveLength(1);
    expect(faults[0]?.where).toContain(`parameter "${key}"`);
    expect(faults[0]?.value).toBe(value);
    expect(faults[0]?.what).toContain(said);
    expect(faults[0]?.accepted).not.toBe("");
  });

  it("tells all its faults at once", () => {
    expect(faultsOf(() => manoeuvre("cruise:speed=1,grade=x,so"))).toHaveLength(3);
  });

  it("says the range and the units", () => {
    expect(faultsOf(() => manoeuvre("cruise:speed=900km/h"))[0]?.accepted).toBe(
      "5 to 250 km/h, in km/h, mph or m/s",
    );
  });

  it("with an unknown name lists the known", () => {
    const [fault] = faultsOf(() => manoeuvre("loop:speed=5m/s"));
    expect(fault).toMatchObject({ value: "loop" });
    for (const { id } of MANOEUVRES) expect(fault?.accepted).toContain(id);
  });
});

describe("writing and reading again", () => {
  it("gives the same trace to the last bit, for any parameters", () => {
    const anyLine = fc.constantFrom(...MANOEUVRES).chain((definition) => {
      const settings = Object.entries(definition.parameters).map(([key, { min, max, unit }]) =>
        fc
          .option(fc.double({ min, max, noNaN: true }), { nil: null })
          .map((value) =>
            value === null
              ? []
              : [`${key}=${clamp(unit === "" ? Math.round(value) : value, min, max)}${unit}`],
          ),
      );
      return fc.tuple(...settings).map((chosen) => `${definition.id}:${chosen.flat().join(",")}`);
    });
    fc.assert(
      fc.property(anyLine, (line) => {
        const written = fullLine(line);
        expect(fullLine(written)).toBe(written);
        expect(manoeuvre(written)).toEqual(manoeuvre(line));
        expect(manoeuvre(line).source).toBe(`own manoeuvre ${written}`);
      }),
      { numRuns: 200 },
    );
  });
});

/** Four decimals, so that no exponent is written, and still in range after rounding. */
function clamp(value: number, min: number, max: number): number {
  return Math.min(max, Math.max(min, Number(value.toFixed(4))));
}
