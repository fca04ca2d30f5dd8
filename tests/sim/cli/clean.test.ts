import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { messyRecording } from "../../../cycles/demo/messy.ts";
import { execute } from "../../../sim/cli/main.ts";
import { namesIn, temporaryFolder } from "./command.ts";

const folder = temporaryFolder();
const path = (name: string): string => join(folder, name);
writeFileSync(path("messy.gpx"), messyRecording().gpx);
writeFileSync(path("route.gpx"), '<gpx version="1.1"><rte><rtept lat="1" lon="2"/></rte></gpx>');
writeFileSync(
  path("list.json"),
  '[{ "kind": "crop", "start": 0, "end": 400 }, { "kind": "smooth" }, { "kind": "level" }]',
);
writeFileSync(path("bad.json"), '[{ "kind": "crop", "start": 0, "stop": 400 }]');
const before = namesIn(folder);

/** Runs a `cycles` command in this thread; names of files in the folder get their path. */
async function cycles(...words: readonly string[]): Promise<{ code: number; out: string; note: string }> {
  let out = "";
  let note = "";
  const named = words.map((word) => (/\.\w+$/.test(word) ? path(word) : word));
  const code = await execute(["cycles", ...named], {
    out: (text) => {
      out += text;
    },
    note: (text) => {
      note += text;
    },
    progress: () => {},
    cancelled: () => false,
    start: "",
  });
  return { code, out, note };
}

describe("cycles clean", () => {
  it("tells what was done and writes a cycle that is read again", async () => {
    const { out: told } = await cycles("clean", "messy.gpx", "--out", "clean.csv");
    expect(told).toContain("Speed taken from the places");
    expect(told).toContain("wltc-class3b");
    const { statistics } = JSON.parse((await cycles("show", "clean.csv", "--json")).out) as {
      statistics: { distance: number };
    };
    expect(Math.abs(statistics.distance / 20_000 - 1)).toBeLessThan(0.005);
    expect(readFileSync(path("clean.csv"), "utf8")).toMatch(/^# Invented drive, 20 km; from messy\.gpx\n/);
  });

  it("shows a track as it is cleaned in the usual way", async () => {
    const { statistics, treatment } = JSON.parse((await cycles("show", "messy.gpx", "--json")).out) as {
      statistics: { distance: number };
      treatment: string[];
    };
    expect(Math.abs(statistics.distance / 20_000 - 1)).toBeLessThan(0.005);
    expect(treatment.some((sentence) => sentence.startsWith("Speed taken from the places"))).toBe(true);
  });

  it("does the treatments of a list", async () => {
    const { out } = await cycles("clean", "messy.gpx", "--treatments", "list.json", "--json");
    const told = JSON.parse(out) as {
      steps: { treatment: { kind: string } }[];
      figuresAfter: { ascent: number };
    };
    expect(told.steps.map((step) => step.treatment.kind)).toEqual(["crop", "smooth", "level"]);
    expect(told.figuresAfter.ascent).toBe(0);
  });

  it.each([
    [["clean"], /FILE is missing/],
    [["clean", "route.gpx"], /a route/],
    [["clean", "nowhere.gpx"], /nowhere\.gpx/],
    [["clean", "messy.gpx", "--treatments", "bad.json"], /bad\.json: \[0\]/],
    [["clean", "messy.gpx", "--track", "2"], /1 to 1/],
    [["clean", "messy.gpx", "--out", "messy.gpx"], /overwrite the input/],
    [["show", "udds", "--out", "x.csv"], /cycles clean only/],
    [["list", "--track", "1"], /cycles clean only/],
  ])("refuses %j", async (words, said) => {
    const { code, note } = await cycles(...words);
    expect(code).toBe(2);
    expect(note).toMatch(said);
    expect(namesIn(folder).filter((name) => name !== "clean.csv")).toEqual(before);
  });
});
