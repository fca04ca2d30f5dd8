import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { resample } from "../../../cycles/edit.ts";
import { phaseStatistics, statistics } from "../../../cycles/statistics/basics.ts";
import { traceOf } from "../trace-of.ts";

/** 2 s standing, 5 s up to 10 m/s, 10 s steady, 4 s down, 3 s standing: distance 25 + 100 + 20 m. */
const hop = traceOf([
  [0, 0],
  [2, 0],
  [7, 10],
  [17, 10],
  [21, 0],
  [24, 0],
]);

describe("statistics of a hop", () => {
  const figures = statistics(hop);

  it("are those of the drawing", () => {
    expect(figures.duration).toBe(24);
    expect(figures.drivingTime).toBe(24);
    expect(figures.distance).toBeCloseTo(145, 12);
    expect(figures.meanSpeed).toBeCloseTo(145 / 24, 12);
    expect(figures.meanMovingSpeed).toBeCloseTo(145 / 19, 12);
    expect(figures.maxSpeed).toBe(10);
    expect(figures.maxAcceleration).toBeCloseTo(2, 12);
    expect(figures.maxDeceleration).toBeCloseTo(2.5, 12);
    expect(figures.restTime).toBe(5);
    expect(figures.restShare).toBeCloseTo(5 / 24, 12);
    expect(figures.restSampleShare).toBeCloseTo(4 / 6, 12);
    expect(figures.stops).toBe(1);
    // ½ · 10² gained over 145 m
    expect(figures.relativePositiveAcceleration).toBeCloseTo(50 / 145, 12);
  });

  it("do not change when samples are put on its lines", () => {
    const fine = statistics(resample(hop, 0.25));
    for (const key of ["distance", "restTime", "stops", "maxAcceleration", "maxDeceleration"] as const) {
      expect(fine[key]).toBeCloseTo(figures[key], 9);
    }
    expect(fine.demand.traction.air).toBeCloseTo(figures.demand.traction.air, 9);
  });

  it("of a part take the part only", () => {
    const part = statistics(hop, { start: 4.5, end: 19 });
    expect(part.distance).toBeCloseTo(18.75 + 100 + 15, 12);
    expect(part.duration).toBe(14.5);
    expect(part.stops).toBe(0);
  });

  it("take the largest change over a second though no sample lies at its ends", () => {
    const jerk = traceOf([
      [0, 0],
      [0.4, 0],
      [0.9, 2],
      [5, 2],
    ]);
    // 2 m/s within half a second are 2 m/s² over a whole one.
    expect(statistics(jerk).maxAcceleration).toBeCloseTo(2, 12);
    // Here the steepest second ends on a sample and starts between two.
    const peak = traceOf([
      [0, 0],
      [2.3, 1],
      [2.9, 3],
      [5, 0],
    ]);
    expect(statistics(peak).maxAcceleration).toBeCloseTo(3 - 1.9 / 2.3, 12);
  });

  it("of a piece shorter than a second are over the piece", () => {
    const short = traceOf([
      [0, 0],
      [0.5, 2],
    ]);
    expect(statistics(short).maxAcceleration).toBeCloseTo(4, 12);
  });
});

describe("backing up", () => {
  it("counts as driving, and passing through rest as a stop", () => {
    const turn = traceOf([
      [0, 2],
      [4, -2],
    ]);
    const figures = statistics(turn);
    expect(figures.distance).toBeCloseTo(4, 12);
    expect(figures.maxSpeed).toBe(2);
    expect(figures.stops).toBe(1);
    expect(figures.demand.traction.inertia).toBeCloseTo(2 / 4, 12);
  });

  it("has the figures of the same drive forwards", () => {
    const forward = traceOf([...hop.time].map((t, i) => [t, hop.speed[i] ?? 0]));
    const backward = traceOf([...hop.time].map((t, i) => [t, -(hop.speed[i] ?? 0)]));
    expect(statistics(backward)).toEqual(statistics(forward));
  });
});

describe("standing", () => {
  it("gives zeros and no not-a-number", () => {
    const still = statistics(
      traceOf([
        [0, 0],
        [9, 0],
      ]),
    );
    expect(still).toMatchObject({ distance: 0, meanSpeed: 0, meanMovingSpeed: 0, restShare: 1, stops: 0 });
    expect(still.demand.whole).toEqual({ air: 0, rolling: 0, inertia: 0 });
  });

  it("can allow for the noise of a recorded drive", () => {
    const noisy = traceOf([
      [0, 0.1],
      [5, 0.2],
      [10, 8],
      [20, 0.1],
      [25, 0.15],
    ]);
    expect(statistics(noisy)).toMatchObject({ restTime: 0, stops: 0 });
    expect(statistics(noisy, undefined, 0.3)).toMatchObject({ restTime: 10, stops: 1 });
  });
});

describe("a soak", () => {
  it("counts in the duration and nowhere else", () => {
    const rows = [
      [0, 0],
      [5, 10],
      [10, 0],
      [110, 0],
      [115, 10],
      [120, 0],
    ] as const;
    const figures = statistics(traceOf(rows, { soaks: [{ start: 10, end: 110 }] }));
    expect(figures).toMatchObject({ duration: 120, drivingTime: 20, restTime: 0, distance: 100, stops: 2 });
    expect(figures.meanSpeed).toBeCloseTo(5, 12);
    expect(statistics(traceOf(rows)).restTime).toBe(100);
  });

  it("at the end or the start of a span leaves nothing behind", () => {
    const ftp75 = cycleById("ftp75");
    expect(statistics(ftp75, { start: 1369, end: 1969 })).toMatchObject({
      duration: 600,
      drivingTime: 0,
      distance: 0,
    });
    expect(statistics(ftp75, { start: 505, end: 1669 }).drivingTime).toBe(864);
    expect(statistics(ftp75, { start: 1669, end: 2474 }).drivingTime).toBe(505);
  });
});

describe("phaseStatistics", () => {
  it.each(["udds", "la92", "nedc", "wltc-class3b", "ftp75"])("adds up to the whole of %s", (id) => {
    const trace = cycleById(id);
    const parts = phaseStatistics(trace).map((part) => part.statistics);
    const whole = statistics(trace);
    for (const key of ["distance", "drivingTime", "restTime", "stops"] as const) {
      expect(parts.reduce((sum, part) => sum + part[key], 0)).toBeCloseTo(whole[key], 6);
    }
  });

  it("is empty without phases", () => {
    expect(phaseStatistics(hop)).toEqual([]);
  });
});

describe("for any drive", () => {
  const drive = fc
    .array(
      fc.tuple(fc.double({ min: 0.1, max: 30, noNaN: true }), fc.double({ min: -10, max: 50, noNaN: true })),
      { minLength: 2, maxLength: 30 },
    )
    .map((steps) => {
      let time = 0;
      return traceOf(
        steps.map(([step, speed], i) => {
          if (i > 0) time += step;
          return [time, speed];
        }),
      );
    });

  it("traction is part of the whole, and shares are shares", () => {
    fc.assert(
      fc.property(drive, (trace) => {
        const { demand, restShare, distance, maxSpeed, drivingTime } = statistics(trace);
        expect(demand.traction.air).toBeLessThanOrEqual(demand.whole.air * (1 + 1e-12));
        expect(demand.traction.rolling).toBeLessThanOrEqual(1 + 1e-12);
        expect(restShare).toBeGreaterThanOrEqual(0);
        expect(restShare).toBeLessThanOrEqual(1);
        expect(distance).toBeLessThanOrEqual(maxSpeed * drivingTime * (1 + 1e-12));
        if (distance > 0) expect(demand.whole.rolling).toBeCloseTo(1, 12);
      }),
    );
  });
});
