import { describe, expect, it } from "vitest";
import {
  freeTitle,
  MOST_TITLE,
  ownId,
  ownOfProject,
  ownTitle,
  projectWithOwn,
  strategyEntries,
  strategyOf,
  withText,
  withTitle,
} from "../../../renderer/state/own-strategies.ts";
import { projectWithRoad, roadOfProject } from "../../../renderer/state/project-road.ts";
import { newProject, readProject, writeProject } from "../../../shared/project.ts";
import { STRATEGIES } from "../../../sim/control/strategies/registry.ts";

const mine = { title: "Late charger", text: "export const decide = () => ({ engineOn: false });\n" };
const other = { title: "Früh, “best”\n", text: '// ✓ \u2028 \\ "\nexport const decide = () => 1;' };
const project = newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" });
const options = { cycle: "udds", own: [], options: {} };

describe("own strategies", () => {
  it("are found by an id that none of ours has", () => {
    expect(ownTitle(ownId(mine.title))).toBe(mine.title);
    for (const { id } of STRATEGIES) expect(ownTitle(id)).toBeNull();
    expect(strategyOf([mine], ownId(mine.title))).toEqual({ kind: "own", ...mine });
    expect(strategyOf([mine], "rules")).toEqual({ kind: "built-in", id: "rules" });
    expect(() => strategyOf([mine], ownId("gone"))).toThrow(/no own strategy.*Late charger/);
    expect(() => strategyOf([], "own-id-of-none")).toThrow(/unknown strategy/);
  });

  it("stand after ours in lists", () => {
    const entries = strategyEntries([mine], "about");
    expect(entries).toHaveLength(STRATEGIES.length + 1);
    expect(entries.at(-1)).toEqual({ id: ownId(mine.title), title: mine.title, about: "about", own: true });
  });

  it("get titles that differ, are never empty and never too long", () => {
    expect(freeTitle([], "  a ")).toBe("a");
    expect(freeTitle([mine], mine.title)).toBe("Late charger 2");
    expect(freeTitle([mine, { ...mine, title: "Late charger 2" }], mine.title)).toBe("Late charger 3");
    expect(freeTitle([], " ")).not.toBe("");
    expect(freeTitle([], "x".repeat(500))).toHaveLength(MOST_TITLE);
  });

  it("are changed one by one", () => {
    const list = [mine, { title: "b", text: "2" }];
    expect(withText(list, "b", "3")).toEqual([mine, { title: "b", text: "3" }]);
    expect(withTitle(list, "b", "c")).toEqual([mine, { title: "c", text: "2" }]);
  });
});

describe("own strategies in a project", () => {
  it("come back several, in their order, whatever their texts hold, through the file's text", () => {
    const kept = projectWithRoad(projectWithOwn(project, [mine, other]), {
      ...options,
      strategy: "thermostat",
    });
    const read = readProject(writeProject(kept), "p");
    expect(ownOfProject(read).map(({ text }) => text)).toEqual([mine.text, other.text]);
    expect(roadOfProject(read).strategy).toBe("thermostat");
  });

  it("can be what Road drives, and stay that through the file", () => {
    const kept = projectWithRoad(projectWithOwn(project, [other, mine]), {
      ...options,
      strategy: ownId(mine.title),
    });
    const read = readProject(writeProject(kept), "p");
    expect(roadOfProject(read).strategy).toBe(ownId(mine.title));
    expect(ownOfProject(read)).toHaveLength(2);
    expect(strategyOf(ownOfProject(read), roadOfProject(read).strategy)).toEqual({ kind: "own", ...mine });
  });

  it("leave rules on Road when the one driven is gone, and are replaced, not added", () => {
    const first = projectWithRoad(projectWithOwn(project, [mine]), {
      ...options,
      strategy: ownId(mine.title),
    });
    const without = projectWithRoad(projectWithOwn(first, []), { ...options, strategy: ownId(mine.title) });
    expect(ownOfProject(without)).toEqual([]);
    expect(without.strategies).toEqual([{ kind: "built-in", id: "rules" }]);
  });

  it("are told apart when a file has two of one title", () => {
    const twice = { ...project, strategies: [mine, mine].map((one) => ({ kind: "own" as const, ...one })) };
    expect(ownOfProject(twice).map(({ title }) => title)).toEqual(["Late charger", "Late charger 2"]);
  });
});
