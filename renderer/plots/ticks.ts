import { niceStep } from "../lever/scale.ts";

/** Most ticks of a value axis. */
const MOST = 4;

/** Round values within a range: the finest step that gives no more than four. Numbers as shown. */
export function roundTicks(least: number, most: number): readonly number[] {
  if (!(most > least)) return [least];
  for (let step = niceStep((most - least) / 6); ; step = niceStep(step * 1.5)) {
    const first = Math.ceil(least / step - 1e-9);
    const last = Math.floor(most / step + 1e-9);
    if (last - first < MOST) return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  }
}

const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 28_800];

/** Times of the ticks of a window, s, at least `gap` px apart. */
export function timeTicks(from: number, to: number, width: number, gap: number): readonly number[] {
  const step = STEPS.find((each) => (each / (to - from)) * width >= gap) ?? 86_400;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
