import uPlot from "uplot";
import { stretchAt } from "../../../cycles/sample.ts";
import { drawable, type KnownCurve } from "../../plots/time/dense.ts";
import { type Palette, paletteOf } from "../../plots/time/inks.ts";
import { Peaks } from "../../plots/time/peaks.ts";
import type { Range } from "../../plots/time/range.ts";
import type { Stretch } from "../../state/road.ts";

/** Two lists of one length. */
export interface CurveData {
  /** s, rising */
  readonly time: Float64Array;
  readonly values: Float64Array;
}

/** What one row of the plot is drawn from. */
export interface CurveSpec {
  readonly after: CurveData;
  /** as recorded, dashed under it; null: nothing was changed */
  readonly before: CurveData | null;
  readonly range: Range;
  readonly ticks: readonly number[];
  readonly width: number;
  readonly height: number;
}

/** Dashes of what was recorded, px at a line of usual weight. */
const RECORDED = [4, 3];

const peaksOf = new WeakMap<Float64Array, Peaks>();

function known(values: Float64Array): KnownCurve {
  const peaks = peaksOf.get(values) ?? new Peaks();
  peaksOf.set(values, peaks);
  peaks.extend(values);
  return { values, peaks };
}

/** The part of a curve in a window, so dense as pixels can show. */
function part({ time, values }: CurveData, { from, to }: Stretch, columns: number): uPlot.AlignedData {
  if (time.length < 2) return [[], []];
  const first = stretchAt(time, from);
  const last = Math.min(time.length - 1, stretchAt(time, to) + 2);
  const drawn = drawable(time, [known(values)], first, last, columns);
  return [drawn.time, drawn.curves[0] ?? []];
}

function dataOf({ after, before, width }: CurveSpec, shown: Stretch): uPlot.AlignedData {
  const columns = Math.max(1, Math.round(width * (window.devicePixelRatio || 1)));
  const now = part(after, shown, columns);
  return before ? uPlot.join([part(before, shown, columns), now]) : now;
}

function seriesOf({ before }: CurveSpec, palette: Palette): uPlot.Series[] {
  const scale = window.devicePixelRatio || 1;
  const weight = Number.parseFloat(palette("lw-mid")) || 1.5;
  const plain = { points: { show: false }, width: weight, pxAlign: 0, spanGaps: true } as const;
  const line: uPlot.Series = { ...plain, stroke: palette("ring-line") };
  const recorded: uPlot.Series = {
    ...plain,
    width: weight * 0.6,
    stroke: palette("loss-line"),
    dash: RECORDED.map((each) => each * scale),
  };
  return before ? [recorded, line] : [line];
}

/** Zero is darker than the grid, and so is the axis at the left. */
function drawRules(chart: uPlot, palette: Palette, { least, most }: Range): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.strokeStyle = palette("ink-3");
  ctx.lineWidth = Math.max(1, window.devicePixelRatio || 1);
  ctx.beginPath();
  ctx.moveTo(bbox.left + ctx.lineWidth / 2, bbox.top);
  ctx.lineTo(bbox.left + ctx.lineWidth / 2, bbox.top + bbox.height);
  const zero = bbox.top + bbox.height * (most / (most - least));
  const y = Math.min(bbox.top + bbox.height - ctx.lineWidth / 2, Math.round(zero));
  ctx.moveTo(bbox.left, y);
  ctx.lineTo(bbox.left + bbox.width, y);
  ctx.stroke();
  ctx.restore();
}

/** Curves of a cycle on a canvas. */
export class Curves {
  private readonly plot: uPlot;

  /** @param shown the window of time, at any moment */
  constructor(
    host: HTMLElement,
    private readonly spec: CurveSpec,
    private readonly shown: () => Stretch,
  ) {
    const palette = paletteOf(host);
    const thin = Number.parseFloat(palette("lw-thin")) || 1;
    const options: uPlot.Options = {
      width: spec.width,
      height: spec.height,
      padding: [0, 0, 0, 0],
      legend: { show: false },
      cursor: { show: false },
      scales: {
        x: { time: false, auto: false, range: () => [shown().from, shown().to] },
        y: { auto: false, range: () => [spec.range.least, spec.range.most] },
      },
      axes: [
        { show: false },
        {
          size: 0,
          gap: 0,
          splits: () => [...spec.ticks],
          values: (_, splits) => splits.map(() => ""),
          grid: { stroke: palette("grid"), width: thin },
          ticks: { show: false },
        },
      ],
      series: [{}, ...seriesOf(spec, palette)],
      hooks: { drawAxes: [(chart) => drawRules(chart, palette, spec.range)] },
    };
    this.plot = new uPlot(options, dataOf(spec, shown()), host);
  }

  /** Draws the window as it is now. */
  refresh(): void {
    const { from, to } = this.shown();
    this.plot.batch(() => {
      this.plot.setData(dataOf(this.spec, { from, to }), false);
      this.plot.setScale("x", { min: from, max: to });
    });
  }

  /** Takes it off the page. */
  end(): void {
    this.plot.destroy();
  }
}
