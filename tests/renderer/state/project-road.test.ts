import { describe, expect, it } from "vitest";
import { projectWithRoad, roadOfProject, withoutOwn } from "../../../renderer/state/project-road.ts";
import { noted, recordingOf } from "../../../renderer/state/recordings.ts";
import { newProject, readProject, writeProject } from "../../../shared/project.ts";
import { traceOf } from "../../support/random.ts";

const project = newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" });

describe("what Road is set to, in a project", () => {
  it("comes back as it was, through the file's text", () => {
    const choice = {
      cycle: "us06",
      own: [],
      strategy: "thermostat",
      options: { payload: 120, coldStart: true },
    };
    const text = writeProject(projectWithRoad(project, choice));
    expect(roadOfProject(readProject(text, "p"))).toEqual(choice);
  });

  it("carries an own cycle with its samples", () => {
    const own = traceOf("driven-1", [0, 5, 9.5], [0, 8, 0]);
    const choice = { cycle: own.id, own: [own], strategy: "rules", options: {} };
    const text = writeProject(projectWithRoad(project, choice));
    expect(roadOfProject(readProject(text, "p"))).toEqual(choice);
  });

  it("keeps own strategies and names no strategy twice", () => {
    const own = { kind: "own" as const, title: "mine", text: "export const decide = () => ({});" };
    const before = { ...project, strategies: [{ kind: "built-in" as const, id: "rules" }, own] };
    const choice = { cycle: "udds", own: [], strategy: "rules", options: {} };
    expect(projectWithRoad(before, choice).strategies).toEqual([{ kind: "built-in", id: "rules" }, own]);
  });

  it("refuses an unknown cycle, an unknown strategy, an option out of range", () => {
    const bad = [
      { ...project, cycle: { kind: "catalogue" as const, line: "moon" } },
      { ...project, strategies: [{ kind: "built-in" as const, id: "hope" }] },
      { ...project, runOptions: { payload: -4 } },
    ];
    for (const one of bad)
      expect(() => roadOfProject(one)).toThrow(/accepted|known|unknown|no cycle|out of range/i);
  });

  it("carries every own cycle, a recorded one with its recording, whichever Road is set to", () => {
    const trace = traceOf("recorded", [0, 5, 9.5], [0, 8, 0]);
    const { id, title, source, time, speed, grade } = trace;
    const raw = {
      kind: "speeds" as const,
      id,
      title,
      source,
      time,
      speed,
      grade,
      reading: ["R."],
      overlay: null,
    };
    const recording = { raw, treatments: [{ kind: "level" as const }], overlay: null };
    const own = [noted({ trace, recording }), traceOf("driven-1", [0, 3], [0, 4])];
    const choice = { cycle: "us06", own, strategy: "rules", options: {} };
    const read = roadOfProject(readProject(writeProject(projectWithRoad(project, choice)), "p"));
    expect(read).toEqual(choice);
    expect(read.own.map((one) => recordingOf(one))).toEqual([recording, null]);
  });

  it("leaves own cycles out where they are kept elsewhere, and sets Road to one of the catalogue then", () => {
    const own = [traceOf("driven-1", [0, 3], [0, 4])];
    const choice = { cycle: "driven-1", own, strategy: "rules", options: {} };
    expect(withoutOwn(choice)).toEqual({ ...choice, cycle: "udds", own: [] });
    expect(withoutOwn({ ...choice, cycle: "nedc" })).toEqual({ ...choice, cycle: "nedc", own: [] });
  });
});
