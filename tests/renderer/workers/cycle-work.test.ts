import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { traceCsv } from "../../../cycles/export.ts";
import { choiceOf, takenNow, withChoice } from "../../../renderer/cycles/column-choices.ts";
import type { ReadChoices, ReadFile } from "../../../renderer/workers/cycle-contract.ts";
import { cycleWork } from "../../../renderer/workers/cycle-work.ts";
import { writeCycleFile } from "../../../shared/cycle-file.ts";
import { kmhToMps, mphToMps } from "../../../shared/units.ts";

type Recording = Extract<ReadFile, { kind: "recording" }>;

function readRecording(text: string, name: string, choices: ReadChoices = {}): Recording {
  const answer = cycleWork.read(text, name, choices);
  if (!answer.ok || answer.value.kind !== "recording") throw new Error("no recording");
  return answer.value;
}

const LOG = "clock;v;rpm;soc_percent;current;slope %\n0;0;0;60;0;0\n1;36;900;59;-20;1\n2;0;;58;20;2\n";

describe("a table whose columns are not clear", () => {
  const read = readRecording(LOG, "log.csv");

  it("is shown with what is missing and what each guess would take", () => {
    expect(read.imported).toBeNull();
    expect(read.faults.length).toBeGreaterThan(0);
    const draft = { read, choices: {} };
    expect(takenNow(draft, "time")).toMatchObject({ column: 0, unit: "", columnHow: null });
    expect(takenNow(draft, "speed")).toMatchObject({ column: 2, unit: "", columnHow: "from the header" });
    expect(takenNow(draft, "grade")).toMatchObject({ column: 6, unit: "%", optional: true });
  });

  it("is read as soon as column and unit are chosen, and otherwise in another unit", () => {
    let columns = withChoice(undefined, "time", { column: 1 });
    columns = withChoice(columns, "speed", { column: 2, unit: "km/h" });
    const inKmh = readRecording(LOG, "log.csv", { columns });
    expect(inKmh.imported?.raw).toMatchObject({ speed: Float64Array.of(0, 10, 0) });
    const draft = { read: inKmh, choices: { columns } };
    expect(takenNow(draft, "speed")).toMatchObject({ column: 2, unit: "km/h", unitHow: "chosen" });
    expect(takenNow(draft, "engineSpeed")).toMatchObject({ column: 3, unit: "rev/min" });
    expect(takenNow(draft, "batteryCurrent")).toMatchObject({ unit: "A", unitHow: "assumed" });
    columns = withChoice(columns, "speed", { column: 2, unit: "mph" });
    const { raw } = readRecording(LOG, "log.csv", { columns }).imported ?? {};
    expect(raw?.kind === "speeds" && raw.speed[1]).toBeCloseTo(mphToMps(36), 12);
    expect(kmhToMps(36)).toBe(10);
  });

  it("leaves a column alone when told so, and keeps the other choices", () => {
    let columns = withChoice(undefined, "time", { column: 1 });
    columns = withChoice(columns, "speed", { column: 2, unit: "km/h" });
    columns = withChoice(columns, "engineSpeed", "none");
    columns = withChoice(columns, "soc", { column: 4, unit: "%" });
    expect(choiceOf(columns, "engineSpeed")).toBe("none");
    const read = readRecording(LOG, "log.csv", { columns });
    expect(read.imported?.raw.overlay?.channels.map(({ id }) => id)).toEqual(["soc", "batteryCurrent"]);
    expect(takenNow({ read, choices: { columns } }, "engineSpeed").column).toBe(0);
  });
});

describe("other files", () => {
  it("are refused with faults, not with an error, when they hold no drive", () => {
    for (const [text, name] of [
      ["", "empty.csv"],
      ["<gpx><wpt/></gpx>", "x.gpx"],
      ["{", "x.json"],
      ['{"cycleVersion": 2}', "x.cycle.json"],
      ["a\u0000b", "x.csv"],
    ] as const) {
      const answer = cycleWork.read(text, name, {});
      expect(answer.ok, name).toBe(false);
      if (!answer.ok) for (const fault of answer.faults) expect(fault.where, name).toContain(name);
    }
  });

  it("come back as they were written: a table as CSV, a cycle as its own file", () => {
    const trace = cycleById("hill-down");
    const csv = readRecording([...traceCsv(trace)].join(""), "hill.csv");
    expect(csv.imported?.raw).toMatchObject({ time: trace.time, speed: trace.speed, grade: trace.grade });
    const file = cycleWork.read(writeCycleFile({ trace, recording: null }), "hill.cycle.json", {});
    expect(file).toEqual({ ok: true, value: { kind: "own", own: { trace, recording: null } } });
  });
});

describe("the invented recording, read and treated as usual", () => {
  const { imported, usual } = readRecording(cycleWork.invented(), "invented.gpx");
  if (!imported) throw new Error("not read");
  const answer = cycleWork.treat(imported.raw, usual);
  if (!answer.ok) throw new Error("not treated");
  const { before, after, treated, row } = answer.value;

  it("has the 20 km that were driven, the stops, and nothing that no vehicle does", () => {
    expect(Math.abs(after.distance / 20_000 - 1)).toBeLessThan(0.005);
    expect(before.distance).toBeGreaterThan(after.distance * 1.1);
    expect(after.maxAcceleration).toBeLessThan(4);
    expect(before.maxAcceleration).toBeGreaterThan(100);
    expect(after.stops).toBe(row.statistics.stops);
    expect(treated.openGaps).toEqual([]);
  });

  it("can be drawn over itself as it was: on one clock, every recorded place there", () => {
    const { time, speed, grade } = treated.beforeMoved;
    expect(time.length).toBe(imported.raw.time.length);
    expect([speed.length, grade.length]).toEqual([time.length, time.length]);
    const shift = (time[0] ?? 0) - (imported.raw.time[0] ?? 0);
    expect(shift).toBeGreaterThanOrEqual(0);
    time.forEach((t, i) => {
      expect(t - shift).toBeCloseTo(imported.raw.time[i] ?? Number.NaN, 6);
    });
  });

  it("says what is wrong with a treatment that does not fit, and does nothing", () => {
    const refused = cycleWork.treat(imported.raw, [...usual, { kind: "crop", start: 5000, end: 6000 }]);
    expect(refused.ok).toBe(false);
    if (!refused.ok) expect(refused.faults[0]?.where).toContain("crop");
  });
});
