import { SHAFTS, type Shaft, type ShaftValues, type SpeedLimits } from "../../sim/bench/shafts.ts";
import type { Box, Measure, Segment } from "../ui/labels.ts";
import { leverLabels } from "./label-wishes.ts";
import type { SpeedScale } from "./scale.ts";

/** Texts on the drawing, formatted by whoever asks for it. */
export interface LeverTexts {
  readonly unit: string;
  readonly names: Readonly<Record<Shaft, string>>;
  /** second line under a name; null: none */
  readonly subs: Readonly<Record<Shaft, string>> | null;
  readonly number: (value: number) => string;
  readonly torque: (value: number) => string;
  readonly idle: (value: string) => string;
  readonly to: (value: string) => string;
  readonly never: string;
  readonly teeth: readonly [string, string];
}

/** Everything the drawing is made of. Speeds in the unit shown, lengths in px. */
export interface LeverInput {
  readonly width: number;
  readonly height: number;
  /** sizes of text, name and speed */
  readonly text: number;
  readonly nameSize: number;
  readonly speedSize: number;
  readonly k: number;
  readonly scale: SpeedScale;
  readonly speeds: ShaftValues;
  readonly limits: SpeedLimits;
  readonly idle: number;
  readonly torques: ShaftValues | null;
  /** px a N·m at a text of 14 px, unless the longest would not fit */
  readonly torqueScale: number;
  readonly texts: LeverTexts;
  readonly measure: Measure;
  /** px beside the outer axes; default: room for long labels */
  readonly margins?: { readonly left: number; readonly right: number };
}

/** A hatched block at an end of an axis, or the zone below idle. */
export interface Block extends Box {
  readonly shaft: Shaft;
  readonly kind: "limit" | "below";
  readonly end: "least" | "most";
  /** y of the bar that bounds it */
  readonly bar: number;
}

export interface Axis {
  readonly shaft: Shaft;
  readonly x: number;
  readonly y1: number;
  readonly y2: number;
  /** goes on below the scale */
  readonly goesOn: boolean;
}

/** A block arrow standing on the line. */
export interface TorqueArrow {
  readonly shaft: Shaft;
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly half: number;
}

export interface LeverFrame {
  readonly x: Readonly<Record<Shaft, number>>;
  readonly y: (value: number) => number;
  /** speed a px */
  readonly perPixel: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Frame of the drawing: the axes' places at k : 1 and the common scale. */
export function leverFrame({ width, height, text, k, scale, texts, margins }: LeverInput): LeverFrame {
  const wide = width > text * 40;
  const left = margins?.left ?? text * (wide ? 7.2 : 6.2);
  const right = margins?.right ?? text * (wide ? 9.4 : 7.4);
  const top = text * (texts.subs ? 3.1 : 2.6);
  const bottom = height - text * 3.3;
  const unit = (width - left - right) / (1 + k);
  const perPixel = (scale.high - scale.low) / (bottom - top);
  return {
    x: { sun: left, carrier: left + k * unit, ring: left + (1 + k) * unit },
    y: (value) => top + (scale.high - value) / perPixel,
    perPixel,
    left: left - text * 2.6,
    right: width - right + text * 2.6,
    top,
    bottom,
  };
}

function axesOf({ scale, limits }: LeverInput, frame: LeverFrame): Axis[] {
  return SHAFTS.map((shaft) => ({
    shaft,
    x: frame.x[shaft],
    y1: frame.y(Math.min(scale.high, limits[shaft].most)),
    y2: frame.y(Math.max(scale.low, limits[shaft].least)),
    goesOn: limits[shaft].least < scale.low,
  }));
}

function blocksOf({ scale, limits, idle, text }: LeverInput, frame: LeverFrame): Block[] {
  const half = 0.93 * text;
  const depth = Math.min(1.7 * text, (0.1 * (scale.high - scale.low)) / frame.perPixel);
  const blocks: Block[] = [];
  for (const shaft of SHAFTS) {
    const x = frame.x[shaft] - half;
    const { least, most } = limits[shaft];
    const top = frame.y(most);
    blocks.push({
      shaft,
      kind: "limit",
      end: "most",
      x,
      y: top - depth,
      width: 2 * half,
      height: depth,
      bar: top,
    });
    if (least < scale.low) continue;
    const foot = frame.y(least);
    blocks.push({
      shaft,
      kind: "limit",
      end: "least",
      x,
      y: foot,
      width: 2 * half,
      height: depth,
      bar: foot,
    });
  }
  const y = frame.y(idle);
  const height = frame.y(0) - y;
  const x = frame.x.carrier - half;
  return [...blocks, { shaft: "carrier", kind: "below", end: "most", x, y, width: 2 * half, height, bar: y }];
}

/** The line's speed at a place between and beyond the axes. */
export const speedAlong = (frame: LeverFrame, speeds: ShaftValues, x: number): number =>
  speeds.sun + ((speeds.ring - speeds.sun) * (x - frame.x.sun)) / (frame.x.ring - frame.x.sun);

/** The hero: the line through three points, a little beyond its outer ones. */
function heroOf({ speeds, text }: LeverInput, frame: LeverFrame): Segment {
  const x1 = frame.x.sun - 2.2 * text;
  const x2 = frame.x.ring + 2.2 * text;
  return {
    x1,
    y1: frame.y(speedAlong(frame, speeds, x1)),
    x2,
    y2: frame.y(speedAlong(frame, speeds, x2)),
  };
}

/** Which side of its axis a shaft's arrow stands: the carrier's on the inner one, where there is room. */
const SIDES: ShaftValues = { sun: 1, carrier: -1, ring: 1 };

function arrowsOf(input: LeverInput, frame: LeverFrame): TorqueArrow[] {
  const { torques, text, torqueScale, speeds } = input;
  if (!torques) return [];
  const longest = Math.max(...SHAFTS.map((shaft) => Math.abs(torques[shaft])));
  const fits = (0.3 * (frame.bottom - frame.top)) / Math.max(longest, 1e-9);
  const scale = Math.min((torqueScale * text) / 14, fits);
  return SHAFTS.filter((shaft) => Math.abs(torques[shaft]) >= 0.5).map((shaft) => {
    const x = frame.x[shaft] + SIDES[shaft] * 2.3 * text;
    const from = frame.y(speedAlong(frame, speeds, x));
    return {
      shaft,
      x,
      from,
      to: from - torques[shaft] * scale,
      half: Math.min(0.34 * text, Math.abs(torques[shaft]) * scale * 0.5),
    };
  });
}

/** Ticks of the scale without zero, which has a line of its own. */
function ticksOf({ low, high, tick }: SpeedScale): number[] {
  const found: number[] = [];
  for (let n = Math.ceil(low / tick); n * tick <= high; n += 1) if (n !== 0) found.push(n * tick);
  return found;
}

/** The whole drawing as numbers: nothing in it knows a page. */
export function leverLayout(input: LeverInput) {
  const frame = leverFrame(input);
  const axes = axesOf(input, frame);
  const blocks = blocksOf(input, frame);
  const hero = heroOf(input, frame);
  const arrows = arrowsOf(input, frame);
  const ticks = ticksOf(input.scale);
  const radius = 0.86 * input.text;
  const parts = { axes, blocks, hero, arrows, ticks, radius };
  return { frame, ...parts, labels: leverLabels(input, frame, parts) };
}

export type LeverLayout = ReturnType<typeof leverLayout>;
