import { computed, signal } from "@preact/signals";
import { at } from "../../../shared/at.ts";
import { moved, zoomed } from "../../plots/time/window.ts";
import type { Stretch } from "../../state/road.ts";
import { chosenSpan, cycleShown, shownSpan } from "../state.ts";

/** Width of the plot, px. */
export const plotWidth = signal(0);

/** s; of the cycle looked at. */
export const durationShown = computed(() => {
  const trace = cycleShown.value;
  return trace ? at(trace.time, trace.time.length - 1) : 1;
});

/** The window of time that is shown. */
export const windowShown = computed<Stretch>(() => shownSpan.value ?? { from: 0, to: durationShown.value });

/** px from the plot's left edge to a time. */
export const xOf = (time: number): number => {
  const { from, to } = windowShown.value;
  return ((time - from) / (to - from)) * plotWidth.value;
};

/** The time at so many px, within the drive. */
export const timeAt = (x: number): number => {
  const { from, to } = windowShown.value;
  const time = from + (x / Math.max(1, plotWidth.value)) * (to - from);
  return Math.min(durationShown.value, Math.max(0, time));
};

/** Shows more or less about the middle. @param factor length of the window after over before */
export function zoomBy(factor: number): void {
  const { from, to } = windowShown.value;
  shownSpan.value = zoomed(shownSpan.value, durationShown.value, (from + to) / 2, factor);
}

/** Moves the window by a share of its length. */
export function panBy(share: number): void {
  const { from, to } = windowShown.value;
  shownSpan.value = moved(shownSpan.value, durationShown.value, share * (to - from));
}

/** Shortest stretch that can be chosen, s. */
export const LEAST_STRETCH = 1;

/** The stretch between two times, in either order, whole tenths of a second; null when it is too short. */
export function stretchBetween(one: number, other: number, duration: number): Stretch | null {
  const inside = (time: number): number => Math.min(duration, Math.max(0, Math.round(time * 10) / 10));
  const [from, to] = [inside(Math.min(one, other)), inside(Math.max(one, other))];
  return to - from < LEAST_STRETCH ? null : { from, to };
}

/** Chooses what lies between two times. */
export const chooseBetween = (one: number, other: number): void => {
  chosenSpan.value = stretchBetween(one, other, durationShown.value);
};
