import { describe, expect, it } from "vitest";
import { num, ratio, roadSpeed, shaftSpeed } from "../../../renderer/state/format.ts";
import { parseSpeed, parseTorque } from "../../../renderer/state/parse.ts";
import { kmhToMps, mphToMps, radPerSToRpm, rpmToRadPerS } from "../../../shared/units.ts";

const rpm = { shaft: "rpm", road: "kmh" } as const;
const radps = { shaft: "radps", road: "mph" } as const;
const ring = { units: rpm, ofRoad: (mps: number) => mps * 10 };
const sun = { units: rpm, ofRoad: null };

const read = (text: string, context = sun as typeof sun | typeof ring): number => {
  const parsed = parseSpeed(text, context);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.reason}`);
  return parsed.value;
};

describe("typed speeds", () => {
  it("without a unit are in the person's unit", () => {
    expect(radPerSToRpm(read("2400"))).toBeCloseTo(2400, 9);
    expect(parseSpeed("251", { units: radps, ofRoad: null })).toEqual({ ok: true, value: 251 });
  });

  it.each(["2 400", "2\u202f400", "2,400", "+2400", "2400.0 rpm", "2400 rev/min", "2400 1/min", "40 rev/s"])(
    "%s is 2400 rev/min",
    (text) => expect(radPerSToRpm(read(text))).toBeCloseTo(2400, 9),
  );

  it("take rad/s whatever the person's unit", () => {
    expect(read("251 rad/s")).toBe(251);
    expect(read("251rad/s")).toBe(251);
  });

  it("take any minus sign", () => {
    for (const text of ["-500", "\u2212500", "\u2013500", "- 500"]) {
      expect(read(text)).toBeCloseTo(rpmToRadPerS(-500), 12);
    }
  });

  it("take a lone comma as a decimal one", () => expect(read("12,5 rad/s")).toBe(12.5));

  it("take road speeds for the ring only", () => {
    expect(read("35 km/h", ring)).toBeCloseTo(kmhToMps(35) * 10, 12);
    expect(read("20 mph", ring)).toBeCloseTo(mphToMps(20) * 10, 12);
    expect(read("9 m/s", ring)).toBe(90);
    expect(parseSpeed("35 km/h", sun)).toEqual({ ok: false, reason: "roadNeedsRing" });
  });

  it.each(["", "fast", "--3", "1.2.3", "km/h"])("%j is no number", (text) =>
    expect(parseSpeed(text, ring)).toEqual({ ok: false, reason: "notNumber" }),
  );

  it("name an unknown unit", () =>
    expect(parseSpeed("3 furlongs", ring)).toEqual({ ok: false, reason: "unknownUnit" }));
});

describe("typed torques", () => {
  it.each(["100", "100 N·m", "100 Nm", "100 N m", "100 n.m"])("%s is 100 N·m", (text) =>
    expect(parseTorque(text)).toEqual({ ok: true, value: 100 }),
  );
  it("refuse other units", () => expect(parseTorque("100 kW").ok).toBe(false));
});

describe("numbers for reading", () => {
  it("have thin spaces, a true minus and no negative zero", () => {
    expect(num(10504)).toBe("10\u202f504");
    expect(num(-28.571, 1)).toBe("\u221228.6");
    expect(num(-0.04, 1)).toBe("0.0");
    expect(num(1234567.89, 2)).toBe("1\u202f234\u202f567.89");
  });
  it("follow the person's units", () => {
    expect(shaftSpeed(rpm, rpmToRadPerS(2400))).toBe("2\u202f400");
    expect(shaftSpeed(radps, 251.33)).toBe("251.3");
    expect(roadSpeed(radps, mphToMps(20))).toBe("20.0 mph");
  });
  it("drop needless zeros of ratios", () => {
    expect([ratio(2.5), ratio(3), ratio(108 / 42)]).toEqual(["2.5", "3", "2.571"]);
  });
});
