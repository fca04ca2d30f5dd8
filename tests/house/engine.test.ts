import { describe, expect, it } from "vitest";
import { sources, textOf } from "./files.ts";

const engine = ["shared", "cycles", "sim"].flatMap(sources).filter((path) => !path.startsWith("sim/cli/"));

/** Files of the time loop: only exact operations, so that every machine gives the same bytes. */
const LOOP = [
  "sim/drivetrain/plant.ts",
  "sim/drivetrain/contacts.ts",
  "sim/control/actuation.ts",
  "sim/control/dc-limits.ts",
  "sim/control/supervisor.ts",
  "sim/control/driver.ts",
  "sim/control/pedals.ts",
  "sim/control/strategies/rules.ts",
  "sim/control/strategies/thermostat.ts",
  "sim/control/strategies/electric-first.ts",
  "sim/control/strategies/equivalent.ts",
  "sim/control/strategies/equivalent-choice.ts",
  "sim/drivetrain/quasi-static.ts",
  "sim/run/books.ts",
  "sim/run/log.ts",
  "sim/run/simulation.ts",
  "sim/run/ledger.ts",
];

const code = (path: string): string =>
  textOf(path)
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\/\/.*$/gm, "");

function filesWith(paths: readonly string[], pattern: RegExp): string[] {
  return paths.filter((path) => pattern.test(code(path)));
}

describe("the engine", () => {
  it("owns no clock, no random source and no console", () => {
    expect(
      filesWith(engine, /\b(Date|performance|console)\b\s*[.(]|Math\.random|setTimeout|setInterval/),
    ).toEqual([]);
  });

  it("uses only exact operations in the time loop", () => {
    const inexact = /\*\*|Math\.(?!abs|min|max|floor|sqrt|ceil|round|imul)\w+/;
    expect(filesWith(LOOP, inexact)).toEqual([]);
    expect(inexact.test("Math.exp(1)")).toBe(true);
  });

  it("has no escape from types", () => {
    expect(filesWith(engine, /\bas any\b|: any\b|@ts-ignore|@ts-expect-error/)).toEqual([]);
  });

  it("converts speeds in one file", () => {
    const literals = /\b(3\.6|0\.44704|1\.609344|9\.5492\d*|0\.10471\d*)\b(?!e)/;
    expect(filesWith(engine, literals).filter((path) => path !== "shared/units.ts")).toEqual([]);
  });

  it("documents what it exports", () => {
    const bare = engine.flatMap((path) => {
      const lines = textOf(path).split("\n");
      return lines
        .map((line, index) => ({ line, before: lines[index - 1] ?? "", place: `${path}:${index + 1}` }))
        .filter(({ line }) => /^export (async )?(function|class|interface|type|const)\b/.test(line))
        .filter(({ before }) => !/\*\/\s*$/.test(before) && !/^\s*(\/\/|export |\)|\(|\w.*;)/.test(before))
        .map(({ place }) => place);
    });
    expect(bare).toEqual([]);
  });
});
