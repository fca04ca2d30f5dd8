/** Published figures of the parts of schedules; seen and recalled as in cycles/data/SOURCES.md. */
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { combineFuelPerDistance } from "../../../cycles/composite/weighting.ts";
import { phaseStatistics, statistics } from "../../../cycles/statistics/basics.ts";
import { at } from "../../../shared/at.ts";
import {
  litresPer100KmToMpg,
  metresToMiles,
  mpgToLitresPer100Km,
  mpsToKmh,
  mpsToMph,
} from "../../../shared/units.ts";

describe("WLTC class 3b, UN GTR No. 15, Annex 1 (Y4: seen in two public test files)", () => {
  const trace = cycleById("wltc-class3b");

  it.each([
    // id, s, m, km/h, central-difference acceleration m/s², sum of the samples km/h (seen; also from memory of the
    // regulation's "Cycle identification")
    ["low", 589, 3095, 56.5, 1.47, 11_140.3],
    ["medium", 433, 4756, 76.6, 1.57, 17_121.2],
    ["high", 455, 7162, 97.4, 1.58, 25_782.2],
    ["extra-high", 323, 8254, 131.3, 1.03, 29_714.9],
  ])("%s phase", (id, duration, metres, top, acceleration, checksum) => {
    const part = cycleById(`wltc-class3b-${id}`);
    const figures = statistics(part);
    expect(figures.duration).toBe(duration);
    expect(Math.abs(figures.distance - metres)).toBeLessThanOrEqual(0.5);
    expect(mpsToKmh(figures.maxSpeed)).toBeCloseTo(top, 9);
    const central = part.speed.subarray(2).map((v, k) => (v - at(part.speed, k)) / 2);
    expect(Math.abs(Math.max(...central) - acceleration)).toBeLessThanOrEqual(0.005);
    // The boundaries stand, so that it does not matter which phase they are counted in.
    expect(mpsToKmh(part.speed.reduce((sum, v) => sum + v, 0))).toBeCloseTo(checksum, 6);
  });

  it("sums to 83,758.6 km/h", () => {
    expect(mpsToKmh(trace.speed.reduce((sum, v) => sum + v, 0))).toBeCloseTo(83_758.6, 6);
  });

  it("stands below 1 km/h in 156, 48, 31 and 7 seconds (Y5: from memory; 13.4 % of 1800 s seen)", () => {
    const below = trace.phases.map(
      ({ start, end }) => trace.speed.subarray(start + 1, end + 1).filter((v) => mpsToKmh(v) < 0.95).length,
    );
    expect(below).toEqual([156, 48, 31, 7]);
    expect(below.reduce((sum, n) => sum + n, 0) / 1800).toBeCloseTo(0.134, 3);
  });
});

describe("UDDS, first 505 seconds (Y1: cycle reference page, seen)", () => {
  it("are 3.59 mi, 25.6 mph, 5.78 km, 41.2 km/h", () => {
    const [first] = phaseStatistics(cycleById("udds"));
    const figures = first?.statistics ?? statistics(cycleById("udds"));
    expect(figures.duration).toBe(505);
    expect(Math.abs(metresToMiles(figures.distance) - 3.59)).toBeLessThan(0.005);
    expect(Math.abs(mpsToMph(figures.meanSpeed) - 25.6)).toBeLessThan(0.05);
    expect(Math.abs(figures.distance / 1000 - 5.78)).toBeLessThan(0.005);
    expect(Math.abs(mpsToKmh(figures.meanSpeed) - 41.2)).toBeLessThan(0.05);
  });
});

describe("FTP-75 (reference pages, seen)", () => {
  const trace = cycleById("ftp75");
  const figures = statistics(trace);

  it("drives 1874 s, 11.04 mi, 17.8 km, 21.2 mph, 18 % idle, and lasts 2474 s with the soak", () => {
    expect(figures.drivingTime).toBe(1874);
    expect(figures.duration).toBe(2474);
    expect(Math.abs(metresToMiles(figures.distance) - 11.04)).toBeLessThan(0.005);
    expect(Math.abs(figures.distance / 1000 - 17.8)).toBeLessThan(0.05);
    expect(Math.abs(mpsToMph(figures.meanSpeed) - 21.2)).toBeLessThan(0.05);
    expect(Math.abs(figures.restShare - 0.18)).toBeLessThan(0.005);
    expect(Math.abs(mpsToKmh(figures.maxAcceleration) - 5.3)).toBeLessThan(0.05);
  });

  it("has bags of 3.591, 3.859 and 3.591 mi at 25.6, 16.1 and 25.6 mph (SOURCES.md)", () => {
    const bags = phaseStatistics(trace).map((part) => part.statistics);
    expect(bags.map((bag) => metresToMiles(bag.distance).toFixed(3))).toEqual(["3.591", "3.859", "3.591"]);
    expect(bags.map((bag) => mpsToMph(bag.meanSpeed).toFixed(1))).toEqual(["25.6", "16.1", "25.6"]);
  });

  it("repeats the first 505 seconds after the soak (equal to a separate copy of the agency's table)", () => {
    const udds = cycleById("udds").speed;
    expect(trace.time.length).toBe(1876);
    for (let k = 0; k <= 505; k += 1) {
      expect(at(trace.time, 1370 + k)).toBe(1969 + k);
      expect(at(trace.speed, 1370 + k)).toBe(at(udds, k));
    }
  });
});

describe("LA92 (reference page, seen)", () => {
  it("has 300 s with 1.2 mi and 1135 s with 8.6 mi", () => {
    const bags = phaseStatistics(cycleById("la92")).map((part) => part.statistics);
    expect(bags.map((bag) => bag.duration)).toEqual([300, 1135]);
    expect(bags.map((bag) => metresToMiles(bag.distance).toFixed(1))).toEqual(["1.2", "8.6"]);
  });
});

describe("NEDC, UN Regulation No. 83 (Y6: lecture slides after it, seen)", () => {
  const parts = phaseStatistics(cycleById("nedc")).map((part) => part.statistics);
  const extraUrban = at(parts, 4);

  it("has an extra-urban part of 400 s, 6.955 km, 62.6 km/h, 120 km/h", () => {
    expect(extraUrban.duration).toBe(400);
    expect(Math.abs(extraUrban.distance / 1000 - 6.955)).toBeLessThan(0.0005);
    expect(Math.abs(mpsToKmh(extraUrban.meanSpeed) - 62.6)).toBeLessThan(0.05);
    expect(mpsToKmh(extraUrban.maxSpeed)).toBeCloseTo(120, 9);
  });

  it("has four urban parts of 195 s; the stated 1.013 km and 18.7 km/h are missed by 0.5 %", () => {
    // 1.013 km is the regulation's theoretical distance; its own straight lines give 1.0183 km. No cause was found.
    for (const urban of parts.slice(0, 4)) {
      expect(urban.duration).toBe(195);
      expect(Math.abs(urban.distance / 1013 - 1)).toBeLessThan(0.006);
      expect(urban.distance).toBeCloseTo(1018.33, 2);
      expect(Math.abs(mpsToKmh(urban.meanSpeed) / 18.7 - 1)).toBeLessThan(0.006);
    }
  });

  it("stands 60 s in each urban part (the regulation's breakdown, seen) and 40 s in the other", () => {
    expect(parts.map((part) => Math.round(part.restTime * 1e6) / 1e6)).toEqual([60, 60, 60, 60, 40]);
    expect(parts.map((part) => part.stops)).toEqual([3, 3, 3, 3, 1]);
  });
});

describe("combined fuel economy (F1: worked example, 40 CFR Part 600 Appendix II(a)(2), seen)", () => {
  it("27.7 mpg in the city and 36.9 mpg on the highway are 31.2 mpg", () => {
    const litres = combineFuelPerDistance(mpgToLitresPer100Km(27.7), mpgToLitresPer100Km(36.9));
    expect(litresPer100KmToMpg(litres)).toBeCloseTo(31.2005, 4);
    expect(litresPer100KmToMpg(litres).toFixed(1)).toBe("31.2");
  });
});
