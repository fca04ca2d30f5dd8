import { describe, expect, it } from "vitest";
import { boundOf } from "../../../sim/study/optimum/bound.ts";
import { idealSource, type Point, problemFrom } from "./problems.ts";

/**
 * Economic dispatch: what the machines of a power station should each make so that a demand costs least. Turned into a
 * drive, the machines become seconds, and the demand becomes the energy to be in the battery at the end. Textbook
 * optima; the same solver as for a vehicle.
 */
interface Dispatch {
  readonly id: string;
  readonly source: string;
  /** cost = a + b P + c P², and limits of P */
  readonly units: readonly (readonly [a: number, b: number, c: number, least: number, most: number])[];
  readonly demand: number;
  readonly power: readonly number[];
  readonly cost: number;
}

const DISPATCHES: readonly Dispatch[] = [
  {
    id: "L1",
    source: "Wood and Wollenberg, Power Generation, Operation and Control, Example 3A; cost derived",
    units: [
      [561, 7.92, 0.001562, 150, 600],
      [310, 7.85, 0.00194, 100, 400],
      [78, 7.97, 0.00482, 50, 200],
    ],
    demand: 850,
    power: [393.17, 334.604, 122.226],
    cost: 8194.36,
  },
  {
    id: "L2",
    source: "Saadat, Power System Analysis, Example 7.4 (answers from memory and computed again)",
    units: [
      [500, 5.3, 0.004, 200, 450],
      [400, 5.5, 0.006, 150, 350],
      [200, 5.8, 0.009, 100, 225],
    ],
    demand: 800,
    power: [400, 250, 150],
    cost: 6682.5,
  },
  {
    id: "L3",
    source: "Wadhwa, Electrical Power Systems, Example 19.1",
    units: [
      [120, 40, 0.2, 30, 150],
      [150, 30, 0.25, 30, 150],
    ],
    demand: 180,
    power: [88.89, 91.11],
    cost: 10_214.44,
  },
];

/** Points in steps from the least to the most a unit makes; making is charging. */
function pointsOf([a, b, c, least, most]: Dispatch["units"][number], count: number): Point[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const made = least + ((most - least) * i) / count;
    return { power: -made, fuel: a + b * made + c * made * made };
  });
}

function solved(dispatch: Dispatch, points: number, steps: number) {
  const energy = 2000;
  const problem = problemFrom(
    dispatch.units.map((unit) => ({ points: pointsOf(unit, points), rest: Number.NaN })),
    { source: idealSource(energy), startSoc: 0.1, endSoc: 0.1 + dispatch.demand / energy },
  );
  const bound = boundOf(problem, steps);
  if (!bound) throw new Error("not cancelled");
  return bound;
}

describe("dynamic programming on economic dispatch", () => {
  it.each(DISPATCHES)("$id costs what the book says ($source)", (dispatch) => {
    const bound = solved(dispatch, 240, 400);
    expect(bound.path.feasible).toBe(true);
    expect(Math.abs(bound.path.fuelEnergy / dispatch.cost - 1)).toBeLessThan(1e-4);
    expect(Math.abs(bound.path.fuelEnergy - dispatch.cost)).toBeLessThan(bound.gridError + 0.01);
    for (const [i, power] of dispatch.power.entries()) {
      // The optimum is flat: a unit's power is only found to within some grid intervals.
      expect(Math.abs(-(bound.path.battery[i] ?? 0) - power)).toBeLessThan(0.02 * dispatch.demand);
    }
    const made = bound.path.battery.reduce((sum, power) => sum - power, 0);
    expect(Math.abs(made - dispatch.demand)).toBeLessThan(1e-6);
  });

  it.each(DISPATCHES)("$id: a finer grid comes nearer, and the stated error holds", (dispatch) => {
    const errors = [15, 60, 240].map((points) => {
      const bound = solved(dispatch, points, 2 * points);
      const off = Math.abs(bound.path.fuelEnergy - dispatch.cost);
      expect(off).toBeLessThan(bound.gridError + 0.01);
      return off;
    });
    expect(errors[2] ?? 1).toBeLessThan((errors[0] ?? 0) / 4 + 0.01);
  });
});
