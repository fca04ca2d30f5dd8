import { computed, signal } from "@preact/signals";
import { chosen, duration, liveRow, type Stretch, shown } from "../../state/road.ts";
import { followed, moved, zoomed } from "./window.ts";

/** Width of lanes and plots, px. */
export const plotWidth = signal(0);

/** A drive under way grows into a window of so many seconds at a time. */
const LIVE_STEP = 30;

/** The window of time that is shown. */
export const windowNow = computed<Stretch>(() => {
  if (shown.value) return shown.value;
  const all = Math.max(0.1, duration.value);
  return { from: 0, to: liveRow.value ? Math.ceil((all + 1) / LIVE_STEP) * LIVE_STEP : all };
});

/** px from the plots' left edge to a time. */
export function xOf(time: number): number {
  const { from, to } = windowNow.value;
  return ((time - from) / (to - from)) * plotWidth.value;
}

/** Half the width of the box with the cursor's time, in sizes of text. */
const HALF_BOX = 2.4;

/** How far the box with the cursor's time stands left of the cursor, px, so that it stays within the plots. */
export const boxOff = (time: number, text: number): number =>
  Math.max(0, Math.min(plotWidth.value, xOf(time)) + HALF_BOX * text - plotWidth.value);

/** The time at so many px. */
export function timeAt(x: number): number {
  const { from, to } = windowNow.value;
  return from + (x / Math.max(1, plotWidth.value)) * (to - from);
}

/** Shows more or less about a time. @param factor length of the window after over before */
export function zoom(factor: number, about: number): void {
  shown.value = zoomed(shown.value, duration.value, about, factor);
}

/** Moves the window by a share of its length. */
export function pan(share: number): void {
  const { from, to } = windowNow.value;
  shown.value = moved(shown.value, duration.value, share * (to - from));
}

/** Keeps the cursor in the window. */
export function follow(cursor: number): void {
  const next = followed(shown.value, duration.value, cursor);
  if (next !== shown.value) shown.value = next;
}

/** Shortest stretch, s: one row. */
const LEAST_STRETCH = 0.1;

/** Chooses what lies between two times, in either order; none if they are the same. */
export function choose(one: number, other: number): void {
  const inside = (time: number): number => Math.min(duration.value, Math.max(0, time));
  const [from, to] = [inside(Math.min(one, other)), inside(Math.max(one, other))];
  chosen.value = to - from < LEAST_STRETCH / 2 ? null : { from, to };
}

/** Puts one end of the stretch at a time; the other stays, or is the drive's end; beyond it, it becomes the drive's end. */
export function setEnd(end: "from" | "to", time: number): void {
  const now = chosen.value ?? { from: 0, to: duration.value };
  if (end === "from") choose(time, now.to > time + LEAST_STRETCH / 2 ? now.to : duration.value);
  else choose(now.from < time - LEAST_STRETCH / 2 ? now.from : 0, time);
}
