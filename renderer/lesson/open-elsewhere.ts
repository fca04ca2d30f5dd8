import { cycleById } from "../../cycles/catalogue.ts";
import type { BenchScene, RunScene } from "../../sim/lesson/lesson.ts";
import { runSpecOf } from "../../sim/lesson/stage.ts";
import { type VehicleSpec, vehicleOf } from "../../sim/lesson/vehicle-spec.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { tell } from "../app/window.ts";
import { runName } from "../drive/actions.ts";
import type { BenchState } from "../state/bench.ts";
import { goTo } from "../state/place.ts";
import { mode, moveTo, playing, roadNow, setRoad, takeRun } from "../state/road.ts";
import { ROW } from "../state/run.ts";
import { ownVehicles, putVehicle, replaceBench, setVehicle } from "../state/store.ts";
import { freshId } from "../state/vehicles.ts";
import { t } from "../texts/catalogue.ts";
import type { LessonRunReply } from "../workers/lesson-contract.ts";

/** A lesson's vehicle as the project has it: a preset by its id, a changed one as an own vehicle. */
function projectVehicle(spec: VehicleSpec): { readonly id: string; readonly own: Vehicle | null } {
  if (spec.settings.length === 0) return { id: spec.preset, own: null };
  const made = vehicleOf(spec);
  const alike = ownVehicles.value.find(
    (one) => JSON.stringify({ ...one, id: made.id }) === JSON.stringify(made),
  );
  if (alike) return { id: alike.id, own: alike };
  const id = freshId(ownVehicles.value, made.id);
  return { id, own: { ...made, id } };
}

/** Sets the Bench to what stands on the lesson's stage, and goes there. It can be undone there. */
export function toBench(scene: BenchScene, state: BenchState): void {
  const { id, own } = projectVehicle(scene.vehicle);
  replaceBench({ ...state, vehicle: id }, own ? [own] : []);
  goTo("bench");
  tell(t.lesson.stage.onBench);
}

/** Puts the lesson's run on Road at the row looked at, sets Road to drive it again, and goes there. */
export function toRoad(scene: RunScene, reply: LessonRunReply, row: number): void {
  const { id, own } = projectVehicle(scene.vehicle);
  if (own) putVehicle(own);
  else setVehicle(id);
  const { options } = runSpecOf(scene);
  setRoad({ ...roadNow(), cycle: scene.cycle, strategy: scene.strategy, options });
  const { log, regime, summary } = reply;
  const request = {
    vehicle: own ?? vehicleOf(scene.vehicle),
    cycle: cycleById(scene.cycle),
    strategy: scene.strategy,
    options,
  };
  takeRun(request, { log, regime, summary }, runName(request));
  mode.value = "replay";
  playing.value = false;
  moveTo(row * ROW);
  goTo("road");
  tell(t.lesson.stage.onRoad);
}
