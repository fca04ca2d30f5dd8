/**
 * Cleaning of recorded tracks whose truth is known: invented drives (standard speed tables along winding roads over hills)
 * as receivers with stated faults would record them. The goal: distance within 0.5 %, ascent within 5 %.
 * The sizes of the faults are common practice, no source: consumer receivers jitter by one to three metres and wander by
 * some more within minutes; their elevations are two to three times worse.
 */

import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { smoothSpline } from "../../../cycles/clean/spline.ts";
import { treat, usualTreatments } from "../../../cycles/clean/treat.ts";
import { messyRecording } from "../../../cycles/demo/messy.ts";
import { type ReceiverFaults, receive } from "../../../cycles/demo/receiver.ts";
import { type Hill, trueDrive } from "../../../cycles/demo/true-drive.ts";
import { importGpx } from "../../../cycles/import/gpx/gpx.ts";
import { at } from "../../../shared/at.ts";
import { placesOf } from "../../cycles/clean/places-of.ts";

const START = { latitude: 47, longitude: -31 };
const HILLY: readonly Hill[] = [
  { height: 60, length: 4000 },
  { height: 15, length: 1300 },
];
const GENTLE: readonly Hill[] = [{ height: 25, length: 5000 }];
const STEEP: readonly Hill[] = [
  { height: 150, length: 6000 },
  { height: 10, length: 700 },
];

/** Faults of receivers, by name. */
const RECEIVERS: Readonly<Record<string, ReceiverFaults>> = {
  "no faults": {},
  "white jitter of 1 m": { jitter: 1, elevationJitter: 1 },
  "white jitter of 3 m": { jitter: 3, elevationJitter: 3 },
  "fine jitter, elevations in whole metres": { jitter: 0.5, elevationJitter: 0.3, elevationStep: 1 },
  "slow wander of 3 m": { jitter: 0.5, wander: 3, wanderTime: 60, elevationJitter: 2 },
  "wild places and lost heights": {
    jitter: 1.5,
    elevationJitter: 2,
    wild: 0.01,
    noHeight: [
      { start: 0, end: 20 },
      { start: 200, end: 220 },
    ],
  },
  "two short gaps": {
    jitter: 1,
    elevationJitter: 1,
    gaps: [
      { start: 130, end: 139 },
      { start: 260, end: 275 },
    ],
  },
};

const DRIVES = ["udds", "hwfet", "wltc-class3b"] as const;
const LANDS: Readonly<Record<string, readonly Hill[]>> = { hilly: HILLY, gentle: GENTLE, steep: STEEP };

describe.each(DRIVES)("%s", (id) => {
  describe.each(Object.entries(LANDS))("over %s land", (_, hills) => {
    const truth = trueDrive(cycleById(id), hills, 7);
    it.each(Object.entries(RECEIVERS))("keeps distance and ascent with %s", (_name, faults) => {
      const raw = placesOf(receive(truth, 1, START, faults, 3));
      const { figuresAfter } = treat(raw, usualTreatments(raw));
      const way = at(truth.way, truth.way.length - 1);
      expect(Math.abs(figuresAfter.distance / way - 1)).toBeLessThan(0.005);
      expect(Math.abs(figuresAfter.ascent / truth.ascent - 1)).toBeLessThan(0.05);
    });
  });
});

describe("a town drive of nothing but stops (NYCC)", () => {
  const truth = trueDrive(cycleById("nycc"), HILLY, 7);
  it.each<[string, ReceiverFaults]>([
    ["no faults", {}],
    ["jitter of 1 m", { jitter: 1, elevationJitter: 1 }],
    ["jitter of 3 m", { jitter: 3, elevationJitter: 3 }],
  ])("keeps distance and ascent with %s, where the straight sum is up to twice the way", (_, faults) => {
    const raw = placesOf(receive(truth, 1, START, faults, 3));
    const { figuresAfter, figuresBefore } = treat(raw, usualTreatments(raw));
    const way = at(truth.way, truth.way.length - 1);
    if (faults.jitter === 3) expect(figuresBefore.distance).toBeGreaterThan(1.9 * way);
    expect(Math.abs(figuresAfter.distance / way - 1)).toBeLessThan(0.005);
    expect(Math.abs(figuresAfter.ascent / truth.ascent - 1)).toBeLessThan(0.05);
  });
});

describe("other clocks", () => {
  const truth = trueDrive(cycleById("wltc-class3b"), HILLY, 11);
  const way = at(truth.way, truth.way.length - 1);
  it.each([0.2, 0.5, 2])("one place every %d s", (every) => {
    const raw = placesOf(receive(truth, every, START, { jitter: 1, elevationJitter: 1 }, 5));
    const { figuresAfter } = treat(raw, usualTreatments(raw));
    expect(Math.abs(figuresAfter.distance / way - 1)).toBeLessThan(0.005);
    expect(Math.abs(figuresAfter.ascent / truth.ascent - 1)).toBeLessThan(0.05);
  });
});

describe("a sparse recording", () => {
  it("keeps the distance less well, since bends between its places are lost", () => {
    const truth = trueDrive(cycleById("wltc-class3b"), HILLY, 11);
    const raw = placesOf(receive(truth, 5, START, { jitter: 1, elevationJitter: 1 }, 5));
    const { figuresAfter } = treat(raw, usualTreatments(raw));
    const share = figuresAfter.distance / at(truth.way, truth.way.length - 1);
    expect(share).toBeGreaterThan(0.96);
    expect(share).toBeLessThan(1.005);
  });
});

describe("the invented messy recording", () => {
  it.each([20_240_501, 1, 2, 3, 4, 5])("with seed %d keeps distance and ascent", (seed) => {
    const { truth, gpx } = messyRecording(seed);
    const { raw } = importGpx(gpx, { fileName: "messy.gpx" });
    const { figuresBefore, figuresAfter, after, openGaps } = treat(raw, usualTreatments(raw));
    const way = at(truth.way, truth.way.length - 1);
    expect(figuresBefore.distance).toBeGreaterThan(1.05 * way);
    expect(Math.abs(figuresAfter.distance / way - 1)).toBeLessThan(0.005);
    expect(Math.abs(figuresAfter.ascent / truth.ascent - 1)).toBeLessThan(0.05);
    expect(figuresAfter.maxAcceleration).toBeLessThan(4.5);
    expect(openGaps).toEqual([]);
    expect([after.speed[0], after.speed.at(-1)]).toEqual([0, 0]);
  });
});

describe("smoothing by filter and smoother", () => {
  it("is the cubic smoothing spline", () => {
    // Reinsch, "Smoothing by spline functions", 1967: (R + λ QᵀQ) γ = Qᵀ y, f = y − λ Q γ; from memory. Uneven samples.
    const count = 30;
    const along = Float64Array.from({ length: count }, (_, i) => i + 0.4 * Math.sin(5 * i));
    const y = Float64Array.from(along, (t, i) => Math.sin(t / 4) + 0.3 * Math.cos(11 * i));
    const jitter = 0.5;
    const liveliness = 0.2;
    const known = new Uint8Array(count).fill(1);
    const { values } = smoothSpline({ along, values: [y], known }, { jitter, liveliness });
    const expected = reinsch([...along], [...y], (jitter * jitter) / liveliness);
    expected.forEach((f, i) => {
      expect(at(at(values, 0), i)).toBeCloseTo(f, 4);
    });
  });
});

function reinsch(t: readonly number[], y: readonly number[], lambda: number): number[] {
  const n = t.length;
  const h = t.slice(1).map((next, i) => next - at(t, i));
  const q = Matrix.zeros(n, n - 2);
  const r = Matrix.zeros(n - 2, n - 2);
  for (let j = 0; j < n - 2; j += 1) {
    q.set(j, j, 1 / at(h, j));
    q.set(j + 1, j, -1 / at(h, j) - 1 / at(h, j + 1));
    q.set(j + 2, j, 1 / at(h, j + 1));
    r.set(j, j, (at(h, j) + at(h, j + 1)) / 3);
    if (j + 1 < n - 2) {
      r.set(j, j + 1, at(h, j + 1) / 6);
      r.set(j + 1, j, at(h, j + 1) / 6);
    }
  }
  const column = Matrix.columnVector([...y]);
  const left = Matrix.add(r, q.transpose().mmul(q).mul(lambda));
  const gamma = solve(left, q.transpose().mmul(column));
  return Matrix.sub(column, q.mmul(gamma).mul(lambda)).to1DArray();
}
