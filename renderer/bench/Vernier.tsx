import { useRef } from "preact/hooks";
import type { Shaft } from "../../sim/bench/shafts.ts";
import { sliderNames, speedKeys } from "../lever/Grips.tsx";
import { fromShaftUnit, num, toShaftUnit } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { bench, endGesture, limits, setSpeed } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { useDrag } from "../ui/use-drag.ts";
import { useSize } from "../ui/use-size.ts";
import { type VernierLayout, vernierLayout } from "./vernier.ts";

const LENGTH = { fine: 5, half: 8, full: 11 } as const;

function Strip({
  layout,
  width,
  height,
  shaft,
}: {
  layout: VernierLayout;
  width: number;
  height: number;
  shaft: Shaft;
}) {
  const { below, above, marks } = layout;
  const foot = height - 1;
  const text = metrics.value.text;
  return (
    <svg width={width} height={height} aria-hidden="true">
      {below !== null && <rect class="limitfill" x={0} y={0} width={below} height={height - 2} />}
      {below !== null && <line class="limitline" x1={below} x2={below} y1={0} y2={foot} />}
      {above !== null && <rect class="limitfill" x={above} y={0} width={width - above} height={height - 2} />}
      {above !== null && <line class="limitline" x1={above} x2={above} y1={0} y2={foot} />}
      {marks.map(({ x, kind, value }) => (
        <line key={value} class="tickmark" x1={x} x2={x} y1={foot} y2={foot - (LENGTH[kind] * text) / 14} />
      ))}
      {marks.map(
        ({ x, value, labelled }) =>
          labelled && (
            <text key={value} class="label tick" x={x} y={height - text * 1.05} text-anchor="middle">
              {num(value)}
            </text>
          ),
      )}
      <line class="plotax" x1={0} x2={width} y1={height - 0.5} y2={height - 0.5} />
      <path
        class={`fillline ${shaft}`}
        d={`M${width / 2} ${foot}l${-0.43 * text} ${-0.64 * text}h${0.86 * text}Z`}
      />
      <line class={`stroke index ${shaft}`} x1={width / 2} x2={width / 2} y1={2} y2={height - text * 0.57} />
    </svg>
  );
}

/** The number on a ruled strip that moves under a fixed index: drag it, or use the keys. */
export function Vernier({ shaft }: { shaft: Shaft }) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const start = useRef(0);
  const rpm = units.value.shaft === "rpm";
  const { text } = metrics.value;
  const perPixel = ((rpm ? 20 : 2) * 14) / text;
  const shown = (speed: number): number => toShaftUnit(units.value, speed);
  const range = limits.value[shaft];
  const follows = bench.value.roles[shaft] === "follow";
  const layout = vernierLayout({
    width,
    text,
    value: shown(bench.value.speeds[shaft]),
    least: shown(range.least),
    most: shown(range.most),
    perPixel,
    fine: rpm ? 100 : 10,
  });
  const drag = useDrag({
    onStart: () => {
      start.current = bench.value.speeds[shaft];
    },
    onMove: (dx, _, shift) => {
      const by = -dx * (shift ? perPixel / 10 : perPixel);
      setSpeed(shaft, start.current + fromShaftUnit(units.value, by), `vernier:${shaft}`);
    },
  });
  const strip = width > 0 && <Strip layout={layout} width={width} height={height} shaft={shaft} />;
  if (follows)
    return (
      <div class="vernier" ref={ref}>
        {strip}
      </div>
    );
  return (
    <div
      class="vernier given"
      ref={ref}
      role="slider"
      tabIndex={0}
      {...sliderNames(shaft)}
      aria-label={t.card.vernier(t.shafts[shaft])}
      {...drag}
      onKeyDown={(event) => speedKeys(event, shaft)}
      onKeyUp={endGesture}
    >
      {strip}
    </div>
  );
}
