import { describe, expect, it } from "vitest";
import {
  AUTOSAVE_KEY,
  AUTOSAVE_VERSION,
  keepBench,
  restoreBench,
  type TextStore,
} from "../../../renderer/state/autosave.ts";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { keepPreferences, readPreferences } from "../../../renderer/state/preferences.ts";
import { benchOfProject, projectWith } from "../../../renderer/state/project-bench.ts";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { InputError } from "../../../shared/errors.ts";
import { newProject, readProject, writeProject } from "../../../shared/project.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const memory = (): TextStore & { texts: Map<string, string> } => {
  const texts = new Map<string, string>();
  return {
    texts,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
  };
};
const v = vehicleById("van");
const bench = firstBench("van", v);

describe("autosave", () => {
  it("gives back what was kept, to the last bit", () => {
    for (const situation of SITUATIONS) {
      const store = memory();
      const state = loadSituation(bench, v, situation);
      expect(keepBench(store, state)).toBe(true);
      expect(restoreBench(store)).toEqual({ kind: "bench", bench: state });
    }
  });

  it("finds nothing in a new store", () => expect(restoreBench(memory())).toEqual({ kind: "nothing" }));

  const kept = (change: (content: { version: unknown; bench: Record<string, unknown> }) => unknown): string =>
    JSON.stringify(change(JSON.parse(JSON.stringify({ version: AUTOSAVE_VERSION, bench }))));

  it.each([
    ["broken text", "{"],
    ["no object", "3"],
    ["a later version", kept((c) => ({ ...c, version: 2 }))],
    ["an unknown vehicle", kept((c) => ({ ...c, bench: { ...c.bench, vehicle: "lorry" } }))],
    ["a missing part", kept((c) => ({ ...c, bench: { ...c.bench, speeds: undefined } }))],
    ["a number that is none", kept((c) => ({ ...c, bench: { ...c.bench, engineTorque: "100" } }))],
    [
      "two followers",
      kept((c) => ({
        ...c,
        bench: { ...c.bench, roles: { sun: "follow", carrier: "follow", ring: "drive" } },
      })),
    ],
    [
      "speeds against the teeth",
      kept((c) => ({ ...c, bench: { ...c.bench, speeds: { sun: 1, carrier: 100, ring: 100 } } })),
    ],
    [
      "speeds beyond a limit",
      kept((c) => ({ ...c, bench: { ...c.bench, speeds: { sun: 5000, carrier: 5000, ring: 5000 } } })),
    ],
  ])("ignores %s with its reason", (_, text) => {
    const store = memory();
    store.setItem(AUTOSAVE_KEY, text);
    const found = restoreBench(store);
    expect(found.kind).toBe("ignored");
    if (found.kind === "ignored") expect(found.reason).not.toBe("");
  });

  it("lives with a store that refuses", () => {
    const shut: TextStore = {
      getItem: () => {
        throw new Error("denied");
      },
      setItem: () => {
        throw new Error("full");
      },
    };
    expect(keepBench(shut, bench)).toBe(false);
    expect(restoreBench(shut)).toEqual({ kind: "nothing" });
  });
});

describe("preferences", () => {
  it("come back, broken ones as their defaults", () => {
    const store = memory();
    keepPreferences(store, { ...readPreferences(store), theme: "dark", roadUnit: "mph" });
    expect(readPreferences(store)).toMatchObject({ theme: "dark", roadUnit: "mph", shaftUnit: "rpm" });
    store.setItem("trishaft.preferences", '{"theme":"purple","roadUnit":"mph","slowing":-4}');
    expect(readPreferences(store)).toMatchObject({ theme: "system", roadUnit: "mph", slowing: 120 });
    store.setItem("trishaft.preferences", "[");
    expect(readPreferences(store).theme).toBe("system");
  });
});

describe("a project's bench", () => {
  const project = newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" });

  it("comes back from the file's text for every situation of every vehicle", () => {
    for (const { id } of PRESETS) {
      for (const situation of SITUATIONS) {
        const state = loadSituation(firstBench(id, vehicleById(id)), vehicleById(id), situation);
        const text = writeProject(projectWith(project, state));
        expect(benchOfProject(readProject(text, "test"))).toEqual({
          ...state,
          touched: ["sun", "carrier", "ring"],
        });
      }
    }
  });

  it("is refused with a reason when no bench can stand so", () => {
    const fast = { mode: "drive", speed: 4000 } as const;
    const wrong = { ...project, bench: { ...project.bench, carrier: fast } };
    expect(() => benchOfProject(wrong)).toThrow(InputError);
    const own = { ...project, vehicle: { kind: "own", title: "Mine", parameters: {} } } as const;
    expect(() => benchOfProject(own)).toThrow(/Mine/);
  });
});
