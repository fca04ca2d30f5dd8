import { type Condition, type Expression, quantitiesIn, quantitiesOf } from "./expression/tree.ts";
import type { LessonFaults } from "./faults.ts";
import type { Ask, Lesson, Scene, Step } from "./lesson.ts";
import type { Quantity } from "./quantities/quantity.ts";
import { quantityByName } from "./quantities/registry.ts";
import { valuesOf } from "./walk.ts";

/** The scene that quantities without a run's name are read from, and the runs that have a name so far. */
interface Standing {
  readonly stage: Scene | null;
  readonly runs: ReadonlyMap<string, Scene>;
}

/** What stands in each step: a step without a scene keeps that of the step before. */
export function standings(lesson: Lesson): readonly Standing[] {
  let stage: Scene | null = null;
  const runs = new Map<string, Scene>();
  return lesson.steps.map((step) => {
    for (const scene of step.scenes) {
      stage = scene;
      if (scene.kind === "run") runs.set(scene.name, scene);
    }
    return { stage, runs: new Map(runs) };
  });
}

/** Why a quantity cannot be read from a scene; null when it can. */
function unreadable(quantity: Quantity, scene: Scene | null): string | null {
  if (scene === null) return "nothing stands on the stage yet";
  if (scene.kind === "bench") return quantity.bench ? null : "this is no quantity of the bench";
  if (quantity.run) return null;
  if (!quantity.moment) return "this is no quantity of a run";
  return scene.at === null ? "this belongs to an instant, and the run names none" : null;
}

class Checker {
  constructor(
    private readonly standing: Standing,
    private readonly faults: LessonFaults,
  ) {}

  quantities(line: number, named: readonly (Expression & { kind: "quantity" })[]): void {
    for (const { name, run } of named) {
      const quantity = quantityByName(name);
      const scene = this.scene(line, run);
      const why = quantity && scene !== undefined ? unreadable(quantity, scene) : null;
      if (why !== null) this.faults.add(line, why, name, howToHave(quantity));
    }
  }

  /** The scene of a run's name; undefined, and a fault, when there is none. */
  scene(line: number, run: string | null): Scene | null | undefined {
    if (run === null) return this.standing.stage;
    const found = this.standing.runs.get(run);
    if (found) return found;
    const known = [...this.standing.runs.keys()];
    const accepted = known.length > 0 ? known.join(", ") : "the name: of a run block in this step or before";
    this.faults.add(line, "no run is called this so far", run, accepted);
    return undefined;
  }

  regime(line: number, run: string | null): void {
    const scene = this.scene(line, run);
    if (scene === null)
      this.faults.add(line, "nothing stands on the stage yet", "regime", "a bench or run block");
    if (scene?.kind === "run" && scene.at === null) {
      this.faults.add(line, "a regime belongs to an instant, and the run names none", "regime", "at: 120 s");
    }
  }

  condition(line: number, condition: Condition): void {
    this.quantities(line, quantitiesOf(condition));
    const each = condition.kind === "and" ? condition.all : [condition];
    for (const part of each) if (part.kind === "regime") this.regime(line, part.run);
  }

  ask(ask: Ask): void {
    if (ask.kind === "number") this.quantities(ask.line, quantitiesIn(ask.key));
    else for (const choice of ask.choices) this.condition(choice.line, choice.when);
  }
}

function howToHave(quantity: Quantity | undefined): string {
  const ways = [
    ...(quantity?.bench ? ["a bench block"] : []),
    ...(quantity?.run ? ["a run block"] : []),
    ...(quantity?.moment ? ["a run block with at: 120 s, or at: first-start"] : []),
  ];
  return `${ways.join(" or ")} in this step or before`;
}

function checkStep(step: Step, standing: Standing, faults: LessonFaults): void {
  const checker = new Checker(standing, faults);
  for (const value of valuesOf(step)) {
    if (value.expression) checker.quantities(value.line, quantitiesIn(value.expression));
    else checker.regime(value.line, value.run);
  }
  for (const ask of step.asks) checker.ask(ask);
}

/** Books a fault for each quantity that a step cannot read from what stands on its stage. */
export function checkReferences(lesson: Lesson, faults: LessonFaults): void {
  const standing = standings(lesson);
  lesson.steps.forEach((step, index) => {
    const here = standing[index];
    if (here) checkStep(step, here, faults);
  });
}
