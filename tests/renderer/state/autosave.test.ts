import { describe, expect, it } from "vitest";
import { AUTOSAVE_KEY, ProjectKeeper, type TextStore } from "../../../renderer/state/autosave.ts";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { keepPreferences, readPreferences } from "../../../renderer/state/preferences.ts";
import { benchOfProject, projectWith } from "../../../renderer/state/project-bench.ts";
import { readBench } from "../../../renderer/state/saved-bench.ts";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { InputError } from "../../../shared/errors.ts";
import { newProject, type Project, readProject, writeProject } from "../../../shared/project.ts";
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
      expect(new ProjectKeeper(store).keep(state)).toBe(true);
      expect(new ProjectKeeper(store).restore()).toEqual({ kind: "project", project: state });
    }
  });

  it("finds nothing in a new store", () =>
    expect(new ProjectKeeper(memory()).restore()).toEqual({ kind: "nothing" }));

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
    const found = new ProjectKeeper(store).restore();
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
    expect(new ProjectKeeper(shut).keep(project)).toBe(false);
    expect(new ProjectKeeper(shut).restore()).toEqual({ kind: "nothing" });
  });
});

describe("autosave of several windows", () => {
  const own = (title: string, text = "") => ({ kind: "own" as const, title, text });
  const lesson = (id: string, text: string) => ({ id, title: id, text });
  const at = (id: string, step: number) => ({ id, step, answers: {}, seed: 1 });
  const rules = { kind: "built-in" as const, id: "rules" };
  const start: Project = {
    ...project,
    strategies: [rules, own("a", "1"), own("b", "1")],
    lessons: [lesson("x", "1"), lesson("y", "1")],
    lesson: at("first", 1),
    lessonsBegun: [at("second", 2)],
  };
  const opened = () => {
    const store = memory();
    new ProjectKeeper(store).keep(start);
    const windows = [new ProjectKeeper(store), new ProjectKeeper(store)] as const;
    for (const one of windows) one.restore();
    return { store, windows };
  };
  const kept = (store: TextStore): Project => {
    const found = new ProjectKeeper(store).restore();
    if (found.kind !== "project") throw new Error(found.kind);
    return found.project;
  };

  it("keeps what each of them wrote, and nothing that one deleted", () => {
    const { store, windows } = opened();
    const [one, two] = windows;
    one.keep({ ...start, strategies: [rules, own("b", "1"), own("new", "1")], lessons: [lesson("x", "2")] });
    const ofTwo = {
      ...start,
      title: "two",
      strategies: [own("b", "2"), rules, own("a", "1")],
      lessons: [...start.lessons, lesson("z", "1")],
    };
    two.keep(ofTwo);
    // Once more, with nothing new: what is others' stays.
    two.keep(ofTwo);
    const { title, strategies, lessons } = kept(store);
    expect(title).toBe("two");
    expect(strategies).toEqual([own("b", "2"), rules, own("new", "1")]);
    expect(lessons).toEqual([lesson("x", "2"), lesson("z", "1")]);
  });

  it("keeps both where both changed one", () => {
    const { store, windows } = opened();
    const [one, two] = windows;
    one.keep({
      ...start,
      strategies: [rules, own("a", "one"), own("b", "1")],
      lessons: [lesson("x", "one"), lesson("y", "1")],
    });
    two.keep({ ...start, strategies: [rules, own("a", "two")], lessons: [lesson("x", "two")] });
    const { strategies, lessons } = kept(store);
    expect(strategies).toEqual([rules, own("a", "two"), own("a 2", "one")]);
    expect(lessons).toEqual([lesson("x", "two"), { ...lesson("x", "one"), id: "x-2" }]);
    one.keep({ ...start, strategies: [rules, own("a", "one"), own("b", "1")] });
    expect(kept(store).strategies).toEqual([rules, own("a", "two"), own("a 2", "one")]);
  });

  it("keeps what both began with nothing", () => {
    const store = memory();
    const windows = [new ProjectKeeper(store), new ProjectKeeper(store)] as const;
    for (const one of windows) one.restore();
    windows[0].keep({ ...project, lessons: [lesson("x", "1")] });
    windows[1].keep({ ...project, lessons: [lesson("y", "1")] });
    expect(kept(store).lessons).toEqual([lesson("y", "1"), lesson("x", "1")]);
  });

  it("keeps how far each lesson is", () => {
    const { store, windows } = opened();
    const [one, two] = windows;
    one.keep({ ...start, lesson: at("first", 5) });
    two.keep({ ...start, lesson: at("second", 3), lessonsBegun: [at("first", 1)] });
    expect(kept(store).lesson).toEqual(at("second", 3));
    expect(kept(store).lessonsBegun).toEqual([at("first", 5)]);
  });

  it("keeps mine where what is there cannot be read", () => {
    const { store, windows } = opened();
    store.setItem(AUTOSAVE_KEY, "{");
    expect(windows[0].keep(start)).toBe(true);
    expect(kept(store)).toEqual(start);
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
