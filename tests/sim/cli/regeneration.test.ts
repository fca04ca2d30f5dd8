import { describe, expect, it } from "vitest";
import { command, succeed, temporaryFolder, textIn } from "./command.ts";

describe("regeneration", () => {
  const folder = temporaryFolder();

  it("prints the map and writes it as CSV and as JSON with all that it was made from", () => {
    const text = succeed(
      folder,
      ..."regeneration --speeds 30km/h,60km/h --rates 1:3:2 --charges 60% --csv a.csv --out a.json".split(
        " ",
      ),
    );
    expect(text).toMatch(/CHARGE 60 %/);
    expect(text).toMatch(/60\.0 km\/h +\d+ [abm]/);
    expect(textIn(folder, "a.csv").trimEnd().split("\n").length).toBe(5);
    const file = JSON.parse(textIn(folder, "a.json")) as { plan: { vehicle: unknown }; cells: unknown[] };
    expect(file.cells.length).toBe(4);
    expect(file).toMatchObject({
      format: "trishaft-regeneration",
      complete: true,
      plan: { strategy: { kind: "built-in", id: "rules" }, vehicle: { id: "compact" }, rates: [1, 3] },
    });
  });

  it("reads values with units, and refuses what is none", () => {
    const plan = (...words: string[]): unknown =>
      (JSON.parse(succeed(folder, "regeneration", "--json", ...words)) as { plan: unknown }).plan;
    expect(plan("--speeds", "18km/h:36km/h:3", "--rates", "2", "--charges", "50%,0.6")).toMatchObject({
      speeds: [5, 7.5, 10],
      rates: [2],
      charges: [0.5, 0.6],
    });
    for (const bad of ["1:2:3:4", "1:2:x", "a,b"]) {
      const done = command(folder, "regeneration", "--speeds", bad);
      expect(done.status, bad).toBe(2);
      expect(done.stderr, bad).toContain("--speeds");
    }
    const done = command(folder, "regeneration", "--speeds", "0", "--rates", "99");
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(/speeds[\s\S]*rates/);
  });
});
