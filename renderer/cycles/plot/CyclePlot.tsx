import "uplot/dist/uPlot.min.css";
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { sample } from "../../../cycles/sample.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { mpsToKmh, mpsToMph } from "../../../shared/units.ts";
import { timeTicks } from "../../plots/time/ticks.ts";
import { num, roadSpeed, roadUnitName } from "../../state/format.ts";
import { units } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { metrics } from "../../ui/metrics.ts";
import { clockTime } from "../../ui/time.ts";
import { useSize } from "../../ui/use-size.ts";
import { replyShown, rowShown } from "../figures-state.ts";
import { chosenSpan, cycleShown } from "../state.ts";
import { distanceText } from "../units.ts";
import { CurveRow } from "./CurveRow.tsx";
import { curveRange, isLevel } from "./range.ts";
import { Stretch } from "./Stretch.tsx";
import { chooseBetween, durationShown, plotWidth, timeAt, windowShown, xOf } from "./window.ts";

const words = t.cycles;

/** A title, or what stands before its comma or bracket, as far as it fits. */
function fitting(title: string, width: number, text: number): string {
  const short = title.replace(/[,(].*$/, "").trim();
  return [title, short].find((one) => measure(one, text) < width) ?? "";
}

/** Named parts over the curves, as far as their names have room. */
function Phases({ trace, left, height }: { trace: CycleTrace; left: number; height: number }) {
  const { text } = metrics.value;
  const { from, to } = windowShown.value;
  return (
    <div
      class="cy-phases"
      style={{ left: `${left}px`, width: `${plotWidth.value}px`, height: `${height}px` }}
    >
      {trace.phases
        .filter(({ start, end }) => end > from && start < to)
        .map(({ id, title, start, end }) => {
          const x = Math.max(0, xOf(start));
          const width = Math.min(plotWidth.value, xOf(end)) - x;
          return (
            <span key={id} title={title} style={{ left: `${x}px`, width: `${width}px` }}>
              {fitting(title, width - 10, text)}
            </span>
          );
        })}
    </div>
  );
}

/** Stretches that are hatched: switched off, or nothing recorded. */
function Hatched({ spans, name }: { spans: CycleTrace["soaks"]; name: string }) {
  const { text } = metrics.value;
  const { from, to } = windowShown.value;
  return (
    <>
      {spans
        .filter(({ start, end }) => end > from && start < to)
        .map(({ start, end }) => {
          const x = Math.max(0, xOf(start));
          const width = Math.max(2, Math.min(plotWidth.value, xOf(end)) - x);
          const fits = measure(name, text) + 8 < width;
          return (
            <span key={start} class="cy-hatched" title={name} style={{ left: `${x}px`, width: `${width}px` }}>
              {fits && <span>{name}</span>}
            </span>
          );
        })}
    </>
  );
}

/** Times at the foot. */
function Axis({ left, top }: { left: number; top: number }) {
  const { from, to } = windowShown.value;
  const { text } = metrics.value;
  const ticks = timeTicks(from, to, plotWidth.value, text * 4.6);
  const decimals = (ticks[1] ?? 1) - (ticks[0] ?? 0) < 1 ? 1 : 0;
  return (
    <div
      class="time-ticks cy-axis"
      aria-hidden="true"
      style={{ left: `${left}px`, width: `${plotWidth.value}px`, top: `${top}px` }}
    >
      {ticks
        .filter((time) => xOf(time) < plotWidth.value - text)
        .map((time) => (
          <span key={time} style={{ left: `${xOf(time)}px` }}>
            {clockTime(time, decimals)}
          </span>
        ))}
    </div>
  );
}

/** What stands at the pointer: time, speed and grade. */
function Hover({ trace, time }: { trace: CycleTrace; time: number | null }) {
  if (time === null) return null;
  const { speed, grade } = sample(trace, time);
  const steep = isLevel(trace.grade) ? "" : `, ${num(grade * 100, 1)} %`;
  return (
    <span class="cy-hover">
      {words.atTime(clockTime(time))} <b>{roadSpeed(units.value, speed)}</b>
      {steep}
    </span>
  );
}

/** Lines told apart by their dashes and names. */
const Legend = () => (
  <fieldset class="cy-legend" aria-label={words.legend}>
    <span>
      <svg width="34" height="8" aria-hidden="true">
        <line x1="0" y1="4" x2="34" y2="4" class="stroke-before" />
      </svg>
      {words.before}
    </span>
    <span>
      <svg width="34" height="8" aria-hidden="true">
        <line x1="0" y1="4" x2="34" y2="4" class="stroke-after" />
      </svg>
      {words.after}
    </span>
  </fieldset>
);

/** Chooses a stretch by dragging, says what stands at the pointer. */
function Surface({
  trace,
  left,
  top,
  height,
}: {
  trace: CycleTrace;
  left: number;
  top: number;
  height: number;
}) {
  const hover = useSignal<number | null>(null);
  const from = useRef<number | null>(null);
  const span = chosenSpan.value;
  const timeOf = (event: PointerEvent): number =>
    event.currentTarget instanceof Element
      ? timeAt(event.clientX - event.currentTarget.getBoundingClientRect().left)
      : 0;
  const x1 = span ? Math.max(0, xOf(span.from)) : 0;
  const x2 = span ? Math.min(plotWidth.value, xOf(span.to)) : 0;
  return (
    <div
      class="cy-surface"
      style={{ left: `${left}px`, top: `${top}px`, width: `${plotWidth.value}px`, height: `${height}px` }}
      onPointerDown={(event) => {
        if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = timeOf(event);
      }}
      onPointerMove={(event) => {
        hover.value = timeOf(event);
        if (from.current !== null) chooseBetween(from.current, timeOf(event));
      }}
      onPointerUp={() => {
        from.current = null;
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
      onPointerLeave={() => {
        hover.value = null;
      }}
    >
      {span && x2 > x1 && <span class="cy-chosen" style={{ left: `${x1}px`, width: `${x2 - x1}px` }} />}
      {hover.value !== null && <span class="cy-line" style={{ left: `${xOf(hover.value)}px` }} />}
      <Hover trace={trace} time={hover.value} />
    </div>
  );
}

function Drawn({ trace, width, height }: { trace: CycleTrace; width: number; height: number }) {
  const { text } = metrics.value;
  const reply = replyShown.value;
  const left = Math.round(text * 4.4);
  const inner = Math.max(0, width - left - 14);
  useLayoutEffect(() => {
    plotWidth.value = inner;
  }, [inner]);
  const level = isLevel(trace.grade);
  const band = trace.phases.length > 0 ? Math.round(text * 1.6) : 6;
  const foot = height - text * 1.7;
  const room = foot - band;
  const low = level ? 0 : Math.round(Math.min(room * 0.3, text * 6));
  const high = room - low - (level ? 0 : 10);
  const times = units.value.road === "kmh" ? mpsToKmh(1) : mpsToMph(1);
  const curves = useMemo(() => {
    const before = reply?.treated.beforeMoved;
    return {
      speed: { time: trace.time, values: trace.speed },
      grade: { time: trace.time, values: trace.grade },
      speedBefore: before ? { time: before.time, values: before.speed } : null,
      gradeBefore: before ? { time: before.time, values: before.grade } : null,
    };
  }, [trace, reply]);
  const speedRange = useMemo(
    () => curveRange(trace.speed, curves.speedBefore?.values ?? null, times, 1 / times),
    [curves, times],
  );
  const gradeRange = useMemo(
    () => curveRange(trace.grade, curves.gradeBefore?.values ?? null, 100, 0.01),
    [curves],
  );
  if (inner < 40 || high < 20) return null;
  return (
    <>
      <Phases trace={trace} left={left} height={band} />
      <CurveRow
        name={words.speed}
        unit={roadUnitName(units.value)}
        times={times}
        after={curves.speed}
        before={curves.speedBefore}
        range={speedRange}
        left={left}
        top={band}
        width={inner}
        height={high}
      />
      {!level && (
        <CurveRow
          name={words.grade}
          unit="%"
          times={100}
          after={curves.grade}
          before={curves.gradeBefore}
          range={gradeRange}
          left={left}
          top={band + high + 10}
          width={inner}
          height={low}
        />
      )}
      <div
        class="cy-marks"
        style={{ left: `${left}px`, top: `${band}px`, width: `${inner}px`, height: `${room}px` }}
      >
        <Hatched spans={trace.soaks} name={words.soak} />
        {reply && <Hatched spans={reply.treated.openGaps} name={words.gap} />}
      </div>
      <Surface trace={trace} left={left} top={band} height={room} />
      <Axis left={left} top={foot} />
    </>
  );
}

/** View B: the cycle over time. */
export function CyclePlot() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const trace = cycleShown.value;
  const row = rowShown.value;
  const said = trace
    ? words.describe(
        trace.title,
        clockTime(durationShown.value, 0),
        row ? distanceText(units.value, row.statistics.distance) : "–",
        row ? roadSpeed(units.value, row.statistics.maxSpeed) : "–",
      )
    : words.unclear;
  return (
    <>
      {replyShown.value && <Legend />}
      <div class="cy-plot" ref={ref} role="img" aria-label={said}>
        {trace && width > 0 && <Drawn trace={trace} width={width} height={height} />}
        {!trace && <p class="empty">{words.unclear}</p>}
      </div>
      {trace && <Stretch />}
    </>
  );
}
