import { batch, computed, effect, signal, untracked } from "@preact/signals";
import { cycleById } from "../../cycles/catalogue.ts";
import { type BenchPoint, benchAt } from "../../sim/bench/bench.ts";
import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import type { BenchScene, LessonPart, RunScene, Scene, ViewLetter } from "../../sim/lesson/lesson.ts";
import { quantityByName } from "../../sim/lesson/quantities/registry.ts";
import { runSpecOf, speedsOf } from "../../sim/lesson/stage.ts";
import { vehicleOf } from "../../sim/lesson/vehicle-spec.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { logReader } from "../../sim/run/log.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import type { GearSource } from "../bench/gear-source.ts";
import { SHAFT_OF } from "../bench/parts.ts";
import type { PartId } from "../scene/contract.ts";
import { type BenchState, moveShaft, type Stop } from "../state/bench.ts";
import { openLesson } from "../state/lessons.ts";
import { anglesAt, durationOf, type Now, ROW, type Run, readNow, rowAt } from "../state/run.ts";
import { reducedMotion } from "../state/settings.ts";
import { slowing } from "../state/turning.ts";
import { type Angles, turnedOn } from "../state/turns.ts";
import { t } from "../texts/catalogue.ts";
import type { LessonRunReply } from "../workers/lesson-contract.ts";
import { Cancelled } from "../workers/runner.ts";
import { entry, step, stepIndex, workOpen } from "./state.ts";
import { desk } from "./work.ts";

/** Which of the step's scenes is looked at; null: the last, which the step is about. */
export const chosenScene = signal<number | null>(null);

/** What stands on the stage. */
export const scene = computed<Scene | null>(() => {
  const now = step.value;
  if (!now) return null;
  const chosen = chosenScene.value === null ? undefined : now.scenes[chosenScene.value];
  return chosen ?? now.stage;
});

/** A bench scene as a bench has it. */
export function benchStateOf(of: BenchScene): BenchState {
  const { shafts } = of;
  const given = SHAFTS.filter((shaft) => shafts[shaft].role !== "follow");
  return {
    vehicle: of.vehicle.preset,
    speeds: speedsOf(of),
    roles: { sun: shafts.sun.role, carrier: shafts.carrier.role, ring: shafts.ring.role },
    touched: [...SHAFTS.filter((shaft) => !given.includes(shaft)), ...given],
    engineTorque: of.engineTorque.value,
    outputTorque: of.outputTorque?.value ?? null,
  };
}

/** The bench of the step, as it is moved by hand; null where a run or nothing stands on the stage. */
export const bench = signal<BenchState | null>(null);
export const stopped = signal<Stop | null>(null);
/** Whether it was moved since it was set. */
export const moved = signal(false);

export const vehicle = computed<Vehicle>(() =>
  vehicleOf(scene.value?.vehicle ?? { preset: "compact", settings: [] }),
);

export const point = computed<BenchPoint | null>(() => bench.value && benchAt(vehicle.value, bench.value));

/** Sets the bench as the step has it. */
export function setAgain(): void {
  const now = scene.value;
  batch(() => {
    bench.value = now?.kind === "bench" ? benchStateOf(now) : null;
    stopped.value = null;
    moved.value = false;
  });
}

/** Moves a shaft that is free in this step. */
export function setSpeed(shaft: Shaft, speed: number): void {
  if (!bench.value) return;
  const { state, stop } = moveShaft(bench.value, vehicle.value, shaft, speed);
  batch(() => {
    bench.value = state;
    stopped.value = stop;
    moved.value = true;
  });
}

/** Sets a torque that is free in this step, N·m. */
export function setTorque(of: "engineTorque" | "outputTorque", value: number): void {
  if (!bench.value) return;
  bench.value = { ...bench.value, [of]: value };
  moved.value = true;
}

const handAngles = signal<Angles>({ carrier: 0, ring: 0 });

/** Whether the gear set turns by itself. */
export const turning = signal(false);

/** The bench turned for some seconds of the screen's time. */
export function turnFor(seconds: number): void {
  if (bench.value) handAngles.value = turnedOn(handAngles.value, bench.value.speeds, seconds / slowing.value);
}

/** A run that a step shows, or why there is none yet. */
export type StageRun = { readonly run: Run; readonly reply: LessonRunReply } | "under way" | "failed";

const runs = signal<ReadonlyMap<string, StageRun>>(new Map());

/** Runs kept for going back and forth between steps. */
const MOST_RUNS = 8;

const nameOf = (of: RunScene): string => JSON.stringify(runSpecOf(of));

function keep(name: string, one: StageRun): void {
  const others = [...runs.value].filter(([id]) => id !== name);
  runs.value = new Map([...others.slice(1 - MOST_RUNS), [name, one]]);
}

function drop(name: string): void {
  runs.value = new Map([...runs.value].filter(([id]) => id !== name));
}

/** Fetches the run of a scene, if nobody has yet. */
export async function fetchRun(of: RunScene): Promise<void> {
  const name = nameOf(of);
  if (runs.peek().has(name)) return;
  keep(name, "under way");
  const spec = runSpecOf(of);
  try {
    const reply = await desk.inTurn((worker) => worker.lessonRun(spec));
    const { log, regime, summary, vehicle: driven } = reply;
    const request = {
      vehicle: driven,
      cycle: cycleById(of.cycle),
      strategy: of.strategy,
      options: spec.options,
    };
    keep(name, {
      run: { id: 0, name: of.name, request, log: logReader(log), regime, summary, bytes: 0 },
      reply,
    });
  } catch (error) {
    if (error instanceof Cancelled) {
      drop(name);
      return;
    }
    keep(name, "failed");
    tell(t.lesson.failed(faultWords(error)), true);
  }
}

/** The run of the scene on stage; null where a bench or nothing is. */
export const stageRun = computed<StageRun | null>(() => {
  const now = scene.value;
  return now?.kind === "run" ? (runs.value.get(nameOf(now)) ?? "under way") : null;
});

const readyRun = computed(() => {
  const found = stageRun.value;
  return found === null || typeof found === "string" ? null : found.run;
});

/** The row that a scene names: its instant, its moment, or the start of a whole run. */
export function rowOfScene({ at: instant }: RunScene, run: Run): number {
  if (instant === null) return 0;
  if (typeof instant !== "string") return rowAt(run.log, instant.value);
  return run.summary?.moments.find(({ id }) => id === instant)?.row ?? 0;
}

/** The row looked at, moved by hand; null: the one that the scene names. */
export const lookedAt = signal<number | null>(null);

/** The run on the stage at the row looked at; null while there is none. */
export const now = computed<{ readonly run: Run; readonly at: Now } | null>(() => {
  const run = readyRun.value;
  const shown = scene.value;
  if (!run || shown?.kind !== "run") return null;
  const row = Math.min(run.log.rows - 1, lookedAt.value ?? rowOfScene(shown, run));
  return { run, at: readNow(run, row) };
});

/** How long the run on the stage is, s. */
export const runDuration = computed(() => (readyRun.value ? durationOf(readyRun.value.log) : 0));

/** Looks at another time of the run, s. */
export const lookAtTime = (time: number): void => {
  lookedAt.value = Math.round(time / ROW);
};

/** Shaft angles of what stands on the stage, rad. */
export const angles = computed<Angles>(() => {
  const driven = now.value;
  if (!driven) return handAngles.value;
  const { run, at: instant } = driven;
  const { carrier, ring } = anglesAt(run.log, run.request.vehicle, instant.time);
  return { carrier: carrier / slowing.value, ring: ring / slowing.value };
});

/** Speeds and torques of the gear set on the stage. */
export const shaftsNow = computed(() => now.value?.at ?? point.value);

/** The part that a step points at, or that was pressed in the text. */
export const pressedPart = signal<LessonPart | null>(null);
/** The view that was pressed in the text. */
export const pressedView = signal<ViewLetter | null>(null);

/** What is marked on the stage: by the step, or by a press on a word of its text. */
export const pointed = computed(() => {
  const points = step.value?.points ?? [];
  const places = points.flatMap(({ quantity }) => (quantity ? (quantityByName(quantity)?.at ?? []) : []));
  return {
    views: new Set([...points.flatMap(({ view }) => view ?? []), ...[pressedView.value ?? []].flat()]),
    part: pressedPart.value ?? points.find(({ part }) => part !== null)?.part ?? null,
    places: new Set(places),
    said: points.filter(({ say }) => say !== ""),
  };
});

/** Follows the open lesson from now on: works its text, sets the stage of each step. @returns stops following */
export function followLesson(): () => void {
  const stops = [
    effect(() => {
      stepIndex.value;
      openLesson.value;
      batch(() => {
        chosenScene.value = null;
        pressedPart.value = null;
        pressedView.value = null;
      });
    }),
    effect(() => {
      const of = scene.value;
      untracked(() =>
        batch(() => {
          setAgain();
          lookedAt.value = null;
          turning.value = false;
        }),
      );
      if (of?.kind === "run") void fetchRun(of);
    }),
    effect(() => {
      entry.value;
      void untracked(workOpen);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** Turns a part's shaft by hand, rad; the others go along as their speeds do. */
function turnPart(part: PartId, by: number): void {
  const shaft = SHAFT_OF[part];
  const state = bench.value;
  if (!state || !shaft || Math.abs(state.speeds[shaft]) < 1e-6) return;
  turning.value = false;
  handAngles.value = turnedOn(handAngles.value, state.speeds, by / state.speeds[shaft]);
}

const REST = { sun: 0, carrier: 0, ring: 0 };

/** The gear set as the step has it. */
export const lessonGear: GearSource = {
  vehicle,
  angles,
  torques: computed(() => shaftsNow.value?.torques ?? REST),
  words: "lesson-gear-words",
  pointed: computed(() => {
    const { part } = pointed.value;
    return part === "battery" ? null : part;
  }),
  turning: { on: computed(() => turning.value && !reducedMotion.value), runFor: turnFor },
  turn: turnPart,
};
