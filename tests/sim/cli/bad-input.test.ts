import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { execute } from "../../../sim/cli/main.ts";
import { command, namesIn, temporaryFolder } from "./command.ts";

const folder = temporaryFolder();
const file = (name: string, text: string | Buffer): string => {
  writeFileSync(join(folder, name), text);
  return name;
};

file("empty.csv", "");
file("one-row.csv", "time_s,speed_kmh\n0,0\n");
file("unsorted.csv", "time_s,speed_kmh\n0,0\n2,5\n1,6\n");
file("nan.csv", "time_s,speed_kmh\n0,0\n1,NaN\n");
file("negative.csv", "time_s,speed_kmh\n-1,0\n0,5\n");
file("unit.csv", "time_s,speed [furlong/h]\n0,0\n1,5\n");
file("binary.csv", Buffer.from([0x50, 0x4b, 3, 4, 0, 0, 0, 1]));
file("broken.json", '{\n  "body": {\n    "mass": 1500,\n  }\n}\n');
file("unknown.json", '{ "body": { "wieght": 1500 } }');
file("range.json", '{ "body": { "mass": -3 }, "gearSet": { "sunTeeth": 41 } }');
file("list.json", "[1, 2]");
mkdirSync(join(folder, "a-folder"));

const before = namesIn(folder);
const out = ["--out", "x.csv", "--summary", "x.json", "--vehicle-out", "xv.json"];

/** What is typed, and what the message must say. */
const CASES: readonly (readonly [typed: readonly string[], ...said: RegExp[]])[] = [
  [["rnu"], /unknown verb/, /nearest known is run/],
  [["--jsno"], /a verb must come first/],
  [["run", "--cylce", "udds"], /unknown option/, /nearest known is --cycle/, /--cylce/],
  [["run", "-x"], /unknown option/],
  [["run", "somewhere"], /one word too many/],
  [["run", "--out"], /value is missing/],
  [["run", "--out", "--json"], /value is missing/],
  [["run", "--json=yes"], /takes no value/],
  [["run", "--soc", "0.5", "--soc", "0.6"], /given twice/],
  [["run", "--vehicle", "compct"], /nearest known is compact/],
  [["run", "--cycle", "udd"], /nearest known is udds/],
  [["run", "--strategy", "rule"], /nearest known is rules/],
  [["run", "--cycle", "cruise:speed=60"], /unit is missing/],
  [["run", "--cycle", "criuse:speed=10m/s"], /no cycle of this id/, /nearest known is cruise/],
  [["run", "--set", "engine.startFule=3"], /--set engine.startFule/, /nearest known is engine.startFuel/],
  [["run", "--set", "engine.startFuel=much"], /not a number/, /"much"/],
  [["run", "--set", "body.mass=1e9"], /too large/, /kg/],
  [["run", "--set", "body.mass"], /path=value/],
  [["run", "--set", "gearSet.sunTeeth=41"], /gearSet/],
  [["run", "--soc", "60"], /--soc/, /out of range/, /60%/],
  [["run", "--soc", "-1%"], /out of range/],
  [["run", "--soc", "half"], /not a number/],
  [["run", "--step", "0.03"], /does not fit/],
  [["run", "--step", "0"], /--step/, /out of range/],
  [["run", "--wind", "5knots"], /unit is not known/],
  [["run", "--payload", "1e9"], /--payload/, /5000 kg/],
  [["run", "--air-temperature", "293"], /--air-temperature/, /566.15/],
  [["run", "--log-every", "day"], /control or step/],
  [["run", "--units", "cgs"], /metric or us/],
  [["run", "--cycle", "empty.csv"], /file is empty/],
  [["run", "--cycle", "one-row.csv"], /only one row/],
  [["run", "--cycle", "unsorted.csv"], /time goes back/, /row 4/, /time_s/],
  [["run", "--cycle", "nan.csv"], /row 3/, /NaN/],
  [["run", "--cycle", "negative.csv"], /time is negative/],
  [["run", "--cycle", "unit.csv"], /furlong/],
  [["run", "--cycle", "binary.csv"], /binary/],
  [["run", "--cycle", "./a-folder"], /this is a folder/],
  [["run", "--cycle", "missing.csv"], /no such file/],
  [["run", "--vehicle", "missing.json"], /no such file/],
  [["run", "--vehicle", "./a-folder"], /this is a folder/],
  [["run", "--vehicle", "binary.csv"], /binary/],
  [["run", "--vehicle", "broken.json"], /line 4, column 3/, /not JSON/],
  [["run", "--vehicle", "unknown.json"], /body.wieght/, /mass/],
  [["run", "--vehicle", "range.json"], /body.mass/, /-3/],
  [["run", "--vehicle", "list.json"], /not a group/],
  [["run", "--cycle", "combined", "--balance"], /made of several drives/, /ftp75/],
  [["cycles", "sohw"], /list or show/],
  [["cycles", "show"], /ID\|FILE is missing/],
  [["cycles", "show", "udds", "hwfet"], /one word too many/],
  [["vehicles", "show", "vam"], /nearest known is van/],
  [["limits", "--cycle", "udds"], /unknown option/],
  [["bench", "--runs", "0"], /1 to 1000/],
  [["help", "rum"], /nearest known is run/],
];

/** The same words with the files' names made absolute, so that the command can be called in this process. */
const absolute = (words: readonly string[]): string[] =>
  words.map((word) => (/^(\.\/)?[\w-]+\.(csv|json)$|^\.\//.test(word) ? join(folder, word) : word));

/** Does what the words say, as the program does between its start and its end. */
async function told(words: readonly string[]): Promise<{ status: number; stdout: string; stderr: string }> {
  let stdout = "";
  let stderr = "";
  const status = await execute(absolute(words), {
    out: (text) => {
      stdout += text;
    },
    note: (text) => {
      stderr += text;
    },
    progress: () => {},
    cancelled: () => false,
    start: "",
  });
  return { status, stdout, stderr: stderr.replaceAll(`${folder}/`, "") };
}

function expectRefusal(
  done: { status: number | null; stdout: string; stderr: string },
  said: readonly RegExp[],
): void {
  expect(done.status, done.stderr).toBe(2);
  expect(done.stdout).toBe("");
  for (const words of said) expect(done.stderr.replace(/\s+/g, " ")).toMatch(words);
  expect(done.stderr).toMatch(/\n {4}what {8}\S[\s\S]*\n {4}accepted {4}\S/);
  expect(done.stderr).not.toMatch(/\n\s+at .*\d+:\d+/);
  expect(Math.max(...done.stderr.split("\n").map((line) => line.length))).toBeLessThanOrEqual(100);
  expect(namesIn(folder)).toEqual(before);
}

const withFiles = (typed: readonly string[]): string[] =>
  typed[0] === "run" && typed.at(-1) !== "--out" ? [...typed, ...out] : [...typed];

describe("bad input", () => {
  it.each(CASES.map(([typed, ...said]) => [typed.join(" "), typed, said] as const))(
    "%s",
    async (_, typed, said) => expectRefusal(await told(withFiles(typed)), said),
  );

  it("ends the program itself with 2 and one block on stderr", () => {
    const named = (words: string) => CASES.find(([typed]) => typed.join(" ") === words) ?? [[]];
    const some = [
      "rnu",
      "run --soc 60",
      "run --cycle nan.csv",
      "run --vehicle broken.json",
      "vehicles show vam",
    ];
    for (const [typed, ...said] of some.map(named)) {
      expectRefusal(command(folder, ...withFiles(typed)), said);
    }
  });
});
