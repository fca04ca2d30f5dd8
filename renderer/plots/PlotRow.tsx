import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import uPlot from "uplot";
import type { LogReader } from "../../sim/run/log.ts";
import { num, type Units } from "../state/format.ts";
import { hidden } from "../state/predict.ts";
import { now, run } from "../state/road.ts";
import { showRoadWorking } from "../state/road-working.ts";
import { projector, theme, units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { extentOf, ownExtent } from "./extent.ts";
import { colour, dashOf, fillOf, strokeOf } from "./paint.ts";
import { type Curve, type Plot, shownValue } from "./registry.ts";
import { roundTicks } from "./ticks.ts";
import { AXIS, plotWidth, windowNow } from "./time-frame.ts";

const FACE = '"Source Sans 3 Variable", sans-serif';

interface RowProps {
  readonly plot: Plot;
  readonly width: number;
  readonly height: number;
}

const isHidden = (curve: Curve): boolean => curve.hides !== undefined && hidden.value.has(curve.hides);

/** Columns of the plot as they are now: time, then its curves. */
function dataOf(log: LogReader, plot: Plot): uPlot.AlignedData {
  return [log.view("time"), ...plot.curves.map((curve) => curve.of(log))] as unknown as uPlot.AlignedData;
}

/** Extent of the shown curves over all rows: it stays while one zooms, so that heights can be compared. */
function rangeOf(log: LogReader, plot: Plot): [number, number] {
  const curves = plot.curves.filter((curve) => !isHidden(curve)).map((curve) => curve.of(log));
  const last = log.rows - 1;
  const found = plot.id === "charge" ? ownExtent(curves, 0, last) : extentOf(curves, 0, last);
  const room = (found.most - found.least) * 0.06;
  return [found.least - (found.least < 0 ? room : 0), found.most + room];
}

function seriesOf(plot: Plot): uPlot.Series[] {
  return plot.curves.map((curve) => ({
    show: !isHidden(curve),
    stroke: strokeOf(curve),
    width: 1.5,
    dash: dashOf(curve.dash),
    points: { show: false },
    ...(curve.area
      ? { fill: (u: uPlot) => fillOf(u.ctx, curve, plot.id === "recovered" ? "chem" : "elec") }
      : {}),
  }));
}

function optionsOf(
  log: LogReader,
  plot: Plot,
  { width, height }: RowProps,
  shownUnits: Units,
): uPlot.Options {
  const factor = plot.perSi(shownUnits);
  const [least, most] = rangeOf(log, plot);
  const splits = roundTicks(least * factor, most * factor).map((value) => value / factor);
  const step = Math.abs((splits[1] ?? 1) - (splits[0] ?? 0)) * factor;
  const decimals = step < 1 ? 1 : 0;
  const { text } = metrics.value;
  return {
    width,
    height,
    padding: [4, 0, 4, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, auto: false, range: () => [windowNow.value.from, windowNow.value.to] },
      y: { auto: false, range: () => rangeOf(log, plot) },
    },
    axes: [
      { show: false },
      {
        size: AXIS,
        gap: 6,
        font: `420 ${text}px ${FACE}`,
        stroke: colour("ink-2"),
        splits: () => splits,
        values: (_, values) => values.map((value) => num(value * factor, decimals)),
        grid: { stroke: colour("grid"), width: 1 },
        ticks: { show: false },
        border: { show: true, stroke: colour("ink-3"), width: 1 },
      },
    ],
    series: [{}, ...seriesOf(plot)],
    hooks: { drawAxes: [drawZero] },
  };
}

/** The zero line is darker than the grid. */
function drawZero(u: uPlot): void {
  const { min, max } = u.scales["y"] ?? {};
  if (min === undefined || max === undefined || min === null || max === null || min > 0 || max < 0) return;
  const y = Math.round(u.valToPos(0, "y", true)) + 0.5;
  u.ctx.save();
  u.ctx.strokeStyle = colour("ink-3");
  u.ctx.lineWidth = 1;
  u.ctx.beginPath();
  u.ctx.moveTo(u.bbox.left, y);
  u.ctx.lineTo(u.bbox.left + u.bbox.width, y);
  u.ctx.stroke();
  u.ctx.restore();
}

/** The curves of a plot, drawn when the run, the window or the look changes; the cursor lies over them and draws nothing. */
function Curves(props: RowProps) {
  const { plot, width, height } = props;
  const ref = useRef<HTMLDivElement>(null);
  const made = useRef<uPlot | null>(null);
  const log = run.value?.log ?? null;
  const look = `${theme.value} ${projector.value} ${units.value.road} ${units.value.shaft} ${[...hidden.value].join()}`;
  useEffect(() => {
    if (!ref.current || !log || width < 50) return;
    const chart = new uPlot(optionsOf(log, plot, props, units.value), dataOf(log, plot), ref.current);
    made.current = chart;
    return () => {
      chart.destroy();
      made.current = null;
    };
  }, [log, plot.id, width, height, look, metrics.value.text]);
  useSignalEffect(() => {
    const { from, to } = windowNow.value;
    made.current?.setScale("x", { min: from, max: to });
  });
  const grown = run.value?.summary ? 0 : (run.value?.log.rows ?? 0);
  useEffect(() => {
    if (log && grown > 0) made.current?.setData(dataOf(log, plot));
  }, [grown]);
  return <div class="curves" ref={ref} aria-hidden="true" />;
}

/** Name and value of one curve at the cursor; the value answers with its working. */
function Value({ plot, curve }: { plot: Plot; curve: Curve }) {
  const one = run.value;
  const at = now.value;
  const asked = isHidden(curve);
  const value = one && at ? (curve.of(one.log)[at.row] ?? Number.NaN) : Number.NaN;
  return (
    <tr>
      <th scope="row">{curve.title}</th>
      <td>
        <button
          type="button"
          class={`number ink ${curve.colour}`}
          onClick={() => showRoadWorking(curve.working)}
        >
          {asked ? "?" : shownValue(plot, units.value, value)}
        </button>
      </td>
    </tr>
  );
}

/** One plot: its name at the left, its curves, and its values at the cursor. */
export function PlotRow(props: RowProps) {
  const { plot, height } = props;
  return (
    <div class="plot-row" style={{ height: `${height}px` }}>
      <div class="plot-name">
        <b>{t.plots.names[plot.id]}</b>
        <span>{plot.unit(units.value)}</span>
      </div>
      <Curves {...props} width={plotWidth.value + AXIS} />
      <table class="plot-values" aria-label={`${t.plots.names[plot.id]}, ${plot.unit(units.value)}`}>
        <tbody>
          {plot.curves.map((curve) => (
            <Value key={curve.id} plot={plot} curve={curve} />
          ))}
        </tbody>
      </table>
    </div>
  );
}
