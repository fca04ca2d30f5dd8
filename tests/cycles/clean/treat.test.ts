import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { figuresOf } from "../../../cycles/clean/figures.ts";
import { readTreatments, treat, usualTreatments } from "../../../cycles/clean/treat.ts";
import { messyRecording } from "../../../cycles/demo/messy.ts";
import { traceCsv } from "../../../cycles/export.ts";
import { importCsv } from "../../../cycles/import/csv.ts";
import { importGpx } from "../../../cycles/import/gpx/gpx.ts";
import { at } from "../../../shared/at.ts";
import {
  type RawDrive,
  rawDriveSchema,
  rawFromJson,
  rawToJson,
  type SpeedDrive,
} from "../../../shared/recorded.ts";
import { type TreatmentInput, treatmentSchema, treatmentsSchema } from "../../../shared/treatments.ts";
import { faultsOf } from "../faults-of.ts";

const speeds = (rows: readonly (readonly number[])[], overlay: RawDrive["overlay"] = null): SpeedDrive => ({
  kind: "speeds",
  id: "drive",
  title: "Drive",
  source: "drive.csv",
  time: Float64Array.from(rows, (row) => row[0] ?? 0),
  speed: Float64Array.from(rows, (row) => row[1] ?? 0),
  grade: Float64Array.from(rows, (row) => row[2] ?? 0),
  reading: ["Read."],
  overlay,
});

const list = (...items: TreatmentInput[]) => treatmentsSchema.parse(items);
const messy = importGpx(messyRecording().gpx, { fileName: "messy.gpx" }).raw;

const anyDrive = fc
  .array(
    fc.tuple(
      fc.constantFrom(1, 1, 1, 0.5, 2, 30, 700),
      fc.oneof(fc.constant(0), fc.double({ min: 0, max: 40, noNaN: true })),
      fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    ),
    { minLength: 4, maxLength: 40 },
  )
  .map((steps) => {
    let time = 0;
    return speeds(
      steps.map(([step, speed, grade], i) => {
        if (i > 0) time += step;
        return [time, speed, grade];
      }),
    );
  });

const anyTreatment = fc.constantFrom<TreatmentInput>(
  { kind: "smooth" },
  { kind: "smooth", jitter: 0.5, elevationJitter: 0.01 },
  { kind: "fillGaps" },
  { kind: "fillGaps", longest: 20 },
  { kind: "resample", step: 0.7 },
  { kind: "limitAcceleration", acceleration: 1, deceleration: 2 },
  { kind: "setToRest", below: 1, atLeast: 1 },
  { kind: "startAndEndAtRest" },
  { kind: "limitGrade", steepest: 0.05 },
  { kind: "level" },
  { kind: "crop", start: 0, end: 0.5 },
);

describe("treat", () => {
  it("gives a sound drive for any list of treatments, and the same one again", () => {
    fc.assert(
      fc.property(anyDrive, fc.array(anyTreatment, { maxLength: 5 }), (raw, items) => {
        const treatments = list(...items);
        const { after, steps, figuresAfter } = treat(raw, treatments);
        expect(after.time[0]).toBe(0);
        expect(after.time.every((t, i) => i === 0 || t > at(after.time, i - 1))).toBe(true);
        expect([...after.speed, ...after.grade].every(Number.isFinite)).toBe(true);
        expect(after.speed.every((v) => v >= 0)).toBe(true);
        expect(steps.map((step) => step.treatment)).toEqual(treatments);
        expect(after.treatment).toEqual(["Read.", ...steps.map((step) => step.sentence)]);
        expect(figuresAfter).toEqual(figuresOf(after));
        expect(treat(raw, treatments).after).toEqual(after);
      }),
      { numRuns: 200 },
    );
  });

  it("changes nothing without treatments, and never the recording", () => {
    const raw = speeds([
      [0, 1],
      [1, 2, 0.1],
      [2, 0],
    ]);
    const copy = structuredClone(raw);
    const { before, after } = treat(raw, []);
    expect(after).toEqual(before);
    expect([...after.speed]).toEqual([1, 2, 0]);
    treat(raw, list({ kind: "smooth" }, { kind: "limitAcceleration", acceleration: 0.1 }));
    expect(raw).toEqual(copy);
  });

  it("refuses what can not be driven, and says what helps", () => {
    const wild = { ...messy, latitude: messy.latitude.map((l, i) => (i === 50 ? l + 1 : l)) };
    const [fault] = faultsOf(() => treat(wild, []));
    expect(fault?.where).toMatch(/^messy\.gpx, at \d+\.\d s$/);
    expect(fault?.accepted).toContain("up to 400 km/h");
    expect(() => treat(wild, usualTreatments(wild))).not.toThrow();
  });

  it("refuses too few places that fit together", () => {
    const scattered = { ...messy, latitude: messy.latitude.map((_, i) => 80 * Math.sin(i * i)) };
    expect(faultsOf(() => treat(scattered, usualTreatments(scattered)))[0]?.what).toContain("Too few places");
  });

  it("travels as JSON to the last bit, holes included", () => {
    const overlay = {
      time: Float64Array.of(0, 1),
      channels: [{ id: "soc" as const, name: "soc", values: Float64Array.of(0.5, Number.NaN) }],
    };
    for (const raw of [
      messy,
      { ...messy, overlay },
      speeds(
        [
          [0, 1.1],
          [1, 2],
        ],
        overlay,
      ),
    ]) {
      const text = JSON.stringify({ raw: rawToJson(raw), treatments: usualTreatments(raw) });
      const back = JSON.parse(text) as { raw: unknown; treatments: unknown };
      const read = rawFromJson(rawDriveSchema.parse(back.raw));
      expect(read).toEqual(raw);
      expect(treat(read, readTreatments(back.treatments, "x")).after).toEqual(
        treat(raw, usualTreatments(raw)).after,
      );
    }
  });

  it("refuses a raw drive whose lists do not fit", () => {
    const json = rawToJson(
      speeds([
        [0, 1],
        [1, 2],
      ]),
    );
    const wrong = [
      { ...json, time: [0, 0] },
      { ...json, time: [1, 2] },
      { ...json, speed: [1, 2, 3] },
      { ...json, overlay: { time: [0, 1], channels: [{ id: "soc", name: "s", values: [1, 2, 3] }] } },
    ];
    for (const drive of wrong) expect(rawDriveSchema.safeParse(drive).success).toBe(false);
    expect(rawDriveSchema.safeParse(json).success).toBe(true);
  });

  it("writes a CSV that is read back to the last bit", () => {
    const { after } = treat(messy, usualTreatments(messy));
    const { trace } = importCsv([...traceCsv(after)].join(""), { fileName: "out.csv" });
    expect([...trace.time]).toEqual([...after.time]);
    expect([...trace.speed]).toEqual([...after.speed]);
    expect([...trace.grade]).toEqual([...after.grade]);
  });
});

describe("the list of treatments", () => {
  it("fills in what is usual", () => {
    expect(readTreatments([{ kind: "smooth" }, { kind: "fillGaps" }], "list.json")).toEqual([
      { kind: "smooth", jitter: "auto", elevationJitter: "auto", step: 1 },
      { kind: "fillGaps", longest: 300 },
    ]);
  });

  it.each([
    ["no list", {}, "list.json", "a list"],
    ["an unknown kind", [{ kind: "polish" }], "list.json: [0].kind", "crop or smooth or fillGaps"],
    [
      "an unknown field",
      [{ kind: "level" }, { kind: "resample", step: 1, stop: 2 }],
      "list.json: [1].stop",
      "kind, step",
    ],
    ["a number out of range", [{ kind: "resample", step: 0 }], "list.json: [0].step", "0.01 or more"],
    ["a text for a number", [{ kind: "fillGaps", longest: "all" }], "list.json: [0].longest", "a number"],
    ["a missing field", [{ kind: "crop", start: 0 }], "list.json: [0].end", "a number"],
    ["a jitter that is neither", [{ kind: "smooth", jitter: "much" }], "list.json: [0].jitter", "auto"],
  ])("with %s is refused by path, value and what is accepted", (_, data, where, accepted) => {
    const [fault] = faultsOf(() => readTreatments(data, "list.json"));
    expect(fault?.where).toBe(where);
    expect(fault?.accepted).toContain(accepted);
  });
});

describe("crop", () => {
  it("takes speeds on the straight line and moves the overlay along", () => {
    const overlay = {
      time: Float64Array.of(0, 1, 2, 3),
      channels: [{ id: "soc" as const, name: "soc", values: Float64Array.of(0.1, 0.2, 0.3, 0.4) }],
    };
    const raw = speeds(
      [
        [0, 0],
        [1, 2],
        [2, 4],
        [3, 0],
      ],
      overlay,
    );
    const treated = treat(raw, list({ kind: "crop", start: 0.5, end: 2.5 }));
    expect([...treated.after.time]).toEqual([0, 0.5, 1.5, 2]);
    expect([...treated.after.speed]).toEqual([1, 2, 4, 2]);
    expect([...(treated.overlay?.time ?? [])]).toEqual([0.5, 1.5]);
    expect([...(treated.overlay?.channels[0]?.values ?? [])]).toEqual([0.2, 0.3]);
  });

  it("keeps places that can still be smoothed", () => {
    const whole = treat(messy, list({ kind: "smooth" }));
    const part = treat(messy, list({ kind: "crop", start: 500, end: 700 }, { kind: "smooth" }));
    const same = treat(messy, list({ kind: "smooth" }, { kind: "crop", start: 500, end: 700 }));
    expect(part.figuresAfter.distance / same.figuresAfter.distance).toBeCloseTo(1, 2);
    expect(part.figuresAfter.distance).toBeLessThan(whole.figuresAfter.distance / 3);
  });

  it.each([
    [10, 10],
    [10, 5],
    [0, 1e5],
    [5.5, 5.6],
  ])("refuses %d to %d s of places", (start, end) => {
    const [fault] = faultsOf(() => treat(messy, list({ kind: "crop", start, end })));
    expect(fault?.where).toBe("messy.gpx: treatments[0] (crop)");
    expect(fault?.value).toBe(`${start} to ${end} s`);
  });
});

describe("fillGaps", () => {
  const gap = (length: number) =>
    speeds([
      [0, 10],
      [1, 10],
      [2, 10],
      [3, 10],
      [3 + length, 20],
      [4 + length, 20],
      [5 + length, 20],
    ]);

  it("leaves a gap of a recorded speed straight up to the limit", () => {
    const { after, steps, openGaps } = treat(gap(60), list({ kind: "fillGaps", longest: 60 }));
    expect([...after.time]).toEqual([...gap(60).time]);
    expect(steps[0]?.facts).toMatchObject({ filled: 1, takenOut: 0 });
    expect(openGaps).toEqual([]);
  });

  it("takes a longer one out and stops there; what follows moves up, the overlay too", () => {
    const overlay = {
      time: Float64Array.of(0, 3, 30, 64),
      channels: [{ id: "soc" as const, name: "soc", values: Float64Array.of(1, 2, 3, 4) }],
    };
    const raw = { ...gap(60), overlay };
    const { after, steps, overlay: moved } = treat(raw, list({ kind: "fillGaps", longest: 59 }));
    // 10 s of braking from 10 m/s, 5 s at rest, 20 s of pulling away to 20 m/s: 35 s for 60.
    expect([...after.time]).toEqual([0, 1, 2, 3, 13, 18, 38, 39, 40]);
    expect([...after.speed]).toEqual([10, 10, 10, 10, 0, 0, 20, 20, 20]);
    expect(steps[0]?.facts).toMatchObject({ filled: 0, takenOut: 1, timeTakenOut: 60 });
    expect([...(moved?.time ?? [])]).toEqual([0, 3, 39]);
  });

  it("tells open gaps when it is left out", () => {
    expect(treat(gap(60), []).openGaps).toEqual([{ start: 3, end: 63 }]);
  });

  it("covers the distance of a tunnel", () => {
    const smoothed = treat(messy, list({ kind: "smooth" }));
    const filled = treat(messy, list({ kind: "smooth" }, { kind: "fillGaps" }));
    expect(smoothed.openGaps.length).toBe(4);
    expect(filled.openGaps).toEqual([]);
    expect(filled.figuresAfter.duration).toBe(smoothed.figuresAfter.duration);
  });
});

describe("limits and rest", () => {
  it("limits acceleration both ways and only ever lowers speeds", () => {
    fc.assert(
      fc.property(anyDrive, (raw) => {
        const treatments = list({ kind: "limitAcceleration", acceleration: 1.5, deceleration: 2.5 });
        const { after, figuresAfter } = treat(raw, treatments);
        expect(figuresAfter.maxAcceleration).toBeLessThanOrEqual(1.5 + 1e-9);
        expect(figuresAfter.maxDeceleration).toBeLessThanOrEqual(2.5 + 1e-9);
        expect(after.speed.every((v, i) => v <= at(raw.speed, i))).toBe(true);
      }),
    );
  });

  it("sets slow stretches to rest where it is told to", () => {
    const raw = speeds([
      [0, 0.1],
      [1, 0.2],
      [2, 5],
      [3, 0.1],
      [4, 5],
      [5, 0.2],
      [6, 0.1],
      [7, 0.2],
      [8, 0],
    ]);
    const rest = (input: Partial<Extract<TreatmentInput, { kind: "setToRest" }>>) => [
      ...treat(raw, list({ kind: "setToRest", below: 0.3, atLeast: 1, ...input })).after.speed,
    ];
    expect(rest({})).toEqual([0, 0, 5, 0.1, 5, 0, 0, 0, 0]);
    expect(rest({ atLeast: 2 })).toEqual([0.1, 0.2, 5, 0.1, 5, 0, 0, 0, 0]);
    expect(rest({ end: 4 })).toEqual([0, 0, 5, 0.1, 5, 0.2, 0.1, 0.2, 0]);
  });

  it("puts ramps at the ends, and the overlay stays with its moment", () => {
    const overlay = {
      time: Float64Array.of(0, 1),
      channels: [{ id: "soc" as const, name: "soc", values: Float64Array.of(0.5, 0.6) }],
    };
    const treated = treat(
      speeds(
        [
          [0, 10],
          [1, 5],
        ],
        overlay,
      ),
      list({ kind: "startAndEndAtRest", acceleration: 2 }),
    );
    expect([...treated.after.time]).toEqual([0, 5, 6, 8.5]);
    expect([...treated.after.speed]).toEqual([0, 10, 5, 0]);
    expect([...(treated.overlay?.time ?? [])]).toEqual([5, 6]);
  });

  it("limits or takes away the grade", () => {
    const raw = speeds([
      [0, 1, 0.3],
      [1, 1, -0.3],
      [2, 1, 0.01],
    ]);
    expect([...treat(raw, list({ kind: "limitGrade", steepest: 0.1 })).after.grade]).toEqual([
      0.1, -0.1, 0.01,
    ]);
    expect([...treat(raw, list({ kind: "level" })).after.grade]).toEqual([0, 0, 0]);
  });
});

describe("smoothing a recorded speed", () => {
  // A drive by straight lines with noise of 0.3 m/s, from a repeatable source.
  let state = 7;
  const noise = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 2 ** 32 - 0.5) * Math.sqrt(12) * 0.3;
  };
  const truth = Array.from({ length: 300 }, (_, t) => Math.max(0, 12 * Math.sin(t / 20)));
  const raw = speeds(truth.map((v, t) => [t, v === 0 ? 0 : Math.max(0, v + noise()), 0.02]));

  it("takes the noise and keeps distance and standing", () => {
    const { after, steps, figuresAfter, figuresBefore } = treat(raw, list({ kind: "smooth" }));
    const miss = (list: Float64Array): number =>
      Math.sqrt(truth.reduce((sum, v, i) => sum + (v - at(list, i)) ** 2, 0) / truth.length);
    expect(miss(after.speed)).toBeLessThan(0.8 * miss(raw.speed));
    expect(Math.abs(figuresAfter.distance / figuresBefore.distance - 1)).toBeLessThan(0.005);
    expect(figuresAfter.restTime).toBeGreaterThanOrEqual(figuresBefore.restTime);
    expect(steps[0]?.facts.jitter).toBeGreaterThan(0.1);
    expect(steps[0]?.facts.jitter).toBeLessThan(0.5);
    expect([...after.grade]).toEqual([...raw.grade]);
  });

  it("sets a spike aside", () => {
    const spiked = { ...raw, speed: raw.speed.map((v, i) => (i === 30 ? 80 : v)) };
    const { after, steps } = treat(spiked, list({ kind: "smooth" }));
    expect(Math.abs(at(after.speed, 30) - at(truth, 30))).toBeLessThan(1.5);
    expect(steps[0]?.facts.speedsSetAside).toBeGreaterThanOrEqual(1);
  });
});

it("every kind of treatment is tried above", () => {
  const kinds = treatmentSchema.options.map((option) => option.shape.kind.value).sort();
  expect(kinds).toEqual([
    "crop",
    "fillGaps",
    "level",
    "limitAcceleration",
    "limitGrade",
    "resample",
    "setToRest",
    "smooth",
    "startAndEndAtRest",
  ]);
});
