import type { StatisticsRow } from "../../cycles/statistics/beside-standard.ts";
import { dynamicsLimits } from "../../cycles/statistics/on-road.ts";
import { niceStep } from "../lever/scale.ts";
import { type LabelWish, type Measure, type PlacedLabel, placeLabels } from "../ui/labels.ts";

/** A cycle in the picture. */
export interface StandPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly own: boolean;
}

/** Where everything of the picture lies, px. */
export interface StandLayout {
  readonly points: readonly StandPoint[];
  readonly labels: readonly PlacedLabel[];
  /** the least briskness that the regulation for tests on the road takes, as points of a line */
  readonly limit: readonly (readonly [number, number])[];
  readonly xTicks: readonly { readonly x: number; readonly value: number }[];
  readonly yTicks: readonly { readonly y: number; readonly value: number }[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

interface StandInput {
  readonly rows: readonly StatisticsRow[];
  /** the one looked at */
  readonly own: StatisticsRow | null;
  readonly width: number;
  readonly height: number;
  readonly text: number;
  /** factor from m/s to the unit shown */
  readonly times: number;
  readonly limitName: string;
  readonly measure: Measure;
}

const TICKS = 4;

function axis(most: number): { readonly end: number; readonly ticks: readonly number[] } {
  const step = niceStep(Math.max(1e-6, most) / TICKS);
  const count = Math.ceil((most * 1.02) / step);
  return { end: count * step, ticks: Array.from({ length: count + 1 }, (_, i) => i * step) };
}

/**
 * Mean speed across, briskness up: where a cycle stands among the standard ones.
 * @param input widths in px, speeds in m/s, briskness in m/s²
 */
export function standLayout(input: StandInput): StandLayout {
  const { rows, own, width, height, text, times, limitName, measure } = input;
  const all = [...rows.filter(({ id }) => id !== own?.id), ...(own ? [own] : [])];
  const left = text * 3.4;
  const right = width - text * 0.8;
  const top = text * 1.9;
  const foot = height - text * 2.9;
  const speed = ({ statistics }: StatisticsRow): number => statistics.meanSpeed * times;
  const brisk = ({ dynamics }: StatisticsRow): number => dynamics.relativePositiveAcceleration;
  const x = axis(Math.max(1, ...all.map(speed)));
  const y = axis(Math.max(0.1, ...all.map(brisk)));
  const toX = (value: number): number => left + (value / x.end) * (right - left);
  const toY = (value: number): number => foot - (value / y.end) * (foot - top);
  const points = all.map((row) => ({
    id: row.id,
    x: toX(speed(row)),
    y: toY(brisk(row)),
    own: row === own,
  }));
  const steps = Array.from({ length: 41 }, (_, i) => (x.end * i) / 40);
  const limit = steps.map((value): readonly [number, number] => {
    const least = dynamicsLimits(value / times).minRelativePositiveAcceleration;
    return [toX(value), toY(Math.min(y.end, least))];
  });
  const wishes = points.map(({ id, x: px, y: py, own: mine }): LabelWish => {
    const gap = text * 0.6;
    return {
      id,
      text: mine ? "" : id.toUpperCase(),
      size: text,
      weight: mine ? 2 : 1,
      droppable: true,
      places: [
        { x: px + gap, y: py + text * 0.35, anchor: "start" },
        { x: px - gap, y: py + text * 0.35, anchor: "end" },
        { x: px, y: py - gap, anchor: "middle" },
        { x: px, y: py + gap + text * 0.7, anchor: "middle" },
        { x: px + gap, y: py - gap * 0.7, anchor: "start" },
        { x: px + gap, y: py + gap + text * 0.5, anchor: "start" },
        { x: px - gap, y: py - gap * 0.7, anchor: "end" },
        { x: px - gap, y: py + gap + text * 0.5, anchor: "end" },
      ],
    };
  });
  wishes.push({
    id: "limit",
    text: limitName,
    size: text,
    weight: 1.5,
    droppable: true,
    // Over the line, which falls: what begins there stays clear of it.
    places: limit.slice(1, 30).map(([x, y]) => ({ x: x + 3, y: y - 5, anchor: "start" })),
  });
  const mark = text * 0.5;
  const labels = placeLabels(
    wishes.filter((wish) => wish.text !== ""),
    {
      boxes: points.map((point) => ({
        x: point.x - mark,
        y: point.y - mark,
        width: 2 * mark,
        height: 2 * mark,
      })),
      // A name on another's point would be taken for that one's: points bar the way as lines do.
      lines: [
        ...limit.slice(1).map(([x2, y2], i) => {
          const [x1, y1] = limit[i] ?? [x2, y2];
          return { x1, y1, x2, y2 };
        }),
        ...points.map((point) => ({ x1: point.x - mark, y1: point.y, x2: point.x + mark, y2: point.y })),
      ],
      bounds: { x: left, y: 0, width: right - left + text * 0.8, height: foot },
    },
    measure,
  );
  return {
    points,
    labels,
    limit,
    xTicks: x.ticks.map((value) => ({ x: toX(value), value })),
    yTicks: y.ticks.map((value) => ({ y: toY(value), value })),
    left,
    right,
    top,
    foot,
  };
}
