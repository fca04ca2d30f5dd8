import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { sources, textOf } from "./files.ts";

/** Which rooms a room may import: the table of DEVELOPERS.md, "The rooms". */
const MAY_IMPORT: Record<string, readonly string[]> = {
  shared: [],
  cycles: ["shared"],
  sim: ["shared", "cycles"],
  renderer: ["shared", "cycles", "sim"],
  electron: ["shared"],
};

/** Folders of sim/, each of which may import those before it. */
const SIM_ORDER = [
  "root",
  "parameters",
  "drivetrain",
  "vehicle",
  "control",
  "run",
  "bench",
  "study",
  "lesson",
  "report",
  "cli",
];

interface Import {
  readonly from: string;
  readonly to: string;
}

function importsOf(path: string): Import[] {
  const found = [...textOf(path).matchAll(/(?:from|import)\s+"(\.[^"]+)"/g)];
  return found.map((match) => ({
    from: path,
    to: posix.normalize(posix.join(posix.dirname(path), match[1] ?? "")),
  }));
}

const room = (path: string): string => path.split("/")[0] ?? "";
const simFolder = (path: string): string => {
  const parts = path.split("/");
  return parts.length > 2 ? (parts[1] ?? "") : "root";
};

describe("import directions (DEVELOPERS.md, the rooms)", () => {
  for (const [name, allowed] of Object.entries(MAY_IMPORT)) {
    it(`${name} imports only itself${allowed.length > 0 ? ` and ${allowed.join(", ")}` : ""}`, () => {
      const wrong = sources(name)
        .flatMap(importsOf)
        .filter(({ to }) => room(to) !== name && !allowed.includes(room(to)) && to !== "package.json");
      expect(wrong).toEqual([]);
    });
  }

  it("folders of sim import only those before them: parameters, drivetrain, vehicle, control, run, bench, study, lesson, report, command line", () => {
    const wrong = sources("sim")
      .flatMap(importsOf)
      .filter(
        ({ from, to }) =>
          room(to) === "sim" && SIM_ORDER.indexOf(simFolder(to)) > SIM_ORDER.indexOf(simFolder(from)),
      )
      .filter(({ from }) => simFolder(from) !== "root");
    expect(wrong).toEqual([]);
  });

  it("finds imports at all", () => {
    expect(sources("sim").flatMap(importsOf).length).toBeGreaterThan(50);
  });
});
