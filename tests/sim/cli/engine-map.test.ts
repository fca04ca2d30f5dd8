import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { command, namesIn, succeed, temporaryFolder, textIn } from "./command.ts";

const GRID = "Nm \\ rpm \\ bsfc (g/kWh),1000,3000,5000\n20,330,340,420\n70,250,240,280\n140,240,235,270\n";

describe("vehicles show with an engine map", () => {
  it("writes a template that it takes back, and a vehicle that it knows", () => {
    const folder = temporaryFolder();
    succeed(folder, "vehicles", "show", "compact", "--engine-map-out", "map.csv");
    const text = textIn(folder, "map.csv");
    expect(text).toMatch(/^speed \(rev\/min\),torque \(N·m\),fuel flow \(g\/s\)\r\n/);
    const words = ["--engine-map", "map.csv", "--set", "body.mass=1600", "--vehicle-out", "own.json"];
    const said = succeed(folder, "vehicles", "show", "compact", ...words);
    expect(said).toContain("figure in g/s (from the header)");
    const own = JSON.parse(textIn(folder, "own.json")) as Vehicle;
    expect(own.engine.map?.speed).toHaveLength(17);
    expect(own.body.mass).toBe(1600);
    succeed(folder, "vehicles", "show", "own.json", "--engine-map-out", "again.csv");
    expect(textIn(folder, "again.csv")).toBe(text);
  });

  it("takes a grid, and a run goes by it", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "grid.csv"), GRID);
    succeed(folder, "vehicles", "show", "compact", "--engine-map", "grid.csv", "--vehicle-out", "own.json");
    succeed(folder, "run", "--vehicle", "own.json", "--cycle", "launch", "--summary", "own-run.json");
    succeed(folder, "run", "--cycle", "launch", "--summary", "preset-run.json");
    expect(textIn(folder, "own-run.json")).not.toBe(textIn(folder, "preset-run.json"));
  });

  it("refuses a wrong cell with its place, and writes nothing", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "grid.csv"), GRID.replace("240,280", ",280"));
    const words = ["vehicles", "show", "compact", "--engine-map", "grid.csv", "--vehicle-out", "own.json"];
    const { status, stderr } = command(folder, ...words);
    expect(status).toBe(2);
    expect(stderr).toContain('grid.csv, row 3, column "3000"');
    expect(stderr).toContain("The cell is empty");
    expect(namesIn(folder)).toEqual(["grid.csv"]);
  });

  it("refuses to overwrite what it reads, and to go with the list", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "grid.csv"), GRID);
    const same = ["--engine-map", "grid.csv", "--engine-map-out", "grid.csv"];
    expect(command(folder, "vehicles", "show", "compact", ...same).stderr).toContain("overwrite the input");
    expect(textIn(folder, "grid.csv")).toBe(GRID);
    expect(command(folder, "vehicles", "list", "--engine-map", "grid.csv").stderr).toContain(
      "goes with vehicles show only",
    );
  });
});
