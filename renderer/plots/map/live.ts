import { type Box, crosses, overlap, type Segment } from "../../ui/labels.ts";
import type { MapFrame } from "./frame.ts";
import type { PointReader } from "./kinds.ts";

/** How long a trail is, s, and between two of its dots, in rows. */
const TRAIL_SECONDS = 5;
const DOT_EVERY = 2;

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** A place kept on the plot: what lies beyond shows at its edge. */
export function held(
  { box, x, y }: MapFrame,
  [sx, sy]: readonly [number, number],
): readonly [number, number] {
  return [clamp(x(sx), box.x, box.x + box.width), clamp(y(sy), box.y, box.y + box.height)];
}

/** Dots of the rows before one, as an SVG path of round-ended points. @param rowsPerSecond rows of the log a second */
export function trailPath(frame: MapFrame, read: PointReader, row: number, rowsPerSecond: number): string {
  let d = "";
  const first = Math.max(0, row - TRAIL_SECONDS * rowsPerSecond);
  for (let at = row - DOT_EVERY; at >= first; at -= DOT_EVERY) {
    const [px, py] = held(frame, read(at));
    d += `M${px.toFixed(1)} ${py.toFixed(1)}h.01`;
  }
  return d;
}

/** The line of equal power through a point: its path and its places, px, from the greatest torque outward. */
export interface PowerLine {
  readonly d: string;
  readonly places: readonly (readonly [x: number, y: number])[];
}

const STEPS = 24;

/**
 * The line of equal power through a point: torque × speed stays the same. Null where there is next to none.
 * @param range least and most of the axes, SI
 */
export function powerLine(
  frame: MapFrame,
  [x, y]: readonly [number, number],
  range: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
): PowerLine | null {
  const power = x * y;
  const yEnd = y > 0 ? range.y[1] : range.y[0];
  const xEnd = x > 0 ? range.x[1] : range.x[0];
  if (!(Math.abs(power) > 0) || yEnd * y <= 0 || xEnd * x <= 0) return null;
  // From where it enters over the greatest torque to where it leaves at the greatest speed, in equal ratios.
  const from = power / yEnd;
  if (Math.abs(from) >= Math.abs(xEnd)) return null;
  const ratio = (xEnd / from) ** (1 / STEPS);
  let d = "";
  let place = from;
  const places: (readonly [number, number])[] = [];
  for (let i = 0; i <= STEPS; i += 1) {
    const [px, py] = [frame.x(place), frame.y(power / place)];
    places.push([px, py]);
    d += `${i === 0 ? "M" : "L"}${px.toFixed(1)} ${py.toFixed(1)}`;
    place *= ratio;
  }
  return { d, places };
}

/** Air on both sides of a number, so that no line that ends there reads as its minus, in text sizes. */
const AIR = 0.4;

/**
 * Where the power is written: at the outermost place of its line that is free of other labels, of the point, of the line
 * of no torque and of its own line; null where there is none.
 * @param width of the text, px
 */
export function powerLabel(
  { box, y: height }: Pick<MapFrame, "box" | "y">,
  { places }: PowerLine,
  others: readonly Box[],
  width: number,
  text: number,
): { readonly x: number; readonly y: number } | null {
  const outward = (places.at(-1)?.[0] ?? 0) >= (places[0]?.[0] ?? 0);
  const zero = height(0);
  const lines: Segment[] = [{ x1: box.x, y1: zero, x2: box.x + box.width, y2: zero }];
  places.forEach(([x1, y1], i) => {
    const [x2, y2] = places[i + 1] ?? [x1, y1];
    lines.push({ x1, y1, x2, y2 });
  });
  for (let i = places.length - 1; i >= 0; i -= 1) {
    const [px, py] = places[i] ?? [0, 0];
    for (const y of [py - text * 0.45, py + text * 1.15]) {
      for (const left of outward
        ? [Math.min(px, box.x + box.width) - width, px]
        : [Math.max(px, box.x), px - width]) {
        const own = { x: left, y: y - text * 0.8, width, height: text };
        const fits =
          own.x >= box.x &&
          own.x + width <= box.x + box.width + 1 &&
          own.y >= box.y &&
          y <= box.y + box.height;
        const airy = { ...own, x: own.x - text * AIR, width: width + 2 * text * AIR };
        if (
          fits &&
          others.every((other) => overlap(own, other) === 0) &&
          !lines.some((line) => crosses(line, airy))
        )
          return { x: left, y };
      }
    }
  }
  return null;
}
