/**
 * Published figures of the schedules. "Seen" and "recalled" as in cycles/data/SOURCES.md, where the pages are named:
 * seen means read in a public page or regulation, recalled means known beforehand and not found again (from memory).
 * Tolerance: half a unit of the last published digit, unless a row says why not.
 */
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { statistics } from "../../../cycles/statistics/basics.ts";
import { metresToMiles, mpsToKmh, mpsToMph } from "../../../shared/units.ts";

interface Published {
  readonly id: string;
  readonly source: string;
  readonly standing: "seen" | "recalled";
  readonly duration?: number;
  readonly miles?: readonly [value: number, tolerance: number];
  readonly km?: readonly [value: number, tolerance: number];
  readonly meanMph?: readonly [value: number, tolerance: number];
  readonly meanKmh?: readonly [value: number, tolerance: number];
  readonly maxMph?: readonly [value: number, tolerance: number];
  readonly maxKmh?: readonly [value: number, tolerance: number];
  /** s over which the published mean is taken, when not the whole. */
  readonly meanOver?: number;
}

const ROWS: readonly Published[] = [
  {
    id: "udds",
    source: "Y1: EPA schedule, 40 CFR Part 86 Appendix I(a)",
    standing: "seen",
    duration: 1369,
    miles: [7.45, 0.005],
    meanMph: [19.59, 0.005],
    maxMph: [56.7, 0.05],
  },
  {
    id: "hwfet",
    source: "Y2: EPA schedule, 40 CFR Part 600 Appendix I",
    standing: "seen",
    duration: 765,
    miles: [10.26, 0.005],
    meanMph: [48.3, 0.05],
    maxMph: [59.9, 0.05],
  },
  {
    id: "hwfet",
    source: "Canadian government page",
    standing: "seen",
    km: [16.5, 0.05],
    meanKmh: [78, 0.5],
    // It prints a peak of 97 km/h; 59.9 mph are 96.4 km/h, so it was rounded up.
    maxKmh: [97, 0.7],
  },
  {
    id: "us06",
    source: "Y3: emission-standard reference sites and an encyclopedia",
    standing: "seen",
    miles: [8.01, 0.005],
    meanMph: [48.4, 0.05],
    meanOver: 596,
    maxMph: [80.3, 0.05],
  },
  {
    id: "sc03",
    source: "emission-standard reference sites",
    standing: "seen",
    miles: [3.6, 0.05],
    meanMph: [21.6, 0.05],
    meanOver: 596,
    maxMph: [54.8, 0.05],
  },
  {
    id: "sc03",
    source: "40 CFR 86.160-00: a single, 600 second test",
    standing: "seen",
    duration: 600,
  },
  { id: "sc03", source: "from memory", standing: "recalled", miles: [3.58, 0.005] },
  { id: "nycc", source: "reference page", standing: "seen", miles: [1.18, 0.005] },
  {
    id: "nycc",
    source: "from memory",
    standing: "recalled",
    duration: 598,
    meanMph: [7.1, 0.05],
    maxMph: [27.7, 0.05],
  },
  {
    id: "la92",
    source: "reference page",
    standing: "seen",
    duration: 1435,
    miles: [9.8, 0.05],
    meanMph: [24.6, 0.05],
  },
  // The recalled mean of 24.61 is the average of the samples, 24.63 the way over the time.
  {
    id: "la92",
    source: "from memory",
    standing: "recalled",
    miles: [9.82, 0.005],
    meanMph: [24.61, 0.025],
    maxMph: [67.2, 0.05],
  },
  {
    id: "wltc-class3b",
    source: "Y4: UN GTR No. 15, Annex 1, as in two public test files",
    standing: "seen",
    duration: 1800,
    km: [23.266, 0.0005],
    meanKmh: [46.5, 0.05],
    maxKmh: [131.3, 0.05],
  },
  // Total: 11.028 km here, since the urban part is 0.5 % longer than stated (nedc.test.ts); mean with it.
  {
    id: "nedc",
    source: "reference page, after UN Regulation No. 83",
    standing: "seen",
    duration: 1180,
    km: [11.007, 0.022],
    meanKmh: [33.6, 0.06],
    maxKmh: [120, 0.05],
  },
  // The published 8.171 km (8.172 in other pages) are 0.15 % more than any reading of the table gives.
  {
    id: "jc08",
    source: "Japanese pages",
    standing: "seen",
    duration: 1204,
    km: [8.171, 0.0125],
    meanKmh: [24.4, 0.05],
    maxKmh: [81.6, 0.05],
  },
];

function near(value: number, published: readonly [number, number] | undefined): void {
  if (published) expect(Math.abs(value - published[0])).toBeLessThanOrEqual(published[1]);
}

describe.each(ROWS)("$id ($standing; $source)", (row) => {
  const figures = statistics(cycleById(row.id));
  const mean = figures.distance / (row.meanOver ?? figures.duration);

  it("agrees with the published figures", () => {
    if (row.duration !== undefined) expect(figures.duration).toBe(row.duration);
    near(metresToMiles(figures.distance), row.miles);
    near(figures.distance / 1000, row.km);
    near(mpsToMph(mean), row.meanMph);
    near(mpsToKmh(mean), row.meanKmh);
    near(mpsToMph(figures.maxSpeed), row.maxMph);
    near(mpsToKmh(figures.maxSpeed), row.maxKmh);
  });
});

describe("further figures", () => {
  it("UDDS reaches 56.7 mph first at 240 s (seen)", () => {
    const { speed } = cycleById("udds");
    expect(speed.indexOf(Math.max(...speed))).toBe(240);
  });

  it("HWFET rises by 5.2 km/h in a second (seen, Canadian government page)", () => {
    // The table's 3.2 mph are 5.150 km/h, which the page rounded up; hence 0.06 instead of half a digit.
    const rise = mpsToKmh(statistics(cycleById("hwfet")).maxAcceleration);
    expect(Math.abs(rise - 5.2)).toBeLessThan(0.06);
  });

  it("US06 rises by 8.4 mph in a second; the 8.46 of an encyclopedia (seen) is not in the table", () => {
    const rise = mpsToMph(statistics(cycleById("us06")).maxAcceleration);
    expect(rise).toBeCloseTo(8.4, 9);
    expect(Math.abs(rise - 8.46)).toBeLessThan(0.07);
  });

  it("US06 and SC03 stand from 594 s on (the older edition's end of the test)", () => {
    for (const id of ["us06", "sc03"]) {
      const { speed } = cycleById(id);
      expect(speed.subarray(594).every((v) => v === 0)).toBe(true);
      expect(speed[593]).toBeGreaterThan(0);
    }
  });

  it("SC03 idles 19 % and rises by 5.1 mph in a second (seen)", () => {
    const figures = statistics(cycleById("sc03"));
    expect(Math.abs(figures.restSampleShare - 0.19)).toBeLessThan(0.005);
    expect(mpsToMph(figures.maxAcceleration)).toBeCloseTo(5.1, 9);
  });

  it("JC08 idles 29.7 % and moves at 34.8 km/h (seen); with its shorter way the latter is 34.7", () => {
    const figures = statistics(cycleById("jc08"));
    expect(Math.abs(figures.restSampleShare - 0.297)).toBeLessThan(0.0005);
    const moving = mpsToKmh(figures.distance / (figures.duration * (1 - figures.restSampleShare)));
    expect(Math.abs(moving - 34.8)).toBeLessThan(0.1);
  });
});

describe("overview of cycles/data/SOURCES.md, computed apart from this program", () => {
  it.each([
    ["udds", 11_990, 1.475, 1.475, 18.9],
    ["hwfet", 16_506, 1.431, 1.475, 0.8],
    ["us06", 12_888, 3.755, 3.085, 7.5],
    ["sc03", 5761, 2.28, 2.727, 19.5],
    ["nycc", 1898, 2.682, 2.638, 35.1],
    ["la92", 15_797, 3.085, 3.934, 16.3],
    ["wltc-class3b", 23_266, 1.667, 1.5, 13.0],
    ["nedc", 11_028, 1.042, 1.389, 24.9],
    ["jc08", 8159, 1.694, 1.222, 29.7],
  ])("%s", (id, metres, rise, fall, restPercent) => {
    const figures = statistics(cycleById(id));
    expect(Math.abs(figures.distance - metres)).toBeLessThan(0.6);
    expect(Math.abs(figures.maxAcceleration - rise)).toBeLessThan(0.0005);
    expect(Math.abs(figures.maxDeceleration - fall)).toBeLessThan(0.0005);
    expect(Math.abs(figures.restSampleShare * 100 - restPercent)).toBeLessThan(0.051);
  });
});
