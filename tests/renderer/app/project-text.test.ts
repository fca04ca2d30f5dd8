import { describe, expect, it } from "vitest";
import { projectText } from "../../../renderer/app/project-text.ts";
import { projectWithRoad } from "../../../renderer/state/project-road.ts";
import { noted, withRecording } from "../../../renderer/state/recordings.ts";
import { type ProjectParts, projectWork } from "../../../renderer/workers/project-work.ts";
import { newProject, type Project, writeProject } from "../../../shared/project.ts";
import { traceOf } from "../../support/random.ts";

const project: Project = {
  ...newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" }),
  strategies: [{ kind: "built-in", id: "rules" }],
};

/** A recording of so many seconds. */
function recorded(id: string, count: number) {
  const trace = traceOf(
    id,
    Array.from({ length: count }, (_, i) => i),
    Array.from({ length: count }, (_, i) => (i % 60) / 3),
  );
  const { time, speed, grade } = trace;
  const raw = {
    kind: "speeds" as const,
    id,
    title: id,
    source: "x.csv",
    time,
    speed,
    grade,
    reading: [],
    overlay: null,
  };
  return noted({ trace, recording: { raw, treatments: [{ kind: "level" }], overlay: null } });
}

const partsOf = (count: number, cycle: string): ProjectParts => ({
  project,
  own: [recorded("day", count), traceOf("driven-1", [0, 1], [0, 3])].map(withRecording),
  cycle,
});

/** What the file holds, by the page's own way. */
const right = ({ own, cycle }: ProjectParts): string =>
  writeProject(projectWithRoad(project, { cycle, own: own.map(noted), strategy: "rules", options: {} }));

describe("the text of a project's file", () => {
  it.each([
    [60, "udds", false],
    [60, "day", false],
    [20_000, "day", true],
    [20_000, "cruise:speed=60mph", true],
  ])(
    "with %i samples, Road set to %s: in a worker %s, and the same either way",
    async (count, cycle, there) => {
      const parts = partsOf(count, cycle);
      let asked = 0;
      const text = await projectText(parts, async (sent) => {
        asked += 1;
        return projectWork.write(structuredClone(sent));
      });
      expect(text).toBe(right(parts));
      expect(asked > 0).toBe(there);
    },
  );

  it("is written without a worker where there is none", async () => {
    const parts = partsOf(20_000, "day");
    expect(await projectText(parts, () => Promise.reject(new Error("no worker")))).toBe(right(parts));
  });
});
