import { loadOwnStrategies } from "../../sim/control/own/load.ts";
import { strategyById } from "../../sim/control/strategies/registry.ts";
import type { StrategyDefinition } from "../../sim/control/strategy.ts";
import type { ComparedStrategy } from "../../sim/study/compare/job.ts";
import type { RunRequest } from "./contract.ts";

/** Start of an own strategy's random numbers: the command line's, so that both give the same run. */
export const OWN_SEED = 1;

/** A strategy ready to be driven in this thread; closing gives the memory of an own one's runs back. */
export interface ReadyStrategy extends StrategyDefinition {
  readonly close?: () => void;
}

/** The strategy that a request names. */
export const chosenIn = ({ strategy, own }: Pick<RunRequest, "strategy" | "own">): ComparedStrategy =>
  own ? { kind: "own", ...own } : { kind: "built-in", id: strategy };

/** @throws InputError for an unknown id, or an own text that is empty or too long */
export async function readyStrategy(chosen: ComparedStrategy): Promise<ReadyStrategy> {
  if (chosen.kind === "built-in") return strategyById(chosen.id);
  const sandbox = await loadOwnStrategies();
  return sandbox.strategy({ name: chosen.title, text: chosen.text, seed: OWN_SEED });
}

/** Does some work with a strategy and closes it. @throws whatever the work throws */
export async function withStrategy<T>(
  chosen: ComparedStrategy,
  work: (strategy: StrategyDefinition) => T,
): Promise<T> {
  const strategy = await readyStrategy(chosen);
  try {
    return work(strategy);
  } finally {
    strategy.close?.();
  }
}
