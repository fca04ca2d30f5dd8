import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { LEDGER_LINES } from "../../../sim/run/ledger.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import type { Simulation } from "../../../sim/run/simulation.ts";

/**
 * The closed-form energy of a drive cycle (Guzzella and Sciarretta, Vehicle Propulsion Systems, ch. 2: mean tractive
 * force ½ ρ Af cd·Xa + m g cr·Xr + m·Xm). Book figures from memory; the factors of the tables derived from them.
 */
const AIR = 1.2;
const GRAVITY = 9.80665;

/** The book's full-size example on the compact's drivetrain: m 1500, cd Af 0.7, cr 0.012. */
const example = vehicleSchema.parse({ body: { mass: 1500, dragArea: 0.7, rollingCoefficient: 0.012 } });

function lineOf(run: Simulation, id: string): number {
  const index = LEDGER_LINES.findIndex((line) => line.id === id);
  return at(run.log.ledgerLine(index), run.log.rows - 1);
}

/** Energy at the wheels while pulling, J: rolling, air and mass by the speed driven, where their sum is positive. */
function tractive(run: Simulation): number {
  const speed = run.log.view("speed");
  const { mass, dragArea, rollingCoefficient } = example.body;
  let sum = 0;
  for (let i = 1; i < run.log.rows; i += 1) {
    const v = (at(speed, i) + at(speed, i - 1)) / 2;
    const a = (at(speed, i) - at(speed, i - 1)) / 0.1;
    if (v < 0.01 || a < -1e-3) continue;
    sum +=
      (0.5 * AIR * dragArea * v * v + mass * GRAVITY * rollingCoefficient + mass * Math.max(0, a)) * v * 0.1;
  }
  return sum;
}

describe("wheel energy over the old European cycle", () => {
  const run = simulate(example, cycleById("nedc"), rules, { airDensity: AIR });
  const per100 = 100_000 / run.b.travelled / 1000;

  it("C5 without recuperation: 44 980 kJ/100 km on this trace (book formula 43 420), within 5 %", () => {
    const energy = tractive(run) * per100;
    expect(Math.abs(energy / 44980 - 1)).toBeLessThan(0.05);
    expect(Math.abs(energy / 43420 - 1)).toBeLessThan(0.07);
  });

  it("C6 with full recuperation: rolling and air of the ledger, 33 058 kJ/100 km, within 2 %", () => {
    const energy = (lineOf(run, "rolling") + lineOf(run, "air")) * per100;
    expect(Math.abs(energy / 33058 - 1)).toBeLessThan(0.02);
  });
});

/** Distance, m, and ∫v³dt/x, m²/s², of the published tables (derived from them). */
const FACTORS: Record<string, readonly [number, number]> = {
  udds: [11990.2, 219.2],
  hwfet: [16506.5, 517.3],
  us06: [12887.6, 769.9],
  sc03: [5760.6, 232.7],
  la92: [15797.4, 380.7],
  nycc: [1898.4, 59.7],
  "wltc-class3b": [23266.3, 514.7],
  jc08: [8159.4, 191.2],
  nedc: [11028.2, 362.0],
};

describe("rolling and air of a run that follows its cycle", () => {
  for (const [id, [distance, cube]] of Object.entries(FACTORS)) {
    it(`${id}: m g cr x and ½ρ Af cd Xa x, within 0.6 %`, () => {
      const run = simulate(example, cycleById(id), rules, { airDensity: AIR });
      const { mass, dragArea, rollingCoefficient } = example.body;
      const rolling = mass * GRAVITY * rollingCoefficient * distance;
      const air = 0.5 * AIR * dragArea * cube * distance;
      expect(Math.abs(lineOf(run, "rolling") / rolling - 1)).toBeLessThan(0.006);
      // The driver rounds the corners of the trace, so that v³ comes out a little lower on the sharpest cycles.
      expect(Math.abs(lineOf(run, "air") / air - 1)).toBeLessThan(
        id === "nycc" || id === "us06" ? 0.02 : 0.01,
      );
    });
  }
});
