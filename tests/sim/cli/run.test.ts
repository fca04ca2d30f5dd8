import { writeFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { EXPORT_COLUMNS } from "../../../sim/run/channels.ts";
import { command, namesIn, succeed, temporaryFolder, textIn } from "./command.ts";

const FILES = ["--out", "run.csv", "--summary", "run.json", "--vehicle-out", "vehicle.json"];
const LINE = ["run", "--cycle", "udds", "--strategy", "rules", "--balance", ...FILES];

interface SummaryFile {
  readonly closure_relative: number;
  readonly fuel: { readonly energy_j: number; readonly l_per_100km: number };
  readonly ledger: readonly { readonly column: string; readonly value_j: number }[];
  readonly settings: { readonly startSoc: number; readonly payload: number; readonly coldStart: boolean };
  readonly balanced?: Record<string, unknown>;
  readonly phases?: readonly { readonly id: string; readonly fuel_j: number; readonly distance_m: number }[];
  readonly city_test?: { readonly raw: { readonly l_per_100km: number } };
  readonly trace: { readonly misses: readonly unknown[] };
}

const summaryOf = (text: string): SummaryFile => JSON.parse(text) as SummaryFile;

describe("run with all its files", () => {
  const folder = temporaryFolder();
  let table = "";

  beforeAll(() => {
    table = succeed(folder, ...LINE);
  });

  it("writes three files and nothing else, and keeps the table within 96 columns", () => {
    expect(namesIn(folder)).toEqual(["run.csv", "run.json", "vehicle.json"]);
    expect(Math.max(...table.split("\n").map((line) => line.length))).toBeLessThanOrEqual(96);
    for (const title of [
      "FUEL",
      "BATTERY",
      "BRAKING ENERGY",
      "ENGINE",
      "REGIMES",
      "ENERGY LEDGER (kJ)",
      "MOMENTS",
    ]) {
      expect(table).toContain(`\n${title}\n`);
    }
  });

  it("has exactly the columns of the contract, and as many cells in every row", () => {
    const [header = "", ...lines] = textIn(folder, "run.csv").trimEnd().split("\n");
    expect(header.split(",")).toEqual(EXPORT_COLUMNS);
    expect(lines.length).toBe(13691);
    expect(lines.every((line) => line.split(",").length === EXPORT_COLUMNS.length)).toBe(true);
  });

  it("closes its ledger and states the balanced figures", () => {
    const summary = summaryOf(textIn(folder, "run.json"));
    expect(summary.closure_relative).toBeLessThanOrEqual(1e-9);
    expect(Object.keys(summary.balanced ?? {}).sort()).toEqual([
      "balanced",
      "co2_g_per_km",
      "fuel_energy_j",
      "l_per_100km",
      "mpg_us",
      "net_share",
      "reason",
      "runs",
      "slope",
      "slope_source",
    ]);
    expect(summary.balanced?.balanced).toBe(true);
    expect(summary.balanced?.l_per_100km).toBeGreaterThan(3);
    expect(summary.balanced?.l_per_100km).toBeLessThan(3.8);
    const last = textIn(folder, "run.csv").trimEnd().split("\n").at(-1)?.split(",") ?? [];
    for (const { column, value_j } of summary.ledger) {
      expect(Number(last[EXPORT_COLUMNS.indexOf(column)])).toBe(value_j);
    }
  });

  it("gives the same bytes on a rerun, and from its own vehicle file", () => {
    const again = temporaryFolder();
    expect(succeed(again, ...LINE)).toBe(table);
    expect(succeed(folder, ...LINE.slice(0, 6), "--vehicle", "vehicle.json", "--out", "again.csv")).toBe(
      table,
    );
    expect(textIn(again, "run.csv") === textIn(folder, "run.csv")).toBe(true);
    expect(textIn(folder, "again.csv") === textIn(folder, "run.csv")).toBe(true);
    expect(textIn(again, "run.json")).toBe(textIn(folder, "run.json"));
    expect(textIn(again, "vehicle.json")).toBe(textIn(folder, "vehicle.json"));
  });
});

describe("run", () => {
  const folder = temporaryFolder();

  it("passes every run option on, whatever its unit", () => {
    const options = ["--soc", "60%", "--payload", "150kg", "--wind", "-18km/h", "--aux", "0.5kW", "--cold"];
    const air = [
      "--air-density",
      "1.1",
      "--air-temperature",
      "0",
      "--step",
      "5ms",
      "--set",
      "engine.startFuel=0",
    ];
    const cycle = ["--cycle", "brake-stop"];
    const { settings } = summaryOf(succeed(folder, "run", ...cycle, ...options, ...air, "--json"));
    expect(settings).toMatchObject({
      step: 0.005,
      startSoc: 0.6,
      payload: 150,
      headWind: -5,
      auxiliaryPower: 500,
      airDensity: 1.1,
      airTemperature: 273.15,
      coldStart: true,
      logEvery: "control",
    });
  });

  it("drives the preset's own strategy unless told otherwise, from its vehicle file too", () => {
    const first = succeed(folder, "run", "--vehicle", "family", "--cycle", "cruise:speed=50km/h,for=20s");
    expect(first).toContain("strategy electric-first");
    succeed(folder, "run", "--vehicle", "family", "--cycle", "back-up", "--vehicle-out", "family.json");
    const own = succeed(folder, "run", "--vehicle", "family.json", "--cycle", "cruise:speed=50km/h,for=20s");
    expect(own).toBe(first);
  });

  it("reports honestly what the vehicle cannot follow, and still ends well", () => {
    const args = ["run", "--cycle", "launch:speed=130km/h,rate=5m/s2"];
    const table = succeed(folder, ...args);
    expect(table).toMatch(
      /outside ±2 mph within ±1 s for \d+\.\d s:\n {4}\d+\.\d to \d+\.\d s: .*beyond the band/,
    );
    expect(table).toMatch(/the driver asks for more than the vehicle can do/);
    expect(summaryOf(succeed(folder, ...args, "--json")).trace.misses.length).toBeGreaterThan(0);
  });

  it("weights the city test's bags and joins the combined test by weight", () => {
    const city = summaryOf(succeed(folder, "run", "--cycle", "ftp75", "--cold", "--json"));
    const used = (index: number): { fuel: number; way: number } => {
      const bag = city.phases?.[index];
      return { fuel: bag?.fuel_j ?? Number.NaN, way: bag?.distance_m ?? Number.NaN };
    };
    const [cold, middle, hot] = [used(0), used(1), used(2)];
    const perMetre =
      (0.43 * (cold.fuel + middle.fuel)) / (cold.way + middle.way) +
      (0.57 * (hot.fuel + middle.fuel)) / (hot.way + middle.way);
    const whole = city.fuel.l_per_100km / (city.fuel.energy_j / (cold.way + middle.way + hot.way));
    expect((city.city_test?.raw.l_per_100km ?? 0) / (perMetre * whole)).toBeCloseTo(1, 4);
    const highway = summaryOf(succeed(folder, "run", "--cycle", "hwfet", "--json"));
    const combined = JSON.parse(succeed(folder, "run", "--cycle", "combined", "--json")) as {
      combined: { raw: { l_per_100km: number } };
    };
    const joined = 0.55 * (city.city_test?.raw.l_per_100km ?? 0) + 0.45 * highway.fuel.l_per_100km;
    expect(combined.combined.raw.l_per_100km).toBeCloseTo(joined, 9);
  });

  it("drives a CSV file and says how it was read", () => {
    const speeds = Array.from({ length: 60 }, (_, t) => `${t},${Math.max(0, Math.min(t, 59 - t, 20))}`);
    const path = `${folder}/my drive.csv`;
    writeFileSync(path, ["time_s,speed_mph", ...speeds].join("\r\n"));
    const table = succeed(folder, "run", "--cycle", path, "--units", "us");
    expect(table).toContain('Speed taken from column "speed_mph" (from the header) in mph');
    expect(table).toContain("mpg");
    expect(table).not.toContain(folder);
  });

  it("says that a drive without fuel cannot be balanced", () => {
    const done = command(folder, "run", "--cycle", "back-up", "--balance", "--json");
    expect(done.status).toBe(0);
    expect(summaryOf(done.stdout).balanced).toMatchObject({ balanced: false, fuel_energy_j: null });
  });
});
