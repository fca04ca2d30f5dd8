import { at } from "../../shared/at.ts";
import { benchAt } from "../bench/bench.ts";
import { following, SHAFTS, type ShaftValues, speedLimits } from "../bench/shafts.ts";
import { basicRatio } from "../drivetrain/gear-set.ts";
import type { RunOptions } from "../options.ts";
import { REGIMES } from "../run/regimes.ts";
import type { LessonFaults } from "./faults.ts";
import { type BenchScene, RUN_NUMBERS, type RunNumber, type RunScene, type Scene } from "./lesson.ts";
import type { BenchStage, RunStage, Stage } from "./quantities/quantity.ts";
import type { RunSource, RunSpec } from "./runs.ts";
import { sayValue } from "./say.ts";
import { unitById } from "./units.ts";
import { vehicleOf } from "./vehicle-spec.ts";

/** Rounding that does not count as passing a limit, rad/s. */
const SLACK = 1e-6;

/** Speeds of a bench scene, rad/s, the follower by Willis' equation. */
export function speedsOf(scene: BenchScene): ShaftValues {
  const { shafts } = scene;
  const given = {
    sun: shafts.sun.speed.value,
    carrier: shafts.carrier.speed.value,
    ring: shafts.ring.speed.value,
  };
  const follower = SHAFTS.find((shaft) => shafts[shaft].role === "follow") ?? "sun";
  return following(basicRatio(vehicleOf(scene.vehicle).gearSet), given, follower);
}

/** Books a fault for each shaft beyond its limit and for what the bench cannot do. */
function checkBench({ vehicle, point }: BenchStage, line: number, faults: LessonFaults): void {
  const limits = speedLimits(vehicle);
  const rpm = unitById("rev/min");
  for (const shaft of SHAFTS) {
    const { least, most } = limits[shaft];
    const speed = point.speeds[shaft];
    if (speed >= least - SLACK && speed <= most + SLACK) continue;
    const accepted = `${sayValue(least, rpm)} to ${sayValue(most, rpm)}`;
    faults.add(line, `the ${shaft} would turn beyond its limit`, sayValue(speed, rpm), accepted);
  }
  const nm = unitById("N·m");
  for (const { id, limit, value } of point.limits) {
    if (id === "full-load" || id === "no-firing" || id === "motored-friction") {
      faults.add(
        line,
        `the engine cannot give this torque (${id})`,
        sayValue(value, nm),
        sayValue(limit, nm),
      );
    }
  }
}

function benchStage(scene: BenchScene, faults: LessonFaults): BenchStage {
  const vehicle = vehicleOf(scene.vehicle);
  const point = benchAt(vehicle, {
    speeds: speedsOf(scene),
    engineTorque: scene.engineTorque.value,
    outputTorque: scene.outputTorque?.value ?? null,
  });
  const stage: BenchStage = { kind: "bench", vehicle, point };
  checkBench(stage, scene.line, faults);
  return stage;
}

/** A run scene as the engine takes it. */
export function runSpecOf(scene: RunScene): RunSpec {
  const options: { -readonly [K in keyof RunOptions]: RunOptions[K] } = {};
  for (const [name, number] of Object.entries(scene.numbers)) {
    options[RUN_NUMBERS[name as RunNumber]] = number.value;
  }
  if (scene.cold) options.coldStart = true;
  return { vehicle: scene.vehicle, cycle: scene.cycle, strategy: scene.strategy, options };
}

function rowOf(scene: RunScene, figures: RunStage["figures"], faults: LessonFaults): number | null {
  const { at: instant } = scene;
  if (instant === null) return null;
  if (typeof instant === "string") {
    const found = figures.summary.moments.find(({ id }) => id === instant);
    if (found) return found.row;
    const known = figures.summary.moments.map(({ id }) => id).join(", ");
    faults.add(scene.line, "this run has no such moment", instant, known || "a time in seconds");
    return 0;
  }
  const time = figures.log.view("time");
  const last = at(time, time.length - 1);
  if (instant.value > last || instant.value < 0) {
    faults.add(scene.line, "the run has no such instant", `${instant.value} s`, `0 to ${last} s`);
    return 0;
  }
  let row = 0;
  while (row + 1 < time.length && at(time, row + 1) <= instant.value + 1e-6) row += 1;
  return row;
}

function runStage(scene: RunScene, runs: RunSource, faults: LessonFaults): RunStage | null {
  const figures = faults.trying(scene.line, () => runs(runSpecOf(scene)));
  if (!figures) return null;
  return { kind: "run", name: scene.name, figures, row: rowOf(scene, figures, faults) };
}

/** Sets a scene up: its bench computed, or its run made. Null, and a fault, when it cannot be. */
export const stageOf = (scene: Scene, runs: RunSource, faults: LessonFaults): Stage | null =>
  scene.kind === "bench" ? benchStage(scene, faults) : runStage(scene, runs, faults);

/** Id of the regime on a stage; null where there is no instant. */
export function regimeOn(stage: Stage): string | null {
  if (stage.kind === "bench") return stage.point.regime;
  return stage.row === null ? null : (REGIMES[at(stage.figures.regime, stage.row)]?.id ?? null);
}

/** Title of a regime in running text: lower case. */
export const regimeWords = (id: string): string =>
  (REGIMES.find((rule) => rule.id === id)?.title ?? id).toLowerCase();
