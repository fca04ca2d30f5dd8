import { describe, expect, it } from "vitest";
import { command, namesIn, succeed, temporaryFolder, textIn } from "./command.ts";

interface Told {
  readonly l_per_100km: number;
  readonly grid_error_share: number;
  readonly starts: number;
  readonly soc_end: number;
  readonly feasible: boolean;
  readonly strategies: readonly {
    readonly strategy: string;
    readonly balanced: boolean;
    readonly l_per_100km: number;
    readonly over_optimum: number;
    readonly over_optimum_quasi_static: number;
  }[];
}

const QUICK = ["--cycle", "nycc", "--soc-steps", "100", "--points", "30"];

describe("optimum", () => {
  it("tells fuel, grid error, starts and how far strategies are from it, and writes the path", () => {
    const folder = temporaryFolder();
    const text = succeed(folder, "optimum", ...QUICK, "--strategy", "rules", "--out", "path.csv", "--json");
    const told = JSON.parse(text) as Told;
    expect(told.feasible).toBe(true);
    expect(told.soc_end).toBe(0.58);
    expect(told.l_per_100km).toBeGreaterThan(3);
    expect(told.l_per_100km).toBeLessThan(5);
    expect(told.grid_error_share).toBeLessThan(0.03);
    expect(told.starts).toBeGreaterThan(2);
    const [rules] = told.strategies;
    expect(rules?.balanced).toBe(true);
    expect(rules?.over_optimum).toBeGreaterThan(0);
    expect(rules?.l_per_100km).toBeGreaterThan(told.l_per_100km * 0.98);
    expect(textIn(folder, "path.csv").split("\n")[0]).toMatch(/^time_s,soc,/);
  });

  it("prints a table", () => {
    const text = succeed(temporaryFolder(), "optimum", ...QUICK, "--strategy", "equivalent");
    expect(text).toMatch(
      /OPTIMUM\n {2}fuel +\d\.\d+ L\/100 km\n {2}grid error +\d\.\d+ %\n {2}engine starts +\d+/,
    );
    expect(text).toMatch(/equivalent +\d\.\d+ +\d+\.\d+ %/);
    expect(text).toContain("sun machine and inverter");
  });

  it.each([
    [["--points", "3"], /--points/],
    [["--soc-steps", "many"], /--soc-steps/],
    [["--stage", "0.01"], /--stage/],
    [["--end-soc", "95%"], /--end-soc/],
    [["--soc", "0.1"], /--soc/],
    [["--cold"], /--cold/],
    [["--cycle", "combined"], /made of several drives/],
    [["--strategy", "rule"], /nearest known is rules/],
  ])("refuses %j and writes nothing", (more, message) => {
    const folder = temporaryFolder();
    const done = command(
      folder,
      "optimum",
      ...(more.includes("--cycle") ? [] : QUICK),
      "--out",
      "path.csv",
      ...more,
    );
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(message);
    expect(namesIn(folder)).toEqual([]);
  });
});
