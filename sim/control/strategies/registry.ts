import { InputError } from "../../../shared/errors.ts";
import type { StrategyDefinition } from "../strategy.ts";
import { electricFirst } from "./electric-first.ts";
import { equivalent, equivalentAdapted } from "./equivalent.ts";
import { engineAlwaysOn, noRegeneration, rules } from "./rules.ts";
import { thermostat } from "./thermostat.ts";

/** Every strategy that can be named. The first is the default. */
export const STRATEGIES: readonly StrategyDefinition[] = [
  rules,
  thermostat,
  electricFirst,
  equivalent,
  equivalentAdapted,
  noRegeneration,
  engineAlwaysOn,
];

/**
 * @throws InputError naming the known strategies
 */
export function strategyById(id: string): StrategyDefinition {
  const found = STRATEGIES.find((strategy) => strategy.id === id);
  if (found) return found;
  throw new InputError({
    what: "unknown strategy",
    where: "strategy",
    value: id,
    accepted: STRATEGIES.map((strategy) => strategy.id).join(", "),
  });
}
