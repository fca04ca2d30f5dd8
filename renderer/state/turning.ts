import { batch, computed, signal } from "@preact/signals";
import { radPerSToRpm } from "../../shared/units.ts";
import { eachShaft, SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import { bench, k } from "./store.ts";
import { type Angles, perCarrierTurn, timeOfStep, turnedOn, turnsSince } from "./turns.ts";

/** Turned angles and marks: they follow the bench, but no undo brings them back, as on a real one. */
export const angles = signal<Angles>({ carrier: 0, ring: 0 });
const marks = signal<Angles>({ carrier: 0, ring: 0 });

/** Whether the gear set turns by itself, and how many times slower than it would. */
export const playing = signal(false);
export const slowing = signal(120);

export const turns = computed(() => turnsSince(k.value, angles.value, marks.value));

/** What "per carrier turn" is of: the counted turns once there are some to count, else those of one minute. */
export const perOf = computed(() =>
  Math.abs(turns.value.carrier) > 0.02
    ? turns.value
    : eachShaft((shaft) => radPerSToRpm(bench.value.speeds[shaft])),
);

export const perTurn = computed(() => perCarrierTurn(perOf.value));

/** Starts the counting at the present angles. */
export function setMarks(): void {
  marks.value = angles.value;
}

/** The bench ran for some seconds of the screen's time. */
export function runFor(seconds: number): void {
  angles.value = turnedOn(angles.value, bench.value.speeds, seconds / slowing.value);
}

/** Turns on or back by hand: the fastest shaft makes this share of a turn. */
export function stepBy(share: number): void {
  const { speeds } = bench.value;
  angles.value = turnedOn(angles.value, speeds, timeOfStep(speeds, share));
}

/** Turns a shaft by hand, rad; the others go along as their speeds do. False when it is held or at rest. */
export function turnByHand(shaft: Shaft, by: number): boolean {
  const speed = bench.value.speeds[shaft];
  if (Math.abs(speed) < 1e-6) return false;
  batch(() => {
    playing.value = false;
    angles.value = turnedOn(angles.value, bench.value.speeds, by / speed);
  });
  return true;
}

/** Sums up whether anything turns. */
export const anyTurns = computed(() => SHAFTS.some((shaft) => Math.abs(bench.value.speeds[shaft]) > 1e-6));
