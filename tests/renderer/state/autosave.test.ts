import { describe, expect, it } from "vitest";
import {
  AUTOSAVE_KEY,
  keepProject,
  restoreProject,
  type TextStore,
} from "../../../renderer/state/autosave.ts";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { keepPreferences, readPreferences } from "../../../renderer/state/preferences.ts";
import { benchOfProject, projectWith } from "../../../renderer/state/project-bench.ts";
import { readBench } from "../../../renderer/state/saved-bench.ts";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { InputError } from "../../../shared/errors.ts";
import { newProject, readProject, writeProject } from "../../../shared/project.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";

const memory = (): TextStore & { texts: Map<string, string> } => {
  const texts = new Map<string, string>();
  return {
    texts,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
  };
};
const project = newProject({ kind: "preset", id: "van" }, { kind: "catalogue", line: "us06" });

describe("autosave", () => {
  it("gives back what was kept, to the last bit", () => {
    const v = vehicleById("van");
    for (const situation of SITUATIONS) {
      const store = memory();
      const state = projectWith(project, loadSituation(firstBench("van", v), v, situation), []);
      expect(keepProject(store, state)).toBe(true);
      expect(restoreProject(store)).toEqual({ kind: "project", project: state });
    }
  });

  it("finds nothing in a new store", () => expect(restoreProject(memory())).toEqual({ kind: "nothing" }));

  it.each([
    ["broken text", "{"],
    ["no object", "3"],
    ["a later version", JSON.stringify({ ...project, schemaVersion: 99 })],
    ["a missing part", JSON.stringify({ ...project, vehicle: undefined })],
    [
      "a number that is none",
      JSON.stringify({ ...project, bench: { ...project.bench, engineTorque: "100" } }),
    ],
  ])("ignores %s with its reason", (_, text) => {
    const store = memory();
    store.setItem(AUTOSAVE_KEY, text);
    const found = restoreProject(store);
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
    expect(keepProject(shut, project)).toBe(false);
    expect(restoreProject(shut)).toEqual({ kind: "nothing" });
  });
});

describe("a kept bench", () => {
  const state = firstBench("van", vehicleById("van"));
  it.each([
    ["an unknown vehicle", { ...state, vehicle: "lorry" }],
    ["a missing part", { ...state, speeds: undefined }],
    ["two followers", { ...state, roles: { sun: "follow", carrier: "follow", ring: "drive" } }],
    ["speeds against the teeth", { ...state, speeds: { sun: 1, carrier: 100, ring: 100 } }],
    ["speeds beyond a limit", { ...state, speeds: { sun: 5000, carrier: 5000, ring: 5000 } }],
  ])("with %s is refused with its reason", (_, wrong) => {
    const found = readBench(wrong);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.reason).not.toBe("");
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
  it("comes back from the file's text for every situation of every vehicle", () => {
    for (const { id } of PRESETS) {
      for (const situation of SITUATIONS) {
        const state = loadSituation(firstBench(id, vehicleById(id)), vehicleById(id), situation);
        const text = writeProject(projectWith(project, state, []));
        expect(benchOfProject(readProject(text, "test"))).toEqual({
          bench: { ...state, touched: ["sun", "carrier", "ring"] },
          own: [],
        });
      }
    }
  });

  it("keeps a torque of the output machine that no situation has", () => {
    const state = { ...firstBench("van", vehicleById("van")), outputTorque: 12.5 };
    const read = benchOfProject(readProject(writeProject(projectWith(project, state, [])), "test"));
    expect(read.bench.outputTorque).toBe(12.5);
  });

  it("brings its own vehicle along, under an id that no preset has", () => {
    const own = readVehicle(
      { id: "mine", name: "Mine", gearSet: { sunTeeth: 30, ringTeeth: 78, planetTeeth: 24, planets: 3 } },
      "",
    );
    const state = firstBench("mine", own);
    const read = benchOfProject(readProject(writeProject(projectWith(project, state, [own])), "test"));
    expect(read.own).toEqual([own]);
    expect(read.bench.vehicle).toBe("mine");
    const clash = { ...project, vehicle: { kind: "own" as const, title: "Mine", parameters: {} } };
    expect(benchOfProject(clash).own[0]?.id).toBe("compact-2");
  });

  it("is refused with a reason when no bench can stand so", () => {
    const fast = { mode: "drive", speed: 4000 } as const;
    const wrong = { ...project, bench: { ...project.bench, carrier: fast } };
    expect(() => benchOfProject(wrong)).toThrow(InputError);
    const own = { ...project, vehicle: { kind: "own", title: "Mine", parameters: { nose: 1 } } } as const;
    expect(() => benchOfProject(own)).toThrow(/nose/);
  });
});
