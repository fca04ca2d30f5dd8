import { batch, computed, signal } from "@preact/signals";
import { benchAt } from "../../sim/bench/bench.ts";
import { type Shaft, speedLimits } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { vehicleById } from "../../sim/vehicle/presets/registry.ts";
import {
  type BenchState,
  changeVehicle,
  firstBench,
  giveRole,
  loadSituation,
  type Moved,
  moveShaft,
  type Role,
  type Stop,
  shiftLine,
  situationOf,
} from "./bench.ts";
import { closed, emptyHistory, type History, recorded, redone, undone } from "./history.ts";
import { type SituationId, situationById } from "./situations.ts";
import { findVehicle, vehicleList } from "./vehicles.ts";

/** What undo and redo bring back: the bench, and the vehicles that are no presets. */
interface Edited {
  readonly bench: BenchState;
  readonly own: readonly Vehicle[];
}

const first = (): Edited => ({ bench: firstBench("compact", vehicleById("compact")), own: [] });

const edited = signal<Edited>(first());

/** The one store: what is set, what follows from it, and the only functions that change it. */
export const bench = computed(() => edited.value.bench);
export const ownVehicles = computed(() => edited.value.own);

/** The shaft whose limit stopped the last move; null when nothing did. */
export const stopped = signal<Stop | null>(null);

const history = signal<History<Edited>>(emptyHistory());

export const vehicle = computed(() => findVehicle(ownVehicles.value, bench.value.vehicle));
export const vehicles = computed(() => vehicleList(ownVehicles.value));
export const k = computed(() => basicRatio(vehicle.value.gearSet));
export const limits = computed(() => speedLimits(vehicle.value));
export const point = computed(() => benchAt(vehicle.value, bench.value));
export const situation = computed(() => situationOf(bench.value, vehicle.value));
export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.future.length > 0);

/** One edit, noted for undo. @param gesture edits of the same gesture count as one */
function change(next: Edited, gesture: string | null): void {
  history.value = recorded(history.value, edited.value, gesture);
  edited.value = next;
}

function edit(next: BenchState, gesture: string | null, stop: Stop | null = null): void {
  batch(() => {
    stopped.value = stop;
    if (next !== bench.value) change({ ...edited.value, bench: next }, gesture);
  });
}

const move = ({ state, stop }: Moved, gesture: string | null): void => edit(state, gesture, stop);

/** Sets a shaft's speed, rad/s. */
export const setSpeed = (shaft: Shaft, speed: number, gesture: string | null = null): void =>
  move(moveShaft(bench.value, vehicle.value, shaft, speed), gesture);

/** Shifts the whole line, rad/s. */
export const shiftSpeeds = (by: number, gesture: string | null = null): void =>
  move(shiftLine(bench.value, vehicle.value, by), gesture);

export const setRole = (shaft: Shaft, role: Role): void =>
  move(giveRole(bench.value, vehicle.value, shaft, role), null);

/** Counts the situations that were loaded: the line sweeps over to each new one. */
export const loads = signal(0);

/** Loads a situation. */
export const loadById = (id: SituationId): void =>
  batch(() => {
    loads.value += 1;
    edit(loadSituation(bench.value, vehicle.value, situationById(id)), null);
  });

/** N·m asked of the engine. */
export const setEngineTorque = (engineTorque: number, gesture: string | null = null): void =>
  edit({ ...bench.value, engineTorque }, gesture);

/** N·m of the output machine; null: the battery rests. */
export const setOutputTorque = (outputTorque: number | null, gesture: string | null = null): void =>
  edit({ ...bench.value, outputTorque }, gesture);

/** Puts another vehicle under bench and road. @throws InputError for an unknown id */
export const setVehicle = (id: string): void =>
  edit(changeVehicle(bench.value, id, findVehicle(ownVehicles.value, id)), null);

/**
 * Puts an own vehicle in place of the one of its id, or adds it, and takes it in use.
 * @param own checked (readVehicle), its id no preset's
 */
export function putVehicle(own: Vehicle, gesture: string | null = null): void {
  const others = ownVehicles.value.filter((one) => one.id !== own.id);
  batch(() => {
    stopped.value = null;
    change({ own: [...others, own], bench: changeVehicle(bench.value, own.id, own) }, gesture);
  });
}

/** Takes an own vehicle away; the default preset takes its place where it was in use. */
export function dropVehicle(id: string): void {
  const own = ownVehicles.value.filter((one) => one.id !== id);
  const next =
    bench.value.vehicle === id ? changeVehicle(bench.value, "compact", vehicleById("compact")) : bench.value;
  batch(() => change({ own, bench: next }, null));
}

/**
 * Puts a bench from a project or from the last session in place of this one; it can be undone.
 * @param own the vehicles that come with it; others of before stay
 */
export function replaceBench(next: BenchState, own: readonly Vehicle[] = []): void {
  const others = ownVehicles.value.filter((one) => !own.some((fresh) => fresh.id === one.id));
  batch(() => {
    stopped.value = null;
    change({ bench: next, own: [...others, ...own] }, null);
  });
}

/** A drag or a run of key presses is over. */
export function endGesture(): void {
  history.value = closed(history.value);
}

export function undo(): void {
  step(undone(history.value, edited.value));
}

export function redo(): void {
  step(redone(history.value, edited.value));
}

function step(taken: { history: History<Edited>; state: Edited } | null): void {
  if (!taken) return;
  batch(() => {
    history.value = taken.history;
    edited.value = taken.state;
    stopped.value = null;
  });
}

/** Nothing to undo: what stands on the bench is where one begins. */
export function resetHistory(): void {
  history.value = emptyHistory();
}

/** Back to the first bench, with nothing to undo. For tests. */
export function resetStore(): void {
  batch(() => {
    edited.value = first();
    history.value = emptyHistory();
    stopped.value = null;
  });
}
