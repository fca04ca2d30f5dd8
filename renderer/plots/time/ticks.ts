import { niceStep } from "../../lever/scale.ts";
import type { Range } from "./range.ts";

/** Most ticks of a value axis. */
const MOST = 4;

/**
 * Round values in a range, zero among them if it lies inside.
 * @param times factor to the unit shown, in which they are round
 * @param count as many as have room, need not be whole; never more than four, and two at least have room
 * @returns SI; of a range without width its least value
 */
export function valueTicks({ least, most }: Range, times: number, count = MOST): readonly number[] {
  const [low, high] = [least * times, most * times];
  if (!(high > low)) return [least];
  let step = niceStep((high - low) / Math.max(2, count));
  for (;;) {
    const first = Math.ceil(low / step - 1e-9);
    const last = Math.floor(high / step + 1e-9);
    const found = last - first + 1;
    if (found <= MOST) return Array.from({ length: found }, (_, i) => ((first + i) * step) / times);
    step = niceStep(step * 1.2);
  }
}

/** px that a tick's number keeps clear of another one's, in sizes of text. */
const CLEAR = 0.85;

/** A tick's number at its height. */
export interface PlacedTick {
  /** SI */
  readonly value: number;
  /** px from the top */
  readonly y: number;
}

/**
 * Where the numbers of ticks stand: at their ticks, but within the row. Where two would touch, zero stays first, then
 * the greatest and the least.
 * @param height of the row, px
 * @param text size of text, px
 */
export function placedTicks(
  ticks: readonly number[],
  range: Range,
  height: number,
  text: number,
): readonly PlacedTick[] {
  const half = text * 0.55;
  const place = (value: number): number => {
    const y = ((range.most - value) / (range.most - range.least)) * height;
    return Math.min(height - half, Math.max(half, y));
  };
  const outer = [...ticks].sort((a, b) => Math.abs(b) - Math.abs(a));
  const placed: PlacedTick[] = [];
  for (const value of [...ticks.filter((tick) => tick === 0), ...outer]) {
    const y = place(value);
    if (placed.every((other) => Math.abs(other.y - y) >= CLEAR * text)) placed.push({ value, y });
  }
  return placed;
}

/** Decimals that tell ticks apart in the unit shown. */
export function tickDecimals(ticks: readonly number[], times: number): number {
  const step = Math.abs((ticks[1] ?? 1 / times) - (ticks[0] ?? 0)) * times || 1;
  return Math.min(4, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
}

const STEPS = [
  ...[0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800],
  ...[3600, 7200, 10_800, 21_600, 43_200],
];

/**
 * Times of the ticks of a window, s.
 * @param width of the window, px
 * @param gap least distance of two ticks, px
 */
export function timeTicks(from: number, to: number, width: number, gap: number): readonly number[] {
  const step = STEPS.find((each) => (each / (to - from)) * width >= gap) ?? 86_400;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
