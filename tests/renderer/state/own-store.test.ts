import { describe, expect, it } from "vitest";
import { keepCycles, type ObjectStore, restoreCycles } from "../../../renderer/state/own-store.ts";
import { overlayOf } from "../../../renderer/state/recorded-overlay.ts";
import { noted, recordingOf } from "../../../renderer/state/recordings.ts";
import { traceOf } from "../../support/random.ts";

/** A database: what is in it is a copy, as structured clones are. */
const memory = (): ObjectStore & { value: unknown } => ({
  value: undefined,
  async read() {
    return structuredClone(this.value);
  },
  async write(value) {
    this.value = structuredClone(value);
  },
});

const trace = traceOf("mine", [0, 1, 2], [0, 5, 0]);
const overlay = {
  time: Float64Array.of(0, 1, 2),
  channels: [{ id: "soc" as const, name: "soc", values: Float64Array.of(0.6, Number.NaN, 0.5) }],
};
const recording = {
  raw: {
    kind: "speeds" as const,
    id: "mine",
    title: "mine",
    source: "mine.csv",
    time: trace.time,
    speed: trace.speed,
    grade: trace.grade,
    reading: ["Read from mine.csv."],
    overlay,
  },
  treatments: [{ kind: "level" as const }],
  overlay,
};

describe("own cycles on this device", () => {
  it("come back with recording, treatments and what was recorded beside", async () => {
    const store = memory();
    const own = [noted({ trace, recording }), traceOf("driven-1", [0, 1], [0, 3])];
    expect(await keepCycles(store, { own, chosen: "mine" })).toBe(true);
    const kept = await restoreCycles(store);
    if (typeof kept === "string") throw new Error(kept);
    expect(kept.chosen).toBe("mine");
    expect(kept.own).toEqual(own);
    const [first, second] = kept.own;
    expect(first && recordingOf(first)).toEqual(recording);
    expect(second && recordingOf(second)).toBeNull();
  });

  it("finds nothing in a new store, and says when a store refuses", async () => {
    expect(await restoreCycles(memory())).toBe("nothing");
    const shut: ObjectStore = {
      read: () => Promise.reject(new Error("no")),
      write: () => Promise.reject(new Error("full")),
    };
    expect(await keepCycles(shut, { own: [trace], chosen: null })).toBe(false);
    expect(await restoreCycles(shut)).toBe("broken");
  });

  it.each([
    ["another version", { version: 9, cycles: [] }],
    ["no list", { version: 1, cycles: 3 }],
    ["a text", "x"],
    [
      "lists of different lengths",
      {
        version: 1,
        chosen: null,
        cycles: [{ trace: { ...trace, speed: Float64Array.of(1) }, recording: null }],
      },
    ],
    [
      "plain lists",
      { version: 1, chosen: null, cycles: [{ trace: { ...trace, time: [0, 1, 2] }, recording: null }] },
    ],
    [
      "a broken recording",
      { version: 1, chosen: null, cycles: [{ trace, recording: { ...recording, raw: {} } }] },
    ],
  ])("does not take %s", async (_, value) => {
    const store = memory();
    store.value = value;
    expect(await restoreCycles(store)).toBe("broken");
  });
});

describe("a recording laid over a run", () => {
  it("goes to the channels of the log that mean the same", () => {
    const { name, channels, time } = overlayOf("mine", {
      time: overlay.time,
      channels: [
        ...overlay.channels,
        { id: "vehicleSpeed", name: "speed", values: Float64Array.of(1, 2, 3) },
        { id: "engineSpeed", name: "rpm", values: Float64Array.of(0, 100, 0) },
      ],
    });
    expect(name).toBe("mine");
    expect(time).toBe(overlay.time);
    expect(Object.keys(channels).toSorted()).toEqual(["engineSpeed", "soc", "speed"]);
  });
});
