import { computed, signal } from "@preact/signals";
import { chosen, duration, type Stretch, shown } from "../state/road.ts";

/** px: room of the value axis at the left of every plot, and the width of the plots themselves. */
export const AXIS = 52;
export const plotWidth = signal(0);

/** Shortest window, s. */
const LEAST_WINDOW = 2;

/** The window of time that is shown. */
export const windowNow = computed<Stretch>(() => shown.value ?? { from: 0, to: Math.max(1, duration.value) });

/** px from the left of the plots to a time. */
export function xOf(time: number): number {
  const { from, to } = windowNow.value;
  return ((time - from) / (to - from)) * plotWidth.value;
}

/** The time at so many px. */
export function timeAt(x: number): number {
  const { from, to } = windowNow.value;
  return from + (x / Math.max(1, plotWidth.value)) * (to - from);
}

/** Zooms about a time; the whole drive is as wide as it gets. @param factor > 1 shows less */
export function zoom(factor: number, about: number): void {
  const { from, to } = windowNow.value;
  const width = Math.max(LEAST_WINDOW, (to - from) / factor);
  if (width >= duration.value) {
    shown.value = null;
    return;
  }
  const share = (about - from) / (to - from);
  const start = Math.min(duration.value - width, Math.max(0, about - share * width));
  shown.value = { from: start, to: start + width };
}

/** Keeps a time within the window by shifting it. */
export function follow(time: number): void {
  const window = shown.value;
  if (!window || (time >= window.from && time <= window.to)) return;
  const width = window.to - window.from;
  const from = Math.min(duration.value - width, Math.max(0, time - width * 0.1));
  shown.value = { from, to: from + width };
}

/** Begins or ends the chosen stretch at a time; the other end stays, or is the drive's. */
export function setStretch(end: "from" | "to", time: number): void {
  const now = chosen.value ?? { from: 0, to: duration.value };
  const next = { ...now, [end]: time };
  if (next.to - next.from >= 0.1) chosen.value = next;
  else chosen.value = end === "from" ? { from: time, to: duration.value } : { from: 0, to: time };
}
