import { basename } from "node:path";
import { OWN_LIMITS } from "../control/own/contract.ts";
import { loadOwnStrategies } from "../control/own/load.ts";
import { STRATEGIES, strategyById } from "../control/strategies/registry.ts";
import type { StrategyDefinition } from "../control/strategy.ts";
import { prepare } from "../drivetrain/prepared.ts";
import { type RunOptions, runSettings } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import type { ComparedStrategy } from "../study/compare/job.ts";
import { PRESETS } from "../vehicle/presets/registry.ts";
import { looksLikeFile, readText } from "./files.ts";
import { withNearest } from "./suggest.ts";

/** Start of an own strategy's random numbers: the same in every run, so that it can be repeated. */
export const OWN_SEED = 1;

/**
 * The strategy named by an id, or the text of a person's own.
 * @throws InputError for an unknown id or a file that cannot be read
 */
export function readStrategy(name: string): ComparedStrategy {
  const known = STRATEGIES.map((strategy) => strategy.id);
  if (known.includes(name)) return { kind: "built-in", id: name };
  if (looksLikeFile(name)) {
    return { kind: "own", title: basename(name), text: readText("--strategy", name, 4 * OWN_LIMITS.source) };
  }
  throw withNearest("--strategy", name, known, "a file of your own, such as mine.js", () =>
    strategyById(name),
  );
}

/** The strategy that a vehicle's preset, known by its id, is meant to be driven with; rules for everything else. */
export const usualStrategy = (vehicle: Vehicle): string =>
  PRESETS.find((preset) => preset.id === vehicle.id)?.defaultStrategy ?? "rules";

/** A strategy ready to be driven; closing gives the memory of an own one's runs back. */
export interface ReadyStrategy extends StrategyDefinition {
  readonly close?: () => void;
}

/** A strategy ready to be driven in this thread. */
export async function makeStrategy(chosen: ComparedStrategy): Promise<ReadyStrategy> {
  if (chosen.kind === "built-in") return strategyById(chosen.id);
  const own = await loadOwnStrategies();
  return own.strategy({ name: chosen.title, text: chosen.text, seed: OWN_SEED });
}

/** The strategy asked for, or a vehicle's usual one, ready to be driven. @throws InputError as `readStrategy` */
export const chooseStrategy = (name: string | undefined, vehicle: Vehicle): Promise<ReadyStrategy> =>
  makeStrategy(readStrategy(name ?? usualStrategy(vehicle)));

/**
 * Reads the texts of own strategies without driving, so that a slip is told before long work begins.
 * @throws InputError naming the line
 */
export async function checkStrategies(
  chosen: readonly ComparedStrategy[],
  vehicle: Vehicle,
  options: RunOptions,
): Promise<void> {
  const settings = runSettings(options, {
    startSoc: vehicle.battery.socStart,
    auxiliaryPower: vehicle.auxiliary.power,
  });
  for (const one of chosen) {
    if (one.kind === "built-in") continue;
    const own = await loadOwnStrategies();
    own.check({ name: one.title, text: one.text, seed: OWN_SEED }, prepare(vehicle, settings));
  }
}
