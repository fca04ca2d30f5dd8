import { scaleLinear } from "d3-scale";
import type { Box, Measure } from "../../ui/labels.ts";

/** One axis of a map: its range in SI, and how it is read. */
export interface AxisInput {
  readonly least: number;
  readonly most: number;
  /** what a reader's unit is of the SI one, such as rev/min of rad/s */
  readonly perSi: number;
  readonly number: (value: number) => string;
}

export interface Tick {
  readonly at: number;
  readonly text: string;
  readonly zero: boolean;
}

/** The plot area with its scales, px. */
export interface MapFrame {
  readonly box: Box;
  readonly x: (si: number) => number;
  readonly y: (si: number) => number;
  /** least and most of both axes, SI */
  readonly range: { readonly x: readonly [number, number]; readonly y: readonly [number, number] };
  readonly ticksX: readonly Tick[];
  readonly ticksY: readonly Tick[];
}

/** Space between two numbers of an axis, in text sizes. */
const GAP = 0.75;

function ticksOf(axis: AxisInput, count: number, place: (si: number) => number): Tick[] {
  const scale = scaleLinear([axis.least * axis.perSi, axis.most * axis.perSi], [0, 1]);
  return scale.ticks(count).map((value) => ({
    at: place(value / axis.perSi),
    text: axis.number(value),
    zero: value === 0,
  }));
}

/** The most ticks, up to a number, whose texts keep clear of each other. */
function fitted(
  most: number,
  make: (count: number) => Tick[],
  need: (tick: Tick) => number,
  gap: number,
): Tick[] {
  for (let count = most; count > 2; count -= 1) {
    const ticks = make(count);
    const clear = ticks.every((tick, i) => {
      const next = ticks[i + 1];
      return !next || Math.abs(next.at - tick.at) >= (need(tick) + need(next)) / 2 + gap;
    });
    if (clear) return ticks;
  }
  return make(2);
}

interface FrameInput {
  readonly width: number;
  readonly height: number;
  readonly text: number;
  readonly x: AxisInput;
  readonly y: AxisInput;
  readonly measure: Measure;
}

/** Lays a plot area out in a box, with as many numbers on its axes as fit. */
export function mapFrame({ width, height, text, x, y, measure }: FrameInput): MapFrame {
  const top = text * 0.4;
  const bottom = height - text * 1.75;
  const down = scaleLinear([y.least, y.most], [bottom, top]);
  const ticksY = fitted(
    6,
    (count) => ticksOf(y, count, (si) => down(si)),
    () => text,
    text * GAP,
  );
  const wide = (tick: Tick): number => measure(tick.text, text);
  const left = Math.max(...ticksY.map(wide)) + text * 0.6;
  const right = width - text * 0.6;
  const along = scaleLinear([x.least, x.most], [left, right]);
  const ticksX = fitted(7, (count) => ticksOf(x, count, (si) => along(si)), wide, text * GAP);
  return {
    box: { x: left, y: top, width: right - left, height: bottom - top },
    x: (si) => along(si),
    y: (si) => down(si),
    range: { x: [x.least, x.most], y: [y.least, y.most] },
    ticksX,
    ticksY,
  };
}
