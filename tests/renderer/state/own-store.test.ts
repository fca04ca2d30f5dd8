import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CycleKeeper, type ObjectStore } from "../../../renderer/state/own-store.ts";
import { overlayOf } from "../../../renderer/state/recorded-overlay.ts";
import { noted, recordingOf } from "../../../renderer/state/recordings.ts";
import { traceOf } from "../../support/random.ts";

/** A database: what is in it is a copy, as structured clones are. */
const memory = () => ({
  values: new Map<string, unknown>(),
  shut: false,
  async read() {
    if (this.shut) throw new Error("no");
    return structuredClone(this.values);
  },
  async change(put: ReadonlyMap<string, unknown>, gone: readonly string[]) {
    if (this.shut) throw new Error("full");
    for (const key of gone) this.values.delete(key);
    for (const [key, value] of structuredClone(put)) this.values.set(key, value);
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

let made = 0;
const newKey = (): string => {
  made += 1;
  return `key-${made}`;
};

/** A window on a store. */
const windowOn = (store: ObjectStore): CycleKeeper => new CycleKeeper(store, newKey);

const found = async (store: ObjectStore) => windowOn(store).restore();
const titles = async (store: ObjectStore) => (await found(store)).own.map(({ title }) => title);

describe("own cycles on this device", () => {
  it("come back with recording, treatments and what was recorded beside", async () => {
    const store = memory();
    const own = [noted({ trace, recording }), traceOf("driven-1", [0, 1], [0, 3])];
    expect(await windowOn(store).keep({ own, chosen: "mine" })).toBe(true);
    const kept = await found(store);
    expect(kept).toEqual({ own, chosen: "mine", broken: false });
    const [first, second] = kept.own;
    expect(first && recordingOf(first)).toEqual(recording);
    expect(second && recordingOf(second)).toBeNull();
  });

  it("are written once, and one that changes keeps its place", async () => {
    const store = memory();
    const keeper = windowOn(store);
    const [a, b, c] = ["a", "b", "c"].map((id) => traceOf(id, [0, 1], [0, 1]));
    if (!a || !b || !c) throw new Error("no cycles");
    await keeper.keep({ own: [a, b, c], chosen: null });
    const before = new Map(store.values);
    await keeper.keep({ own: [a, { ...b, title: "B" }, c], chosen: "c" });
    const puts = [...store.values].filter(([key, value]) => before.get(key) !== value);
    expect(puts).toHaveLength(2);
    expect(await titles(store)).toEqual(["a", "B", "c"]);
    expect((await found(store)).chosen).toBe("c");
  });

  it("of a store that refuses are told, and tried again", async () => {
    const store = memory();
    const keeper = windowOn(store);
    const other = traceOf("other", [0, 1], [0, 1]);
    await keeper.keep({ own: [trace], chosen: null });
    store.shut = true;
    expect(await keeper.keep({ own: [other], chosen: "other" })).toBe(false);
    expect(await keeper.keep({ own: [other], chosen: "other" })).toBe(false);
    store.shut = false;
    expect(await found(store)).toEqual({ own: [trace], chosen: null, broken: false });
    expect(await keeper.keep({ own: [other], chosen: "other" })).toBe(true);
    expect(await found(store)).toEqual({ own: [other], chosen: "other", broken: false });
  });

  it("are not there in a new store, nor where it cannot be read", async () => {
    expect(await found(memory())).toEqual({ own: [], chosen: null, broken: false });
    const store = memory();
    store.shut = true;
    expect(await found(store)).toEqual({ own: [], chosen: null, broken: true });
  });

  it("that stood together are taken over, once", async () => {
    const store = memory();
    const one = traceOf("one", [0, 1], [0, 1]);
    const cycles = [
      { trace, recording },
      { trace: one, recording: null },
    ];
    store.values.set("cycles", { version: 1, chosen: "one", cycles });
    const keeper = windowOn(store);
    expect(await keeper.restore()).toEqual({ own: [trace, one], chosen: "one", broken: false });
    expect(store.values.has("cycles")).toBe(false);
    await keeper.keep({ own: [one], chosen: null });
    expect(await found(store)).toEqual({ own: [one], chosen: null, broken: false });
  });

  it.each([
    ["no object", 3],
    ["no place in the list", { trace, recording: null }],
    [
      "lists of different lengths",
      { order: 1, trace: { ...trace, speed: Float64Array.of(1) }, recording: null },
    ],
    ["plain lists", { order: 1, trace: { ...trace, time: [0, 1, 2] }, recording: null }],
    ["a broken recording", { order: 1, trace, recording: { ...recording, raw: {} } }],
  ])("with %s are left alone, the others taken", async (_, value) => {
    const store = memory();
    const good = traceOf("good", [0, 1], [0, 1]);
    await windowOn(store).keep({ own: [good], chosen: null });
    store.values.set("odd", value);
    const keeper = windowOn(store);
    expect(await keeper.restore()).toEqual({ own: [good], chosen: null, broken: true });
    await keeper.keep({ own: [], chosen: null });
    expect(store.values.has("odd")).toBe(true);
  });
});

describe("own cycles of several windows", () => {
  it("are all there, whichever window saves last", async () => {
    const store = memory();
    const start = windowOn(store);
    const [a, b] = [traceOf("a", [0, 1], [0, 1]), traceOf("b", [0, 1], [0, 1])];
    await start.keep({ own: [a, b], chosen: null });
    const [one, two] = [windowOn(store), windowOn(store)];
    const [ofOne, ofTwo] = [(await one.restore()).own, (await two.restore()).own];
    const driven = (title: string) => ({ ...traceOf("driven-1", [0, 1], [0, 1]), title });
    // One deletes a; the other, which still shows it, keeps a drive of the same id as one's.
    await one.keep({ own: [...ofOne.slice(1), driven("first")], chosen: null });
    await two.keep({ own: [...ofTwo, driven("second")], chosen: "driven-1" });
    const { own, chosen } = await found(store);
    expect(own.map(({ id, title }) => [id, title])).toEqual([
      ["b", "b"],
      ["driven-1", "first"],
      ["driven-2", "second"],
    ]);
    expect(chosen).toBe("driven-2");
  });

  it("that both changed are both there; one changed here and deleted there stays", async () => {
    const store = memory();
    const [a, b] = [traceOf("a", [0, 1], [0, 1]), traceOf("b", [0, 1], [0, 1])];
    await windowOn(store).keep({ own: [a, b], chosen: null });
    const [one, two] = [windowOn(store), windowOn(store)];
    await one.restore();
    const shown = (await two.restore()).own[1];
    if (!shown) throw new Error("not kept");
    await one.keep({ own: [{ ...a, title: "A of one" }], chosen: null });
    await two.keep({
      own: [
        { ...a, title: "A of two" },
        { ...shown, title: "B" },
      ],
      chosen: null,
    });
    expect((await titles(store)).toSorted()).toEqual(["A of one", "A of two", "B"]);
  });

  it("lose nothing and bring back nothing deleted, in any order of edits (model: a set of versions)", async () => {
    const edit = fc.record({
      window: fc.nat(2),
      what: fc.constantFrom("add", "change", "delete", "reopen" as const),
      which: fc.nat(5),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { maxLength: 25 }), async (edits) => {
        const store = memory();
        const open = async () => {
          const keeper = windowOn(store);
          return { keeper, own: [...(await keeper.restore()).own] };
        };
        const windows = [await open(), await open(), await open()];
        const right = new Set<string>();
        let count = 0;
        for (const { window, what, which } of edits) {
          const one = windows[window];
          const old = one?.own[which];
          if (!one) throw new Error("no window");
          count += 1;
          const title = `version ${count}`;
          if (what === "reopen") {
            windows[window] = await open();
            continue;
          }
          if (what === "add") one.own.push({ ...traceOf(`driven-${one.own.length}`, [0, 1], [0, 1]), title });
          else if (!old) continue;
          else if (what === "delete") one.own.splice(which, 1);
          else one.own[which] = { ...old, title };
          if (what !== "add" && old) right.delete(old.title);
          if (what !== "delete") right.add(title);
          await one.keeper.keep({ own: one.own, chosen: null });
        }
        const { own, broken } = await found(store);
        expect(broken).toBe(false);
        expect(own.map(({ title }) => title).toSorted()).toEqual([...right].toSorted());
        expect(new Set(own.map(({ id }) => id)).size).toBe(own.length);
      }),
      { numRuns: 60 },
    );
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
