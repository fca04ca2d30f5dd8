import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readTable } from "../../../cycles/standard/read.ts";
import { STANDARD_TABLES } from "../../../cycles/standard/tables.ts";
import { strategyById } from "../../../sim/control/strategies/registry.ts";
import { consumption } from "../../../sim/run/fuel.ts";
import { limitsRun } from "../../../sim/run/limits-run.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { traceQuality } from "../../../sim/run/trace-quality.ts";
import { balance } from "../../../sim/study/balance.ts";
import { sunRestRoadSpeed } from "../../../sim/vehicle/figures.ts";
import { PRESETS, presetById, vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { vehicleWarnings } from "../../../sim/vehicle/warnings.ts";
import { faultsOf } from "../../cycles/faults-of.ts";

const ids = PRESETS.map((preset) => preset.id);
const rules = strategyById("rules");

const cycle = (id: string) => {
  const table = STANDARD_TABLES.find((entry) => entry.id === id);
  if (!table) throw new Error(`no table ${id}`);
  return readTable(table);
};

describe("registry of vehicles", () => {
  it("holds every file of the folder, once", () => {
    const folder = new URL("../../../sim/vehicle/presets/", import.meta.url);
    const files = readdirSync(folder).map((name) => name.replace(/\.ts$/, ""));
    const kinds = files.filter((name) => name !== "registry" && name !== "preset");
    expect([...ids].sort()).toEqual(kinds.sort());
    expect(new Set(ids).size).toBe(ids.length);
  });

  it.each(ids)("%s passes the checks without a warning and says that it is invented", (id) => {
    const preset = presetById(id);
    const vehicle = vehicleById(id);
    expect(vehicle.id).toBe(id);
    expect(vehicle.note).toMatch(/^Invented for teaching/);
    expect(preset.about.length).toBeGreaterThan(20);
    expect(() => strategyById(preset.defaultStrategy)).not.toThrow();
    expect(vehicleWarnings(vehicle)).toEqual([]);
    expect(vehicleById(id)).toBe(vehicle);
  });

  it.each(ids)("%s has coast-down figures that say the same as its formula", (id) => {
    const { body } = vehicleById(id);
    expect(body.coastdownA / (body.rollingCoefficient * body.mass * 9.80665)).toBeCloseTo(1, 2);
    expect(body.coastdownC / (0.5 * 1.189 * body.dragArea)).toBeCloseTo(1, 2);
  });

  it("names the known vehicles when asked for another", () => {
    expect(faultsOf(() => vehicleById("lorry"))).toEqual([
      { what: "unknown vehicle", where: "vehicle", value: "lorry", accepted: "compact, family, van" },
    ]);
  });
});

describe("calibration", () => {
  const pairs = ids.flatMap((id) => STANDARD_TABLES.map((table) => [id, table.id] as const));
  // US06 may exceed what a vehicle can do for a few seconds, but then a limit must be logged.
  it.each(pairs)("%s follows %s within 2 mph and 1 s", (id, table) => {
    const vehicle = vehicleById(id);
    const quality = traceQuality(
      simulate(vehicle, cycle(table), rules, { startSoc: vehicle.battery.socTarget }).log,
    );
    if (table !== "us06") expect(quality.secondsOutside).toBe(0);
    expect(quality.secondsOutside).toBeLessThan(10);
    for (const miss of quality.misses) expect(miss.limits.length).toBeGreaterThan(0);
  });

  // Bands of plausible warm, charge-balanced fuel, L/100 km: our own estimate, no outside source.
  it.each([
    ["compact", "udds", 3.0, 3.8],
    ["compact", "hwfet", 3.2, 3.9],
    ["compact", "us06", 4.6, 5.7],
    ["compact", "wltc-class3b", 3.5, 4.3],
    ["family", "wltc-class3b", 4.0, 5.0],
    ["van", "wltc-class3b", 6.0, 7.5],
  ])("%s on %s uses a plausible amount of fuel", (id, table, least, most) => {
    const vehicle = vehicleById(id);
    const result = balance(vehicle, cycle(table), rules, {}, 0.005);
    expect(result.balanced).toBe(true);
    const { litresPer100Km } = consumption(vehicle.fuel, result.fuelEnergy, result.run.b.distance);
    expect(litresPer100Km).toBeGreaterThan(least);
    expect(litresPer100Km).toBeLessThan(most);
  });

  it("starts the compact's engine 25 to 60 times on UDDS and recovers 55 to 85 % of the braking", () => {
    const { b, c } = simulate(vehicleById("compact"), cycle("udds"), rules);
    expect(c.starts).toBeGreaterThanOrEqual(25);
    expect(c.starts).toBeLessThanOrEqual(60);
    expect(b.recovered / b.brakingAsked).toBeGreaterThan(0.55);
    expect(b.recovered / b.brakingAsked).toBeLessThan(0.85);
  });

  it("rests the compact's sun near 100 km/h at 22 kW of engine power", () => {
    expect(sunRestRoadSpeed(vehicleById("compact"), 22000) * 3.6).toBeGreaterThan(94);
    expect(sunRestRoadSpeed(vehicleById("compact"), 22000) * 3.6).toBeLessThan(106);
  });

  it.each([
    ["compact", 10.3, 12],
    ["family", 9, 10],
    ["van", 13, 15.5],
  ])("%s reaches 100 km/h in a plausible time", (id, least, most) => {
    const vehicle = vehicleById(id);
    const { zeroTo100 } = limitsRun(vehicle, rules, { startSoc: vehicle.battery.socTarget });
    expect(zeroTo100).toBeGreaterThan(least);
    expect(zeroTo100).toBeLessThan(most);
  });

  it("drives the family 40 to 60 km of WLTC before the engine starts", () => {
    const vehicle = vehicleById("family");
    let soc = vehicle.battery.socStart;
    let metres = 0;
    for (let round = 0; round < 4; round += 1) {
      const run = simulate(vehicle, cycle("wltc-class3b"), strategyById("electric-first"), { startSoc: soc });
      const first = run.log.view("engineOn").findIndex((on) => on > 0);
      if (first >= 0) {
        metres += run.log.view("distance")[first] ?? 0;
        break;
      }
      metres += run.b.distance;
      soc = run.s.soc;
    }
    expect(metres).toBeGreaterThan(40_000);
    expect(metres).toBeLessThan(60_000);
  });
});
