import { describe, expect, it } from "vitest";
import { fileKind } from "../../../renderer/app/file-kind.ts";
import { newProject, writeProject } from "../../../shared/project.ts";

describe("what a dropped file is taken for", () => {
  it.each([
    ["week.trishaft.json", "project"],
    ["drive.GPX", "cycle"],
    ["log.csv", "table"],
    ["map.TSV", "table"],
    ["mine.cycle.json", "cycle"],
    ["first.md", "lesson"],
    ["mine.js", "strategy"],
    ["van-2.vehicle.json", "vehicle"],
  ] as const)("%s by its name", (name, kind) => {
    expect(fileKind(name, "")).toBe(kind);
  });

  it("tells projects from vehicles where the name does not", () => {
    const project = writeProject(
      newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" }),
    );
    expect(fileKind("copy.json", project)).toBe("project");
    expect(fileKind("copy.json", '{ "id": "mine" }')).toBe("vehicle");
  });

  it("leaves alone what no place reads", () => {
    expect(fileKind("photo.png", "")).toBeNull();
  });
});
