import { describe, expect, it } from "vitest";
import { cycleById, listCycles } from "../../../../cycles/catalogue.ts";
import { STRATEGIES } from "../../../../sim/control/strategies/registry.ts";
import { simulate } from "../../../../sim/run/simulate.ts";
import { distanceOf } from "../../../../sim/study/optimum/distance.ts";
import { type Grid, STANDARD_GRID } from "../../../../sim/study/optimum/grid.ts";
import { PRESETS, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { notCancelled } from "./cases.ts";

/** Every preset and standard cycle takes minutes: TRISHAFT_WHOLE_BOUND=1 asks for it. */
const whole = process.env.TRISHAFT_WHOLE_BOUND === "1";
const standard = listCycles().map(({ id }) => id);
const pairs: readonly (readonly [string, string])[] = whole
  ? PRESETS.flatMap(({ id }) =>
      ["udds", "hwfet", "us06", "sc03", "la92", "nycc", "wltc-class3b", "jc08", "nedc"].map(
        (cycle) => [id, cycle] as const,
      ),
    )
  : [
      ["compact", "nycc"],
      ["compact", "us06"],
      ["van", "sc03"],
      ["family", "nycc"],
    ];

/** A coarser grid is enough to hold strategies against a bound that states its error. */
const GRID: Grid = { stage: 1, socSteps: 100, points: 30, speeds: 1 };

/** By how much a run may beat the bound in the forward model, which counts more than the quasi-static one. */
const FORWARD = 0.01;

describe("no strategy beats the optimum on the demand that it drove", () => {
  it("knows the cycles", () => {
    for (const [, cycle] of pairs) expect(standard).toContain(cycle);
  });

  it.each(pairs)(
    "%s on %s: quasi-statically not beyond the grid error, forward by at most 1 per cent",
    (id, cycle) => {
      const vehicle = vehicleById(id);
      const startSoc = vehicle.battery.socTarget;
      for (const strategy of STRATEGIES) {
        const run = simulate(vehicle, cycleById(cycle), strategy, { startSoc });
        const distance = notCancelled(distanceOf(run, strategy.regeneration, whole ? STANDARD_GRID : GRID));
        expect(distance.optimum.feasible, strategy.id).toBe(true);
        expect(distance.quasiStatic.over, strategy.id).toBeGreaterThan(-distance.gridError);
        expect(distance.forward.over, strategy.id).toBeGreaterThan(-FORWARD);
      }
    },
    600_000,
  );
});

describe("the difference between a run and its quasi-static count", () => {
  const run = simulate(vehicleById("compact"), cycleById("udds"), STRATEGIES[0] ?? never(), {
    startSoc: 0.58,
  });
  const { items, evaluation } = notCancelled(distanceOf(run, true, GRID));

  it("is itemised without a remainder, on both sides", () => {
    const sum = (of: (item: (typeof items)[number]) => number): number =>
      items.reduce((total, item) => {
        const source = ["running_fuel", "start_fuel", "battery"].includes(item.id);
        return total + (source ? of(item) : -of(item));
      }, 0);
    const starts = run.b.startFuel;
    // The extra fuel of the starts is a source and all heat; the RC pair keeps a little.
    expect(Math.abs(sum(({ quasiStatic }) => quasiStatic) - starts)).toBeLessThan(1);
    expect(Math.abs(sum(({ run: driven }) => driven) - starts)).toBeLessThan(1000);
    expect(evaluation.beyond).toEqual([]);
  });

  it("is small: each line within 1 % of the fuel, road and brakes within 0.1 %", () => {
    const fuel = run.b.runningFuel + run.b.startFuel;
    for (const item of items) {
      const share = Math.abs(item.run - item.quasiStatic) / fuel;
      expect(share, item.id).toBeLessThan(0.01);
      if (["wheels", "brake", "auxiliary", "start_fuel"].includes(item.id))
        expect(share, item.id).toBeLessThan(0.001);
    }
  });
});

function never(): never {
  throw new Error("there is a first strategy");
}
