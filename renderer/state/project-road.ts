import { cycleById } from "../../cycles/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { traceOfTable } from "../../shared/cycle-table.ts";
import { ownCycleOf } from "../../shared/own-cycles.ts";
import type { Project, StrategyChoice } from "../../shared/project.ts";
import { withOwnCycles } from "../../shared/project-cycles.ts";
import { strategyById } from "../../sim/control/strategies/registry.ts";
import { type RunOptions, runSettings } from "../../sim/options.ts";
import { freeTitle, ownId, ownTitle } from "./own-strategies.ts";
import { noted, withRecording } from "./recordings.ts";

/** What Road is set to. */
export interface RoadChoice {
  readonly cycle: string;
  /** own cycles, the chosen one among them if it is one */
  readonly own: readonly CycleTrace[];
  readonly strategy: string;
  readonly options: RunOptions;
}

/** Any charge and load will do: the vehicle's own are not known here, and the options are what is checked. */
const ANY = { startSoc: 0.5, auxiliaryPower: 0 };

/** The strategy that a project names first. @throws InputError for an unknown one */
function strategyIdOf(first: StrategyChoice | undefined): string {
  if (!first) return "rules";
  return first.kind === "own" ? ownId(freeTitle([], first.title)) : strategyById(first.id).id;
}

/** A project's strategies with the chosen one first, each named once; rules in place of an own one that is gone. */
function withFirst(strategies: readonly StrategyChoice[], id: string): StrategyChoice[] {
  const title = ownTitle(id);
  const own = strategies.find((one) => one.kind === "own" && one.title === title);
  const first: StrategyChoice = own ?? { kind: "built-in", id: title === null ? id : "rules" };
  const same = (one: StrategyChoice): boolean =>
    one.kind === "own" ? one === own : first.kind === "built-in" && one.id === first.id;
  return [first, ...strategies.filter((one) => !same(one))];
}

/** What a project says of Road. @throws InputError for an unknown cycle or strategy, or options out of range */
export function roadOfProject(project: Project): RoadChoice {
  const { cycle, strategies, runOptions } = project;
  const strategy = strategyIdOf(strategies[0]);
  const options = runOptions as RunOptions;
  runSettings(options, ANY);
  const own = project.ownCycles.map((entry) => noted(ownCycleOf(entry)));
  if (cycle.kind === "table") {
    const listed = own.some((one) => one.id === cycle.id);
    return {
      cycle: cycle.id,
      own: listed ? own : [...own, traceOfTable(cycle)],
      strategy,
      options,
    };
  }
  cycleById(cycle.line);
  return { cycle: cycle.line, own, strategy, options };
}

/**
 * A choice without own cycles, for a store that takes little; Road is set to the usual cycle in place of an own one.
 * The own ones are kept elsewhere (`own-store.ts`).
 */
export const withoutOwn = (choice: RoadChoice): RoadChoice => ({
  ...choice,
  own: [],
  cycle: choice.own.some((one) => one.id === choice.cycle) ? "udds" : choice.cycle,
});

/** A project with this choice in it, everything else as it was. */
export function projectWithRoad(project: Project, choice: RoadChoice): Project {
  const strategies = withFirst(project.strategies, choice.strategy);
  const edited = { ...project, strategies, runOptions: { ...choice.options } };
  return withOwnCycles(edited, choice.own.map(withRecording), choice.cycle);
}
