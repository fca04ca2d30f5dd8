import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../shared/errors.ts";
import type { Around } from "../../../sim/cli/around.ts";
import { compare } from "../../../sim/cli/commands/compare.ts";
import { verbByName } from "../../../sim/cli/commands/help.ts";
import { readAxis } from "../../../sim/cli/commands/sweep.ts";
import { command, namesIn, START, succeed, temporaryFolder, textIn } from "./command.ts";

const CYCLE = ["--cycle", "brake-stop:lead=1s"];
const VARY = ["--vary", "run.payload=0:200:3", "--vary", "body.dragArea=0.6,0.7"];

/** Nothing to see, and nobody to stop it. */
const QUIET: Around = { out() {}, note() {}, progress() {}, cancelled: () => false, start: "" };

/** A results file, as far as these tests look. */
interface Results {
  readonly complete: boolean;
  readonly rows: readonly { readonly index: number; readonly failure: string; readonly row: object | null }[];
}
const results = (folder: string, name: string): Results => JSON.parse(textIn(folder, name)) as Results;

describe("a sweep from the command line", () => {
  it("gives the same bytes on one thread, and in parts on two threads, merged", () => {
    const folder = temporaryFolder();
    succeed(folder, "sweep", ...VARY, ...CYCLE, "--cores", "1", "--out", "one.json", "--csv", "one.csv");
    for (const part of ["1/2", "2/2"])
      succeed(
        folder,
        "sweep",
        ...VARY,
        ...CYCLE,
        "--part",
        part,
        "--cores",
        "2",
        "--out",
        `part-${part[0]}.json`,
      );
    succeed(folder, "merge", "part-2.json", "part-1.json", "--out", "all.json", "--csv", "all.csv");
    expect(textIn(folder, "all.json")).toBe(textIn(folder, "one.json"));
    expect(textIn(folder, "all.csv")).toBe(textIn(folder, "one.csv"));
    expect(results(folder, "one.json")).toMatchObject({ complete: true });
    expect(textIn(folder, "one.csv").trim().split("\n")).toHaveLength(7);
  });

  it("is refused before anything is driven", async () => {
    const refused = async (...words: string[]): Promise<string> => {
      const [verb = "", ...rest] = words;
      const work = (await verbByName(verb).load())(rest, QUIET);
      return await Promise.resolve(work).then(
        () => "nothing was refused",
        (error: unknown) => (error instanceof InputError ? error.message : String(error)),
      );
    };
    expect(await refused("sweep")).toMatch(/nothing is varied/);
    expect(await refused("sweep", "--vary", "run.payload")).toMatch(/not a variation/);
    expect(await refused("sweep", "--vary", "run.payload=0:1:1")).toMatch(/count out of 2/);
    expect(await refused("sweep", "--vary", "engine.startFuell=1")).toMatch(/engine\.startFuel/);
    expect(await refused("sweep", ...VARY, "--part", "3/2")).toMatch(/such as 3\/20/);
    expect(await refused("compare", "--strategy", "rules", "--strategy", "rules")).toMatch(/of one name/);
    expect(await refused("compare", "--soc", "58")).toMatch(/--soc/);
    expect(await refused("compare", "--cores", "0")).toMatch(/--cores/);
  });

  it("reads ranges and lists", () => {
    expect(readAxis("run.payload=0:200:3")).toEqual({ path: "run.payload", values: ["0", "100", "200"] });
    expect(readAxis("gearSet.sunTeeth=30, 40")).toEqual({ path: "gearSet.sunTeeth", values: ["30", "40"] });
    expect(readAxis("a.list=1,2|3,4")).toEqual({ path: "a.list", values: ["1,2", "3,4"] });
  });
});

describe("strategies of one's own from the command line", () => {
  const GOOD =
    "export const decide = (now) => ({ engineOn: now.demand_kW > 8, enginePower_kW: now.demand_kW });\n";
  const LATE = `export function decide(now) {
  if (now.time_s > 20) return now.nothing.here;
  return { engineOn: true, enginePower_kW: 10 };
}
`;

  it("are compared with ours; one that fails leaves the other rows as they are, with line and second", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "good.js"), GOOD);
    writeFileSync(join(folder, "late.js"), LATE);
    const strategies = ["rules", "good.js", "late.js"].flatMap((name) => ["--strategy", name]);
    const text = succeed(folder, "compare", ...CYCLE, ...strategies, "--out", "compare.json");
    expect(text).toMatch(/late\.js .*not driven/);
    const { rows } = results(folder, "compare.json");
    expect(rows.map(({ row }) => row !== null)).toEqual([true, true, false]);
    expect(rows[2]?.failure).toMatch(/late\.js, line 2.*20\.\d+ s/);
    expect(textIn(folder, "compare.json")).toContain("now.nothing.here");
  });

  it("are driven by `run`, and their faults are bad input", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "good.js"), GOOD);
    writeFileSync(join(folder, "late.js"), LATE);
    writeFileSync(join(folder, "slip.js"), "export function decide(now) {\n  return {;\n}\n");
    expect(succeed(folder, "run", ...CYCLE, "--strategy", "good.js", "--json")).toContain(
      '"strategy": "own"',
    );
    const late = command(folder, "run", ...CYCLE, "--strategy", "late.js", "--out", "run.csv");
    expect(late.status).toBe(2);
    expect(late.stderr).toMatch(/late\.js, line 2/);
    const slip = compare(["--strategy", join(folder, "slip.js")], QUIET);
    await expect(slip).rejects.toThrow(/slip\.js, line 2/);
    expect(namesIn(folder)).toEqual(["good.js", "late.js", "slip.js"]);
  });
});

describe.skipIf(process.platform === "win32")("an interrupted sweep", () => {
  it("keeps the runs that are done, and says how many", async () => {
    const folder = temporaryFolder();
    const words = [
      "sweep",
      "--vary",
      "run.payload=0:1000:1000",
      ...CYCLE,
      "--cores",
      "1",
      "--out",
      "some.json",
    ];
    const child = spawn(process.execPath, [START, ...words], {
      cwd: folder,
      stdio: ["ignore", "ignore", "pipe"],
    });
    let said = "";
    child.stderr?.on("data", (data: Buffer) => {
      said += data.toString();
    });
    while (!/, \d+ done/.test(said) && child.exitCode === null) await pause(5);
    child.kill("SIGINT");
    expect(await once(child, "exit")).toEqual([130, null]);
    expect(said).toMatch(/Interrupted: \d+ of 1000 runs were kept and written/);
    const { complete, rows } = results(folder, "some.json");
    expect(complete).toBe(false);
    expect(said).toContain(`${rows.length} of 1000`);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.map(({ index }) => index)).toEqual(rows.map((_, i) => i));
  });
});
