import { beforeEach, describe, expect, it } from "vitest";
import { emptyHistory, HISTORY_LENGTH, recorded, redone, undone } from "../../../renderer/state/history.ts";
import {
  bench,
  canRedo,
  canUndo,
  endGesture,
  loadById,
  redo,
  resetStore,
  setEngineTorque,
  setSpeed,
  situation,
  stopped,
  undo,
} from "../../../renderer/state/store.ts";

beforeEach(resetStore);

describe("history", () => {
  it("goes back and forth", () => {
    let history = recorded(emptyHistory<number>(), 1, null);
    history = recorded(history, 2, null);
    const back = undone(history, 3);
    expect(back?.state).toBe(2);
    expect(redone(back?.history ?? history, 2)?.state).toBe(3);
  });

  it("keeps a bounded number of steps", () => {
    let history = emptyHistory<number>();
    for (let i = 0; i < HISTORY_LENGTH + 20; i += 1) history = recorded(history, i, null);
    expect(history.past).toHaveLength(HISTORY_LENGTH);
    expect(history.past[0]).toBe(20);
  });

  it("has nothing before the first edit", () => expect(undone(emptyHistory<number>(), 1)).toBeNull());
});

describe("undo in the store", () => {
  it("counts a drag as one step, however many moves", () => {
    const before = bench.value;
    for (let i = 0; i < 30; i += 1) setSpeed("carrier", 250 - i, "drag:carrier");
    endGesture();
    for (let i = 0; i < 5; i += 1) setEngineTorque(50 + i, "drag:engine-torque");
    endGesture();
    undo();
    expect(bench.value.engineTorque).toBe(before.engineTorque);
    expect(bench.value.speeds.carrier).toBeCloseTo(221, 9);
    undo();
    expect(bench.value).toEqual(before);
    expect(canUndo.value).toBe(false);
    redo();
    redo();
    expect(bench.value.engineTorque).toBe(54);
    expect(canRedo.value).toBe(false);
  });

  it("goes back over ten thousand edits to the first state, and on again", () => {
    const before = bench.value;
    const edits = 10_000;
    for (let i = 0; i < edits; i += 1) setEngineTorque(10 + (i % 97), null);
    const last = bench.value;
    for (let i = 0; i < edits; i += 1) undo();
    expect(canUndo.value).toBe(false);
    expect(bench.value).toEqual(before);
    for (let i = 0; i < edits; i += 1) redo();
    expect(bench.value).toEqual(last);
  });

  it("counts two drags of the same shaft as two", () => {
    setSpeed("carrier", 240, "drag:carrier");
    endGesture();
    setSpeed("carrier", 230, "drag:carrier");
    undo();
    expect(bench.value.speeds.carrier).toBe(240);
  });

  it("forgets the future at a new edit", () => {
    loadById("one-to-one");
    undo();
    loadById("backing-up");
    expect(canRedo.value).toBe(false);
    expect(situation.value?.id).toBe("backing-up");
  });

  it("clears what stopped the line", () => {
    setSpeed("carrier", -100);
    expect(stopped.value).toEqual({ shaft: "carrier", end: "least" });
    undo();
    expect(stopped.value).toBeNull();
  });
});
