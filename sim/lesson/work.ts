import { InputError } from "../../shared/errors.ts";
import { evaluate, holds, type StageFor, workingFor } from "./evaluate.ts";
import { quantitiesIn, quantitiesOf } from "./expression/tree.ts";
import { type LessonFault, LessonFaults } from "./faults.ts";
import type { Ask, Block, ChoiceAsk, Inline, Lesson, NumberAsk, Pointer, Scene, Step } from "./lesson.ts";
import type { Stage } from "./quantities/quantity.ts";
import { quantityByName } from "./quantities/registry.ts";
import { engineRuns, type RunSource } from "./runs.ts";
import { sayValue } from "./say.ts";
import { regimeOn, regimeWords, stageOf } from "./stage.ts";
import { unitById } from "./units.ts";
import { mapBlocks, mapInlines, type ValueNode } from "./walk.ts";
import type { Working } from "./working.ts";

interface WorkedBase {
  readonly line: number;
  readonly name: string;
  readonly question: readonly Inline[];
  /** names of the quantities that the answer is made of: a view shows none of them until it is given */
  readonly hides: readonly string[];
}

/** A question for a number with its key. */
export interface WorkedNumber extends WorkedBase {
  readonly kind: "number";
  /** SI */
  readonly key: number;
  readonly unit: string;
  /** SI: as far off is still right */
  readonly tolerance: number;
  /** the key as text with its unit */
  readonly keyText: string;
  /** `± 2 %` */
  readonly toleranceText: string;
  readonly working: Working;
}

/** A question with its choices. */
export interface WorkedChoice extends WorkedBase {
  readonly kind: "choice";
  readonly choices: readonly { readonly text: readonly Inline[]; readonly right: boolean }[];
  /** of what decides the right one; null when nothing is computed for it */
  readonly working: Working | null;
}

/** A question whose key is known. */
export type WorkedAsk = WorkedNumber | WorkedChoice;

/** A step with everything computed. */
export interface WorkedStep {
  readonly line: number;
  readonly title: string;
  readonly body: readonly Block[];
  /** all scenes of the step in their order; the stage shows the last */
  readonly scenes: readonly Scene[];
  /** what stands on the stage: the last scene of this step or of one before; null for none yet */
  readonly stage: Scene | null;
  readonly points: readonly Pointer[];
  readonly asks: readonly WorkedAsk[];
}

/** A lesson with every value and key computed. Plain data. */
export interface WorkedLesson extends Omit<Lesson, "steps"> {
  readonly steps: readonly WorkedStep[];
}

/** A lesson computed as far as it goes. */
export interface LessonWork {
  readonly worked: WorkedLesson;
  readonly faults: readonly LessonFault[];
}

/** A key smaller than this is nothing that a share could be taken of. */
const NOTHING = 1e-9;

function toleranceText({ relative, absolute }: NumberAsk["tolerance"], unit: string): string {
  const own = unitById(unit);
  const shown = own.fromSi(absolute) - own.fromSi(0);
  const plain = String(Number(shown.toPrecision(6)));
  const far =
    own.id === "%"
      ? `${plain} point${plain === "1" ? "" : "s"}`
      : `${plain}${own.id === "" ? "" : `\u00a0${own.id}`}`;
  const parts = [
    ...(relative > 0 ? [`±\u00a0${Number((100 * relative).toPrecision(6))}\u00a0%`] : []),
    ...(absolute > 0 ? [`±\u00a0${far}`] : []),
  ];
  return parts.join(" or ");
}

/** The stages of the steps, each scene set up once. */
class Player {
  private stage: Stage | null = null;
  private scene: Scene | null = null;
  private readonly named = new Map<string, Stage>();

  constructor(
    private readonly runs: RunSource,
    private readonly faults: LessonFaults,
  ) {}

  private readonly stages: StageFor = (run) => {
    const found = run === null ? this.stage : this.named.get(run);
    if (!found)
      throw new InputError({ what: "there is no stage", where: "", value: run ?? "", accepted: "" });
    return found;
  };

  play(step: Step): WorkedStep {
    for (const scene of step.scenes) {
      this.stage = stageOf(scene, this.runs, this.faults);
      this.scene = scene;
      if (this.stage?.kind === "run") this.named.set(this.stage.name, this.stage);
    }
    return {
      line: step.line,
      title: step.title,
      body: mapBlocks(step.body, (value) => this.filled(value)),
      scenes: step.scenes,
      stage: this.scene,
      points: step.points,
      asks: step.asks.flatMap((ask) => this.faults.trying(ask.line, () => this.ask(ask)) ?? []),
    };
  }

  private filled(value: ValueNode): Inline {
    const words = this.faults.trying(value.line, () => {
      if (!value.expression) return regimeWords(regimeOn(this.stages(value.run)) ?? "");
      return sayValue(evaluate(value.expression, this.stages), unitById(value.unit));
    });
    return { ...value, text: words ?? "–" };
  }

  private texts(inlines: readonly Inline[]): readonly Inline[] {
    return mapInlines(inlines, (value) => this.filled(value));
  }

  private ask(ask: Ask): WorkedAsk {
    return ask.kind === "number" ? this.number(ask) : this.choice(ask);
  }

  private number(ask: NumberAsk): WorkedNumber {
    const unit = unitById(ask.unit);
    const key = evaluate(ask.key, this.stages);
    const { relative, absolute } = ask.tolerance;
    if (!Number.isFinite(key)) {
      this.faults.add(ask.line, "the key is no number here", ask.source, "a quantity that has a value");
    } else if (Math.abs(unit.fromSi(key)) < NOTHING && absolute === 0) {
      const accepted = "a tolerance in the answer's unit, such as 5 rev/min";
      this.faults.add(ask.line, "the key is 0, and a share of 0 is nothing", ask.source, accepted);
    }
    return {
      line: ask.line,
      name: ask.name,
      question: this.texts(ask.question),
      hides: quantitiesIn(ask.key).map(({ name }) => name),
      kind: "number",
      key,
      unit: ask.unit,
      tolerance: Math.max(relative * Math.abs(key), absolute),
      keyText: sayValue(key, unit),
      toleranceText: toleranceText(ask.tolerance, ask.unit),
      working: workingFor(ask.key, this.stages, unit),
    };
  }

  private choice(ask: ChoiceAsk): WorkedChoice {
    const choices = ask.choices.map(({ text, when }) => ({
      text: this.texts(text),
      right: holds(when, this.stages),
      when,
    }));
    const right = choices.filter((choice) => choice.right);
    if (right.length !== 1) {
      const what = right.length === 0 ? "no choice is true here" : `${right.length} choices are true here`;
      this.faults.add(ask.line, what, ask.name, "conditions of which exactly one holds");
    }
    const named = choices.flatMap(({ when }) => quantitiesOf(when));
    const [decisive] = right.flatMap(({ when }) => quantitiesOf(when));
    const unit = decisive && quantityByName(decisive.name)?.unit;
    return {
      line: ask.line,
      name: ask.name,
      question: this.texts(ask.question),
      hides: [...new Set(named.map(({ name }) => name))],
      kind: "choice",
      choices: choices.map(({ text, right: good }) => ({ text, right: good })),
      working: decisive && unit ? workingFor(decisive, this.stages, unit) : null,
    };
  }
}

/**
 * Computes every value and key of a lesson, and books what cannot be.
 * @param file what messages call it
 * @param runs where runs come from
 */
export function workLessonText(lesson: Lesson, file: string, runs: RunSource = engineRuns()): LessonWork {
  const faults = new LessonFaults(file);
  const player = new Player(runs, faults);
  const steps = lesson.steps.map((step) => player.play(step));
  return { worked: { ...lesson, steps }, faults: faults.sorted };
}

/**
 * Computes every value and key of a lesson.
 * @throws InputError with line numbers for what cannot be computed
 */
export function workLesson(lesson: Lesson, file: string, runs?: RunSource): WorkedLesson {
  const { worked, faults } = workLessonText(lesson, file, runs);
  if (faults.length > 0) throw new InputError(faults);
  return worked;
}
