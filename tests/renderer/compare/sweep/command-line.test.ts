import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { sweepCommand } from "../../../../renderer/compare/sweep/command-line.ts";
import { readArguments } from "../../../../sim/cli/arguments.ts";
import { readAxis } from "../../../../sim/cli/commands/sweep.ts";
import { readMany } from "../../../../sim/cli/many.ts";
import { SWEEP_OPTIONS } from "../../../../sim/cli/many-options.ts";
import type { SweepPlan } from "../../../../sim/study/sweep/plan.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const plan: SweepPlan = {
  vehicles: [vehicleById("compact")],
  axes: [
    { path: "battery.capacityAh", values: ["4", "5.5", "7"] },
    { path: "run.coldStart", values: ["false", "true"] },
  ],
  cycles: [cycleById("nycc")],
  strategies: [
    { kind: "built-in", id: "rules" },
    { kind: "built-in", id: "thermostat" },
  ],
  options: { payload: 120, headWind: -3, airTemperature: 268.15, startSoc: 0.55, coldStart: true },
  optimum: true,
};

/** Words of a POSIX shell's line: blanks part them, single quotes keep them together. */
const words = (line: string): string[] =>
  [...line.matchAll(/(?:'([^']*)'|[^\s'])+/g)].map(([found]) => found.replaceAll("'", ""));

describe("the command of a sweep", () => {
  it("is read by the command line as the same plan", async () => {
    const { text, files } = sweepCommand(plan, () => true);
    const [npm, run, s, cli, dashes, sweep, ...rest] = words(text);
    expect([npm, run, s, cli, dashes, sweep]).toEqual(["npm", "run", "-s", "cli", "--", "sweep"]);
    const targets = rest.slice(-4);
    expect(targets).toEqual(["--out", "sweep.json", "--csv", "sweep.csv"]);
    const args = readArguments("sweep", rest.slice(0, -4), SWEEP_OPTIONS);
    const read = await readMany(args, args.texts("vary").map(readAxis));
    expect(read.plan).toEqual(plan);
    expect(files).toBe(false);
  });

  it("names the files of own vehicles, cycles and strategies, and says that there are some", () => {
    const own: SweepPlan = {
      ...plan,
      vehicles: [{ ...vehicleById("van"), id: "van-2", name: "My van, long" }],
      cycles: [{ ...cycleById("nycc"), id: "driven-1", title: "Drive 1" }],
      strategies: [{ kind: "own", title: "Late charger", text: "" }],
    };
    const { text, files } = sweepCommand(own, () => false);
    expect(files).toBe(true);
    expect(text).toContain("--vehicle My-van-long.json --cycle Drive-1.csv --strategy Late-charger.js");
  });

  it("writes unevenly spaced values one by one", () => {
    const uneven = { ...plan, axes: [{ path: "gearSet.planets", values: ["3", "4", "6"] }] };
    expect(sweepCommand(uneven, () => true).text).toContain("--vary gearSet.planets=3,4,6 ");
  });
});
