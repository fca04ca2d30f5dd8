import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { messyRecording } from "../../../cycles/demo/messy.ts";
import { command, namesIn, succeed, temporaryFolder } from "./command.ts";

const folder = temporaryFolder();
const file = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return name;
};
file("messy.gpx", messyRecording().gpx);
file("route.gpx", '<gpx version="1.1"><rte><rtept lat="1" lon="2"/></rte></gpx>');
file("list.json", '[{ "kind": "crop", "start": 0, "end": 400 }, { "kind": "smooth" }, { "kind": "level" }]');
file("bad.json", '[{ "kind": "crop", "start": 0, "stop": 400 }]');
const before = namesIn(folder);

describe("cycles clean", () => {
  it("tells what was done and writes a cycle that is read again", () => {
    const told = succeed(folder, "cycles", "clean", "messy.gpx", "--out", "clean.csv");
    expect(told).toContain("Speed taken from the places");
    expect(told).toContain("wltc-class3b");
    const shown = succeed(folder, "cycles", "show", "clean.csv", "--json");
    const { statistics } = JSON.parse(shown) as { statistics: { distance: number } };
    expect(Math.abs(statistics.distance / 20_000 - 1)).toBeLessThan(0.005);
    expect(readFileSync(join(folder, "clean.csv"), "utf8")).toMatch(
      /^# Invented drive, 20 km; from messy\.gpx\n/,
    );
  });

  it("shows a track as it is cleaned in the usual way", () => {
    const { statistics, treatment } = JSON.parse(
      succeed(folder, "cycles", "show", "messy.gpx", "--json"),
    ) as {
      statistics: { distance: number };
      treatment: string[];
    };
    expect(Math.abs(statistics.distance / 20_000 - 1)).toBeLessThan(0.005);
    expect(treatment.some((sentence) => sentence.startsWith("Speed taken from the places"))).toBe(true);
  });

  it("does the treatments of a list", () => {
    const text = succeed(folder, "cycles", "clean", "messy.gpx", "--treatments", "list.json", "--json");
    const told = JSON.parse(text) as {
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
  ])("refuses %j", (words, said) => {
    const done = command(folder, "cycles", ...words);
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(said);
    expect(namesIn(folder).filter((name) => name !== "clean.csv")).toEqual(before);
  });
});
