import { cycleById } from "../../../../cycles/catalogue.ts";
import { rules } from "../../../../sim/control/strategies/rules.ts";
import type { RunOptions } from "../../../../sim/options.ts";
import { simulate } from "../../../../sim/run/simulate.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

/** Runs that between them hold every kind of flow. */
const CHOSEN: readonly (readonly [string, string, RunOptions])[] = [
  ["compact", "udds", {}],
  ["compact", "us06", {}],
  ["compact", "cruise", {}],
  ["compact", "hill-down", { startSoc: 0.75 }],
  ["compact", "back-up", {}],
  ["van", "us06", {}],
];

/** Those runs, simulated. */
export const runsOfAllKinds = () =>
  CHOSEN.map(([vehicle, cycle, options]) => ({
    name: `${vehicle} on ${cycle}`,
    log: simulate(vehicleById(vehicle), cycleById(cycle), rules, options).log,
  }));

/** Rows spread over a log, `count` of them, the first and the last among them. */
export const spread = (rows: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => Math.round((i * (rows - 1)) / (count - 1)));
