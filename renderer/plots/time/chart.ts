import uPlot from "uplot";
import type { LogReader } from "../../../sim/run/log.ts";
import type { Stretch } from "../../state/road.ts";
import type { RoadOverlay } from "../../state/road-overlay.ts";
import { rowAt } from "../../state/run.ts";
import type { Curve, Dash } from "../registry.ts";
import { drawable } from "./dense.ts";
import { fillFor, type Palette, paletteOf } from "./inks.ts";
import { laidOver } from "./laid-over.ts";
import type { Range } from "./range.ts";
import { knownCurve } from "./source.ts";

/** What a chart is drawn from. */
export interface ChartSpec {
  readonly log: LogReader;
  /** drawn from the last to the first */
  readonly curves: readonly Curve[];
  readonly overlay: RoadOverlay | null;
  readonly width: number;
  readonly height: number;
  /** range and ticks as they are when it is drawn: they change while a drive grows */
  readonly range: () => Range;
  readonly ticks: () => readonly number[];
}

/** Dashes in px at a line of usual weight. */
const DASHES: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  long: [7, 2.5],
  short: [2.5, 2],
  target: [5, 3],
};
const RECORDED = [9, 3, 1.5, 3];

/** Weight of a curve for which dashes are given, px. */
const USUAL = 1.5;

/** Recorded numbers that belong to a curve, if there are any. */
const recordedOf = (overlay: RoadOverlay | null, { source }: Curve): Float64Array | undefined =>
  "channel" in source ? overlay?.channels[source.channel] : undefined;

/** Curves in the order in which they are drawn. */
const order = (curves: readonly Curve[]): readonly Curve[] => curves.toReversed();

function seriesOf({ curves, overlay }: ChartSpec, palette: Palette): uPlot.Series[] {
  const scale = window.devicePixelRatio || 1;
  const weight = Number.parseFloat(palette("lw-mid")) || USUAL;
  const dashed = (dash: readonly number[]): number[] => dash.map((each) => each * scale * (weight / USUAL));
  const plain = { points: { show: false }, width: weight, pxAlign: 0 } as const;
  return order(curves).flatMap((curve) => {
    const { area, ink, dash } = curve;
    const line: uPlot.Series = {
      ...plain,
      stroke: dash === "target" ? palette("ink-3") : palette(`${ink}-line`),
      dash: dashed(DASHES[dash]),
      ...(area ? { fill: (chart: uPlot) => fillFor(chart.ctx, palette, area, ink, scale) } : {}),
    };
    const recorded: uPlot.Series = { ...plain, stroke: palette("ink"), dash: dashed(RECORDED) };
    return recordedOf(overlay, curve) ? [line, recorded] : [line];
  });
}

/** Zero is darker than the grid, and so is the axis at the left. */
function drawRules(chart: uPlot, palette: Palette): void {
  const { ctx, bbox, scales } = chart;
  const { min, max } = scales.y ?? {};
  ctx.save();
  ctx.strokeStyle = palette("ink-3");
  ctx.lineWidth = Math.max(1, (Number.parseFloat(palette("lw-thin")) || 1) * (window.devicePixelRatio || 1));
  ctx.beginPath();
  ctx.moveTo(bbox.left + ctx.lineWidth / 2, bbox.top);
  ctx.lineTo(bbox.left + ctx.lineWidth / 2, bbox.top + bbox.height);
  if (typeof min === "number" && typeof max === "number" && min <= 0 && max >= 0) {
    const y = Math.round(chart.valToPos(0, "y", true)) - ctx.lineWidth / 2;
    ctx.moveTo(bbox.left, Math.max(bbox.top + ctx.lineWidth / 2, y));
    ctx.lineTo(bbox.left + bbox.width, Math.max(bbox.top + ctx.lineWidth / 2, y));
  }
  ctx.stroke();
  ctx.restore();
}

function optionsOf(spec: ChartSpec, palette: Palette, shown: () => Stretch): uPlot.Options {
  const { width, height } = spec;
  const thin = Number.parseFloat(palette("lw-thin")) || 1;
  return {
    width,
    height,
    padding: [0, 0, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, auto: false, range: () => [shown().from, shown().to] },
      y: { auto: false, range: () => [spec.range().least, spec.range().most] },
    },
    axes: [
      { show: false },
      {
        size: 0,
        gap: 0,
        splits: () => [...spec.ticks()],
        values: (_, splits) => splits.map(() => ""),
        grid: { stroke: palette("grid"), width: thin },
        ticks: { show: false },
      },
    ],
    series: [{}, ...seriesOf(spec, palette)],
    hooks: { drawAxes: [(chart) => drawRules(chart, palette)] },
  };
}

/** Columns of numbers for the window: time, then the curves in drawing order, each with what was recorded of it. */
function dataOf({ log, curves, overlay, width }: ChartSpec, shown: Stretch): uPlot.AlignedData {
  const first = rowAt(log, shown.from);
  const last = Math.min(log.rows - 1, rowAt(log, shown.to) + 1);
  const scale = window.devicePixelRatio || 1;
  const known = order(curves).map(({ source }) => knownCurve(source, log));
  const drawn = drawable(log.view("time"), known, first, last, Math.max(1, Math.round(width * scale)));
  const columns = order(curves).flatMap((curve, i) => {
    const line = drawn.curves[i] ?? [];
    const values = recordedOf(overlay, curve);
    return overlay && values ? [line, laidOver(overlay.time, values, drawn.time, drawn.paired)] : [line];
  });
  return [drawn.time, ...columns];
}

/** Curves over time on a canvas. The cursor is none of its business: it is drawn anew only for another window or log. */
export class Chart {
  private readonly plot: uPlot;

  /** @param shown the window at any time */
  constructor(
    host: HTMLElement,
    private readonly spec: ChartSpec,
    private readonly shown: () => Stretch,
  ) {
    this.plot = new uPlot(optionsOf(spec, paletteOf(host), shown), dataOf(spec, shown()), host);
  }

  /** Draws what the log and the window are now. */
  refresh(): void {
    const { from, to } = this.shown();
    const { least, most } = this.spec.range();
    this.plot.batch(() => {
      this.plot.setData(dataOf(this.spec, { from, to }), false);
      this.plot.setScale("x", { min: from, max: to });
      this.plot.setScale("y", { min: least, max: most });
    });
  }

  /** Takes it off the page. */
  end(): void {
    this.plot.destroy();
  }
}
