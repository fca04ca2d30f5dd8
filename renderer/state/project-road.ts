import { cycleById } from "../../cycles/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { CycleChoice, Project } from "../../shared/project.ts";
import { strategyById } from "../../sim/control/strategies/registry.ts";
import { type RunOptions, runSettings } from "../../sim/options.ts";

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

function traceOf(table: Extract<CycleChoice, { kind: "table" }>): CycleTrace {
  const { kind: _, time, speed, grade, ...rest } = table;
  return {
    ...rest,
    time: Float64Array.from(time),
    speed: Float64Array.from(speed),
    grade: Float64Array.from(grade),
  };
}

const tableOf = (trace: CycleTrace): CycleChoice => ({
  kind: "table",
  id: trace.id,
  title: trace.title,
  source: trace.source,
  time: [...trace.time],
  speed: [...trace.speed],
  grade: [...trace.grade],
  phases: trace.phases.map((phase) => ({ ...phase })),
  soaks: trace.soaks.map((soak) => ({ ...soak })),
  treatment: [...trace.treatment],
});

/** What a project says of Road. @throws InputError for an unknown cycle or strategy, or options out of range */
export function roadOfProject(project: Project): RoadChoice {
  const { cycle, strategies, runOptions } = project;
  const first = strategies.find((one) => one.kind === "built-in");
  const strategy = first ? strategyById(first.id).id : "rules";
  const options = runOptions as RunOptions;
  runSettings(options, ANY);
  if (cycle.kind === "table") {
    const own = traceOf(cycle);
    return { cycle: own.id, own: [own], strategy, options };
  }
  cycleById(cycle.line);
  return { cycle: cycle.line, own: [], strategy, options };
}

/** A project with this choice in it, everything else as it was. */
export function projectWithRoad(project: Project, choice: RoadChoice): Project {
  const own = choice.own.find((cycle) => cycle.id === choice.cycle);
  const others = project.strategies.filter((one) => one.kind === "own" || one.id !== choice.strategy);
  return {
    ...project,
    cycle: own ? tableOf(own) : { kind: "catalogue", line: choice.cycle },
    strategies: [{ kind: "built-in", id: choice.strategy }, ...others],
    runOptions: { ...choice.options },
  };
}
