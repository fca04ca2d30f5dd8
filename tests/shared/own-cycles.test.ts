import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCycleFile, readCycleFile, writeCycleFile } from "../../shared/cycle-file.ts";
import { entryOf, type OwnCycle, ownCycleOf, ownCycleSchema } from "../../shared/own-cycles.ts";
import { faultsOf } from "../cycles/faults-of.ts";

const value = fc.double({ min: -60, max: 60, noNaN: true }).map((x) => (Object.is(x, -0) ? 0 : x));
const hole = fc.oneof(value, fc.constant(Number.NaN));
const list = (of: fc.Arbitrary<number>, count: number) =>
  fc.array(of, { minLength: count, maxLength: count }).map((all) => Float64Array.from(all));

/** An own cycle with everything that one can have. */
const anyOwn: fc.Arbitrary<OwnCycle> = fc.integer({ min: 2, max: 12 }).chain((count) =>
  fc
    .record({
      steps: fc.array(fc.double({ min: 0.01, max: 10, noNaN: true }), { minLength: count, maxLength: count }),
      speed: list(value, count),
      grade: list(value, count),
      soc: list(hole, count),
      recorded: fc.boolean(),
      places: fc.boolean(),
    })
    .map(({ steps, speed, grade, soc, recorded, places }): OwnCycle => {
      const time = new Float64Array(count);
      for (let i = 1; i < count; i += 1) time[i] = (time[i - 1] ?? 0) + (steps[i] ?? 1);
      const about = { id: "mine", title: "Mine", source: "mine.csv" };
      const trace = {
        ...about,
        time,
        speed,
        grade,
        phases: [{ id: "a", title: "A", start: 0, end: 1 }],
        soaks: [],
        treatment: ["Done."],
      };
      const overlay = { time, channels: [{ id: "soc" as const, name: "soc", values: soc }] };
      const base = { ...about, time, reading: ["Read."], overlay };
      const raw = places
        ? ({ kind: "positions", ...base, latitude: speed, longitude: grade, elevation: soc } as const)
        : ({ kind: "speeds", ...base, speed, grade } as const);
      return {
        trace,
        recording: recorded ? { raw, treatments: [{ kind: "fillGaps", longest: 300 }], overlay } : null,
      };
    }),
);

describe("an own cycle in a file", () => {
  it("comes back to the last bit, holes and all", () => {
    fc.assert(
      fc.property(anyOwn, (own) => {
        const entry: unknown = JSON.parse(JSON.stringify(entryOf(own)));
        expect(ownCycleOf(ownCycleSchema.parse(entry))).toEqual(own);
        expect(readCycleFile(writeCycleFile(own), "x.cycle.json")).toEqual(own);
      }),
    );
  });

  it("is told from a table of recorded values", () => {
    expect(isCycleFile('\uFEFF {"cycleVersion": 1}', "x")).toBe(true);
    expect(isCycleFile("time_s,speed_kmh\n0,0", "x.csv")).toBe(false);
    expect(isCycleFile("", "x.json")).toBe(true);
  });

  it("is refused with the field's path, the value and what would be right", () => {
    const good = JSON.parse(
      writeCycleFile({
        trace: {
          id: "a",
          title: "A",
          source: "",
          time: Float64Array.of(0, 1),
          speed: Float64Array.of(0, 1),
          grade: Float64Array.of(0, 0),
          phases: [],
          soaks: [],
          treatment: [],
        },
        recording: null,
      }),
    );
    const told = (change: object) =>
      faultsOf(() =>
        readCycleFile(JSON.stringify({ ...good, cycle: { ...good.cycle, ...change } }), "a.cycle.json"),
      )[0];
    expect(told({ time: [1, 2] })).toMatchObject({ where: "a.cycle.json: cycle.time[0]", accepted: "0" });
    expect(told({ speed: [1, "2"] })).toMatchObject({ where: "a.cycle.json: cycle.speed[1]", value: '"2"' });
    expect(told({ extra: 1 })?.where).toBe("a.cycle.json: cycle.extra");
    expect(faultsOf(() => readCycleFile("{", "a.cycle.json"))[0]?.where).toContain("line 1");
  });
});
