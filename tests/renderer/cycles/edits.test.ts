import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { fullLine } from "../../../cycles/manoeuvres/catalogue.ts";
import { dropShown, keepShown, keepStretch, rename, setLine } from "../../../renderer/cycles/edit.ts";
import {
  canRedo,
  canUndo,
  change,
  cycleShown,
  editedNow,
  kindShown,
  lineOf,
  look,
  redoCycles,
  selected,
  undoCycles,
} from "../../../renderer/cycles/state.ts";
import { freshCycleId } from "../../../renderer/state/cycle-ids.ts";
import { noted, recordingOf } from "../../../renderer/state/recordings.ts";
import { cycleId, ownCycles } from "../../../renderer/state/road.ts";
import { traceOf } from "../../support/random.ts";

const driven = (id: string) => traceOf(id, [0, 5, 9.5], [0, 8, 0]);

beforeEach(() => {
  while (canUndo.value) undoCycles();
  ownCycles.value = [];
  look("udds");
});

describe("edits of the cycles", () => {
  it("keep a manoeuvre as it is set, under a free id, and undo takes it away again", () => {
    look("cruise");
    setLine("cruise", "cruise:speed=60mph,grade=2%", null);
    expect(cycleShown.value?.title).toContain("60");
    const id = keepShown();
    expect(ownCycles.value.map((one) => one.id)).toEqual([id]);
    expect(selected.value).toBe(id);
    expect(kindShown.value).toBe("own");
    undoCycles();
    expect(ownCycles.value).toEqual([]);
    expect(lineOf("cruise")).toBe(fullLine("cruise:speed=60mph,grade=2%"));
    undoCycles();
    expect(lineOf("cruise")).toBe("cruise");
    redoCycles();
    redoCycles();
    expect(ownCycles.value.map((one) => one.id)).toEqual([id]);
    expect(canRedo.value).toBe(false);
  });

  it("never take away what was driven or opened elsewhere, however far they are undone", () => {
    look("cruise");
    keepShown();
    ownCycles.value = [...ownCycles.value, driven("driven-1")];
    look("launch");
    keepShown();
    while (canUndo.value) undoCycles();
    expect(ownCycles.value.map(({ id }) => id)).toEqual(["driven-1"]);
    while (canRedo.value) redoCycles();
    expect(ownCycles.value.map(({ id }) => id).toSorted()).toEqual(["cruise-2", "driven-1", "launch-2"]);
  });

  it("remove an own cycle, let go of it on Road, and bring it back", () => {
    ownCycles.value = [driven("driven-1")];
    look("driven-1");
    cycleId.value = "driven-1";
    dropShown();
    expect(ownCycles.value).toEqual([]);
    expect(cycleId.value).toBe("udds");
    undoCycles();
    expect(ownCycles.value.map(({ id }) => id)).toEqual(["driven-1"]);
    expect(selected.value).toBe("driven-1");
  });

  it("rename with the recording, and cut a stretch of any cycle into an own one", async () => {
    const trace = driven("mine");
    const raw = {
      kind: "speeds",
      id: "mine",
      title: "mine",
      source: "mine.csv",
      time: trace.time,
      speed: trace.speed,
      grade: trace.grade,
      reading: [],
      overlay: null,
    } as const;
    ownCycles.value = [noted({ trace, recording: { raw, treatments: [], overlay: null } })];
    look("mine");
    rename("  Hill road ");
    const [now] = ownCycles.value;
    expect(now && recordingOf(now)?.raw.title).toBe("Hill road");
    look("udds");
    await keepStretch({ from: 100, to: 300 });
    expect(kindShown.value).toBe("own");
    expect(cycleShown.value?.time.at(-1)).toBe(200);
    expect(cycleShown.value?.treatment.at(-1)).toContain("100 to 300 s");
  });

  it("come back one by one, whatever was done", () => {
    const step = fc.constantFrom("cruise", "launch", "drop", "back-up");
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        while (canUndo.value) undoCycles();
        const states = [editedNow()];
        for (const one of steps) {
          const before = editedNow();
          if (one === "drop") {
            look(ownCycles.value[0]?.id ?? "udds");
            if (kindShown.value === "own") dropShown();
            else change({});
          } else {
            look(one);
            keepShown();
          }
          states.push(editedNow());
          expect(editedNow()).not.toBe(before);
        }
        for (const state of states.slice(0, -1).toReversed()) {
          undoCycles();
          expect(ownCycles.value.map(({ id }) => id)).toEqual(state.own.map(({ id }) => id));
        }
      }),
      { numRuns: 30 },
    );
  });

  it("give free ids, also beside the catalogue", () => {
    expect(freshCycleId("udds", [])).toBe("udds-2");
    expect(freshCycleId("mine", [])).toBe("mine");
    expect(freshCycleId("mine", [driven("mine"), driven("mine-2")])).toBe("mine-3");
  });
});
