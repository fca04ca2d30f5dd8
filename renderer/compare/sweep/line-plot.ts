import { niceStep } from "../../lever/scale.ts";
import { valueTicks } from "../../plots/time/ticks.ts";

/** A place on the sheet, px; null where there is no value. */
export type PlotPoint = { readonly x: number; readonly y: number } | null;

export interface PlotLine {
  /** one a value of the axis; null where there is none */
  readonly values: readonly (number | null)[];
}

export interface PlotInput {
  readonly width: number;
  readonly height: number;
  /** px of text */
  readonly text: number;
  /** px at the left for the values' texts */
  readonly left: number;
  /** places along the axis: numbers as they are, words at equal distances */
  readonly along: readonly number[];
  readonly lines: readonly PlotLine[];
}

/** A plot of lines over one axis, px. */
export interface PlotLayout {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: readonly number[];
  readonly ticks: readonly { readonly value: number; readonly y: number }[];
  readonly lines: readonly { readonly points: readonly PlotPoint[]; readonly d: string }[];
  /** distance between two ticks, in the unit of the values */
  readonly step: number;
}

/** A line's path, broken where values are missing. */
function pathOf(points: readonly PlotPoint[]): string {
  let pen = "M";
  return points
    .map((point) => {
      if (!point) {
        pen = "M";
        return "";
      }
      const piece = `${pen}${point.x.toFixed(1)} ${point.y.toFixed(1)}`;
      pen = "L";
      return piece;
    })
    .join("");
}

/** Round ends about the values: never from zero on, so that small differences are seen; the ticks say so. */
function range(lines: readonly PlotLine[]): readonly [number, number] {
  const all = lines.flatMap(({ values }) => values.filter((value) => value !== null));
  if (all.length === 0) return [0, 1];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const width = most > least ? most - least : Math.max(Math.abs(most) * 0.1, 0.1);
  const step = niceStep(width / 4);
  return [Math.floor((least - width * 0.05) / step) * step, Math.ceil((most + width * 0.05) / step) * step];
}

/** Lays lines out over one axis. */
export function plotLayout({ width, height, text, left, along, lines }: PlotInput): PlotLayout {
  const [top, bottom] = [text * 0.8, height - text * 2.9];
  const right = width - text * 1.4;
  const [first, last] = [Math.min(...along), Math.max(...along)];
  const [least, most] = range(lines);
  const x = along.map((value) =>
    last > first ? left + ((value - first) / (last - first)) * (right - left) : (left + right) / 2,
  );
  const y = (value: number): number => bottom - ((value - least) / (most - least)) * (bottom - top);
  const ticks = valueTicks({ least, most }, 1, 4).map((value) => ({ value, y: y(value) }));
  return {
    left,
    right,
    top,
    bottom,
    x,
    ticks,
    step: ticks.length > 1 ? (ticks[1]?.value ?? 1) - (ticks[0]?.value ?? 0) : 1,
    lines: lines.map(({ values }) => {
      const points = values.map(
        (value, i): PlotPoint => (value === null ? null : { x: x[i] ?? 0, y: y(value) }),
      );
      return { points, d: pathOf(points) };
    }),
  };
}

/** Indices of the values whose texts have room beside each other, the first and the last among them if they can be. */
export function spaced(x: readonly number[], widths: readonly number[], gap: number): readonly number[] {
  const taken: number[] = [];
  const clear = (i: number): boolean =>
    taken.every(
      (j) => Math.abs((x[i] ?? 0) - (x[j] ?? 0)) >= ((widths[i] ?? 0) + (widths[j] ?? 0)) / 2 + gap,
    );
  for (const i of [0, x.length - 1, ...x.keys()]) if (!taken.includes(i) && clear(i)) taken.push(i);
  return taken.sort((a, b) => a - b);
}
