import { useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import { chosen, cursor, duration, shown } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import { metrics } from "../../ui/metrics.ts";
import { clockTime } from "../../ui/time.ts";
import type { TimeLayout } from "./layout.ts";
import { timeTicks } from "./ticks.ts";
import { boxOff, windowNow, xOf } from "./view.ts";

interface AxisProps {
  readonly layout: TimeLayout;
}

/** Least distance of two labels, and of one from the cursor's time and from a handle, in sizes of text. */
const LABEL = 4.3;
const LABEL_HOURS = 6.4;
const CLEAR = 3.6;
const CLEAR_END = 1.9;

/** The window within the whole drive, as a bar; nothing while all of it is shown. */
function Overview({ layout }: AxisProps) {
  const window = shown.value;
  if (!window) return null;
  const all = duration.value;
  const left = (window.from / all) * layout.width;
  const width = Math.max(3, ((window.to - window.from) / all) * layout.width);
  return (
    <div
      class="overview"
      role="img"
      aria-label={t.plots.zoom.overview(clockTime(window.from), clockTime(window.to))}
      style={{
        left: `${layout.left}px`,
        width: `${layout.width}px`,
        top: `${layout.foot + layout.footHeight + 4}px`,
      }}
    >
      <span style={{ left: `${Math.min(left, layout.width - width)}px`, width: `${width}px` }} />
    </div>
  );
}

/** Times at the foot. Labels that the cursor's own or a handle would touch make way for it. */
export function TimeAxis({ layout }: AxisProps) {
  const { from, to } = windowNow.value;
  const { text } = metrics.value;
  const list = useRef<HTMLDivElement>(null);
  const ticks = timeTicks(from, to, layout.width, text * (to < 3600 ? LABEL : LABEL_HOURS));
  const decimals = (ticks[1] ?? 1) - (ticks[0] ?? 0) < 1 ? 1 : 0;
  useSignalEffect(() => {
    const size = metrics.value.text;
    const held = [{ x: xOf(cursor.value) - boxOff(cursor.value, size), clear: size * CLEAR }];
    if (chosen.value) {
      for (const end of [chosen.value.from, chosen.value.to])
        held.push({ x: xOf(end), clear: size * CLEAR_END });
    }
    for (const label of list.current?.children ?? []) {
      const x = Number(label.getAttribute("data-x"));
      const away = held.some((one) => Math.abs(one.x - x) < one.clear);
      if (label.classList.contains("away") !== away) label.classList.toggle("away", away);
    }
  });
  return (
    <>
      <div
        ref={list}
        class="time-ticks"
        aria-hidden="true"
        style={{ left: `${layout.left}px`, width: `${layout.width}px`, top: `${layout.foot}px` }}
      >
        {ticks.map((time) => {
          const x = xOf(time);
          const edge = x < text * 1.2 ? "first" : x > layout.width - text * 1.2 ? "last" : "";
          return (
            <span key={time} class={edge} data-x={x.toFixed(1)} style={{ left: `${x}px` }}>
              {clockTime(time, decimals)}
            </span>
          );
        })}
      </div>
      <Overview layout={layout} />
    </>
  );
}
