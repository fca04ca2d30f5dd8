import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { helpText } from "../../../sim/cli/commands/help.ts";
import { execute } from "../../../sim/cli/main.ts";
import { VERBS } from "../../../sim/cli/verbs.ts";
import { resultsJson } from "../../../sim/study/sweep/file.ts";
import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { engineMapCsv, presentEngineMap } from "../../../sim/vehicle/engine-map/write.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { command, START, succeed, temporaryFolder } from "./command.ts";

const folder = temporaryFolder();

/** A plan of which no run has been driven yet. */
const sweepOfExamples = (): SweepPlan => ({
  vehicles: [vehicleById("compact")],
  axes: [{ path: "run.payload", values: ["0", "100"] }],
  cycles: [cycleById("launch")],
  strategies: [{ kind: "built-in", id: "rules" }],
  options: {},
});

/** A folder with the files that examples name. */
function folderOfExamples(): string {
  const made = temporaryFolder();
  writeFileSync(join(made, "class.txt"), "Ada Lindqvist\nBen Okoro\n");
  writeFileSync(join(made, "answers.csv"), "student,question,value\nAda Lindqvist,sun-torque,-24.3 N·m\n");
  writeFileSync(
    join(made, "mine.js"),
    "export const decide = () => ({ engineOn: true, enginePower_kW: 8 });\n",
  );
  const { engine, fuel } = vehicleById("compact");
  writeFileSync(join(made, "map.csv"), engineMapCsv(presentEngineMap(engine), fuel.lowerHeat));
  const plan = sweepOfExamples();
  for (const number of [1, 2]) {
    const part = resultsJson({ plan, part: { number, of: 2 }, rows: [], version: "1" });
    writeFileSync(join(made, `part-${number}.json`), part);
  }
  const points = Array.from({ length: 60 }, (_, i) => {
    const north = (48 + Math.max(0, i - 5) * 1e-4).toFixed(6);
    return `<trkpt lat="${north}" lon="11.0"><ele>500</ele><time>2024-05-01T08:00:${String(i).padStart(2, "0")}Z</time></trkpt>`;
  });
  const track = `<trk><trkseg>${points.join("")}</trkseg></trk>`;
  const gpx = `<gpx version="1.1" creator="own" xmlns="http://www.topografix.com/GPX/1/1">${track}</gpx>`;
  writeFileSync(join(made, "my-drive.gpx"), gpx);
  return made;
}

/** What a command that ends well says, done in this process: starting one for each takes longer than the help itself. */
async function said(...words: readonly string[]): Promise<string> {
  let text = "";
  const code = await execute(words, {
    out: (more) => {
      text += more;
    },
    note: (more) => {
      throw new Error(more);
    },
    progress: () => {},
    cancelled: () => false,
    start: START,
  });
  expect(code).toBe(0);
  return text;
}

describe("help", () => {
  it("names every verb and the exit codes", async () => {
    const text = succeed(folder, "help");
    for (const verb of VERBS) expect(text).toContain(`  ${verb.name} `);
    expect(succeed(folder, "run", "--help")).toBe(await helpText(["run"]));
    for (const code of ["0 ", "1 ", "2 ", "130 "]) expect(text).toContain(`\n  ${code}`);
    expect(succeed(folder)).toBe(text);
    expect(succeed(folder, "--help")).toBe(text);
  });

  it.each(VERBS.map((verb) => [verb.name, verb] as const))("of %s names every option", async (name, verb) => {
    const text = await said(name, "--help");
    for (const option of verb.options) expect(text).toContain(`  --${option.name}`);
    expect(await helpText([name])).toBe(text);
  });

  it.each(VERBS.filter((verb) => verb.name !== "bench").flatMap((verb) => verb.examples))(
    "has an example that is understood: %s",
    (line) => {
      const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? "");
      const { status, stderr } = command(folderOfExamples(), ...words);
      expect(status, stderr).toBe(0);
    },
  );

  it("has an example for every verb", () => {
    for (const verb of VERBS) expect(verb.examples.length, verb.name).toBeGreaterThan(0);
  });

  it("tells the version of the package", () => {
    const file = join(import.meta.dirname, "..", "..", "..", "package.json");
    const { version } = JSON.parse(readFileSync(file, "utf8")) as { version: string };
    expect(succeed(folder, "--version")).toBe(`trishaft ${version}\n`);
  });
});

describe("lists and limits", () => {
  it("lists cycles, manoeuvres and tests, and shows each kind", () => {
    const list = succeed(folder, "cycles", "list");
    for (const id of ["udds", "wltc-class3b-low", "ftp75", "launch", "combined"])
      expect(list).toContain(`  ${id} `);
    expect(succeed(folder, "cycles", "show", "udds")).toMatch(/distance +11\.990 km/);
    expect(succeed(folder, "cycles", "show", "cruise:speed=60mph")).toMatch(/greatest speed +96\.6 km\/h/);
    expect(succeed(folder, "cycles", "show", "combined")).toContain("weight 0.55");
    const shown = JSON.parse(succeed(folder, "cycles", "show", "us06", "--json")) as {
      info: { unit: string };
    };
    expect(shown.info.unit).toBe("mph");
  });

  it("lists vehicles and shows every parameter", () => {
    expect(succeed(folder, "vehicles", "list")).toContain("compact");
    const text = succeed(folder, "vehicles", "show", "compact", "--set", "body.mass=1600");
    expect(text).toContain("body.mass = 1600 kg");
    const json = JSON.parse(succeed(folder, "vehicles", "show", "van", "--json")) as {
      parameters: { path: string; value: unknown }[];
    };
    expect(json.parameters.find((row) => row.path === "gearSet.sunTeeth")?.value).toBe(38);
  });

  it("finds the limits of the vehicle", () => {
    const found = JSON.parse(succeed(folder, "limits", "--json")) as Record<string, number>;
    expect(found.zero_to_100_kmh_s).toBeGreaterThan(8);
    expect(found.zero_to_100_kmh_s).toBeLessThan(14);
    expect(succeed(folder, "limits", "--units", "us")).toContain("0 to 62.1 mph");
  });

  it("measures and checks itself", () => {
    const found = JSON.parse(succeed(folder, "bench", "--runs", "1", "--json")) as {
      steps: number;
      check: { good: boolean };
    };
    expect(found.steps).toBe(136_900);
    expect(found.check.good).toBe(true);
  });
});
