import { effect } from "@preact/signals";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { num } from "../../state/format.ts";
import { run } from "../../state/road.ts";
import { overlays } from "../../state/road-overlay.ts";
import type { Run } from "../../state/run.ts";
import { projector, theme, units } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { metrics } from "../../ui/metrics.ts";
import { type Plot, unitOf } from "../registry.ts";
import { Chart } from "./chart.ts";
import { Guesses } from "./Guesses.tsx";
import type { TimeLayout } from "./layout.ts";
import { Readouts } from "./Readouts.tsx";
import { type Range, rangeOf } from "./range.ts";
import { placedTicks, tickDecimals, valueTicks } from "./ticks.ts";
import { windowNow } from "./view.ts";
import { ASKED, isAsked } from "./words.ts";

interface RowProps {
  readonly plot: Plot;
  readonly top: number;
  readonly height: number;
  readonly layout: TimeLayout;
}

/** Least distance of two ticks, in sizes of text. */
const TICK_LINE = 0.95;

/** Range and ticks of a plot now; of a drive under way anew whenever it has grown. */
function useScale(plot: Plot, height: number, one: Run | null) {
  const { text } = metrics.value;
  const curves = plot.curves.filter((curve) => !isAsked(curve));
  const key = curves.map(({ id }) => id).join();
  const times = plot.shown.times(units.value);
  const overlay = overlays.value;
  return useMemo(() => {
    const range: Range = one
      ? rangeOf(one.log, curves, overlay, plot.fromZero, times)
      : { least: 0, most: 1 / times };
    const ticks = curves.length > 0 ? valueTicks(range, times, height / (text * TICK_LINE)) : [];
    return { curves, key, times, range, ticks };
  }, [plot, one?.log, one?.log.rows, key, overlay, times, height, text]);
}

type Scale = ReturnType<typeof useScale>;

interface CurvesProps extends RowProps {
  readonly one: Run;
  readonly scale: Scale;
}

/** The curves on their canvas. */
function Curves({ plot, height, layout, one, scale }: CurvesProps) {
  const host = useRef<HTMLDivElement>(null);
  const latest = useRef(scale);
  latest.current = scale;
  const chart = useRef<Chart | null>(null);
  const { log } = one;
  const { width } = layout;
  const overlay = overlays.value;
  const look = `${theme.value} ${projector.value} ${metrics.value.text}`;
  useLayoutEffect(() => {
    if (!host.current || width < 1) return;
    const { curves } = scale;
    const made = new Chart(
      host.current,
      {
        log,
        curves,
        overlay,
        width,
        height,
        range: () => latest.current.range,
        ticks: () => latest.current.ticks,
      },
      () => windowNow.peek(),
    );
    chart.current = made;
    let first = true;
    const stop = effect(() => {
      windowNow.value;
      if (!first) made.refresh();
      first = false;
    });
    return () => {
      stop();
      made.end();
      chart.current = null;
    };
  }, [plot, log, scale.key, scale.times, overlay, width, height, look]);
  const grown = one.summary ? 0 : log.rows;
  useLayoutEffect(() => {
    if (grown > 0) chart.current?.refresh();
  }, [grown]);
  return <div class="curves" ref={host} style={{ left: `${layout.left}px`, width: `${width}px` }} />;
}

/** Round values at the left of the curves. */
function Ticks({ layout, height, scale }: Pick<CurvesProps, "layout" | "height" | "scale">) {
  const { range, ticks, times } = scale;
  const decimals = tickDecimals(ticks, times);
  return (
    <div class="value-ticks" style={{ width: `${layout.left - 6}px` }} aria-hidden="true">
      {placedTicks(ticks, range, height, metrics.value.text).map(({ value, y }) => (
        <span key={value} style={{ top: `${y}px` }}>
          {num(value * times, decimals)}
        </span>
      ))}
    </div>
  );
}

/** One plot: name and unit, curves, values at the cursor. */
export function PlotRow(props: RowProps) {
  const { plot, top, height, layout } = props;
  const one = run.value;
  const scale = useScale(plot, height, one);
  const name = t.plots.names[plot.id];
  const asked = plot.curves.filter(isAsked);
  return (
    <div class="plot-row" style={{ top: `${top}px`, height: `${height}px` }}>
      <h3 class="plot-name">
        <b>{name}</b>
        <span class="unit">{unitOf(plot, units.value)}</span>
      </h3>
      <Ticks layout={layout} height={height} scale={scale} />
      {one && <Curves {...props} one={one} scale={scale} />}
      {asked.length > 0 && (
        <div class="asked-box" style={{ left: `${layout.left}px`, width: `${layout.width}px` }}>
          <span>
            {asked.map(({ id }) => t.plots.curves[id].short).join(", ")} {ASKED}
          </span>
        </div>
      )}
      <Guesses plot={plot} height={height} layout={layout} range={scale.range} />
      <Readouts plot={plot} height={height} layout={layout} />
    </div>
  );
}
