import { beforeAll, describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { ENGINE } from "../../../sim/control/state.ts";
import { STRATEGIES } from "../../../sim/control/strategies/registry.ts";
import type { RunOptions } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { REGIMES, regimes } from "../../../sim/run/regimes.ts";
import { CLOSURE_LIMIT, checkClosure, simulate } from "../../../sim/run/simulate.ts";
import type { Simulation } from "../../../sim/run/simulation.ts";
import { traceQuality } from "../../../sim/run/trace-quality.ts";
import { ENGINE_BRAKING_RATE } from "../../../sim/settings.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const rules = STRATEGIES[0];
if (!rules) throw new Error("no strategies");

interface Piece {
  readonly id: string;
  /** first row and seconds */
  readonly row: number;
  readonly length: number;
}

/** Regimes of the rows from first to last, as pieces. */
function pieces(run: Simulation, first: number, last: number): Piece[] {
  const all = regimes(run.log, run.p);
  const found: Piece[] = [];
  let start = first;
  for (let i = first + 1; i <= last + 1; i += 1) {
    if (i <= last && all[i] === all[start]) continue;
    found.push({ id: REGIMES[at(all, start)]?.id ?? "", row: start, length: (i - start) / 10 });
    start = i;
  }
  return found;
}

/** Rows of the steady part of the descent. */
function steady(run: Simulation): { readonly first: number; readonly last: number } {
  const grade = run.log.view("grade");
  const least = Math.min(...grade);
  const first = grade.indexOf(least);
  return { first: first + 10, last: grade.lastIndexOf(least) - 10 };
}

/** First row at which the engine, once turned up, follows the descent. */
const settled = (run: Simulation, first: number): number => {
  const found = pieces(run, first, run.log.rows - 1).find((piece) => piece.id === "engine-braking");
  return found?.row ?? -1;
};

/** A preset with a full battery on a hill of its own. */
interface Descent {
  readonly vehicle: string;
  readonly cycle: string;
  readonly options: RunOptions;
}

const DESCENTS: Descent[] = [
  // As first seen: the battery fills on the way.
  { vehicle: "van", cycle: "hill-down", options: { startSoc: 0.6, headWind: -5 } },
  ...PRESETS.flatMap(({ id }) =>
    ["hill-down:drop=6%", "hill-down:drop=12%,length=2000m", "hill-down:drop=5%,speed=80km/h"].map(
      (cycle) => ({
        vehicle: id,
        cycle,
        options: { startSoc: vehicleById(id).battery.socCeiling - 0.003 },
      }),
    ),
  ),
];

describe.each(DESCENTS)(
  "a steady descent with a full battery: $vehicle, $cycle",
  ({ vehicle: id, cycle, options }) => {
    const vehicle: Vehicle = vehicleById(id);
    let run: Simulation;
    let first = 0;
    let last = 0;
    beforeAll(() => {
      run = simulate(vehicle, cycleById(cycle), rules, options);
      const rows = steady(run);
      last = rows.last;
      first = settled(run, rows.first);
    });

    it("brings the engine in once and keeps it", () => {
      expect(first).toBeGreaterThan(0);
      const modes = new Set(run.log.engineMode.slice(first, last));
      expect([...modes]).toEqual([ENGINE.running]);
    });

    it("changes no regime for less than three seconds", () => {
      for (const piece of pieces(run, first, last)) expect(piece.length, piece.id).toBeGreaterThan(3);
    });

    it("turns the engine up evenly: never faster than the stated rate, and never back by more than a little", () => {
      const speed = run.log.view("engineSpeed");
      let most = 0;
      for (let i = first + 1; i <= last; i += 1) {
        const change = 10 * (at(speed, i) - at(speed, i - 1));
        expect(Math.abs(change)).toBeLessThan(1.1 * ENGINE_BRAKING_RATE);
        most = Math.max(most, at(speed, i));
        expect(most - at(speed, i)).toBeLessThan(0.05 * vehicle.engine.maxSpeed);
      }
    });

    it("burns nothing, keeps the battery inside its limits, the trace and the ledger", () => {
      expect(Math.max(...run.log.view("fuelPower").slice(first, last))).toBe(0);
      const { maxChargeCurrent, cells, cellVoltageMax, socCeiling } = vehicle.battery;
      expect(Math.min(...run.log.view("batteryCurrent"))).toBeGreaterThanOrEqual(-maxChargeCurrent);
      expect(Math.max(...run.log.view("batteryVoltage"))).toBeLessThanOrEqual(cells * cellVoltageMax);
      expect(Math.max(...run.log.view("soc"))).toBeLessThanOrEqual(socCeiling);
      expect(traceQuality(run.log).secondsOutside).toBe(0);
      expect(checkClosure(run)).toBeLessThanOrEqual(CLOSURE_LIMIT);
    });

    it("takes no charge out of the full battery to turn the engine", () => {
      const soc = run.log.view("soc");
      expect(at(soc, last)).toBeGreaterThan(at(soc, first) - 0.001);
    });
  },
);
