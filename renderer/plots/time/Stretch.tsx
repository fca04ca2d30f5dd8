import { useRef } from "preact/hooks";
import { chosen, duration } from "../../state/road.ts";
import { ROW } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { clockTime } from "../../ui/time.ts";
import type { TimeLayout } from "./layout.ts";
import { plotWidth, setEnd, timeAt, xOf } from "./view.ts";

interface StretchProps {
  readonly layout: TimeLayout;
}

/** The chosen stretch, shaded through lanes and plots. */
export function Shade({ layout }: StretchProps) {
  const stretch = chosen.value;
  if (!stretch) return null;
  const left = Math.max(0, xOf(stretch.from));
  const right = Math.min(plotWidth.value, xOf(stretch.to));
  if (right <= left) return null;
  return (
    <div
      class="stretch-shade"
      style={{ left: `${left}px`, width: `${right - left}px`, height: `${layout.foot}px` }}
    />
  );
}

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 };

/** An arrow key moves by a row, with Shift by a second. */
const SECOND = 1;

function End({ end, layout }: StretchProps & { end: "from" | "to" }) {
  const held = useRef(false);
  const stretch = chosen.value;
  if (!stretch) return null;
  const time = stretch[end];
  const x = xOf(time);
  if (x < -1 || x > plotWidth.value + 1) return null;
  const put = (next: number): void => {
    const others = end === "from" ? stretch.to - ROW : stretch.from + ROW;
    setEnd(end, end === "from" ? Math.min(others, next) : Math.max(others, next));
  };
  return (
    <div
      class={`stretch-end ${end}`}
      role="slider"
      tabIndex={0}
      aria-label={end === "from" ? t.plots.stretch.startHandle : t.plots.stretch.endHandle}
      aria-valuemin={0}
      aria-valuemax={Number(duration.value.toFixed(1))}
      aria-valuenow={Number(time.toFixed(1))}
      aria-valuetext={clockTime(time)}
      style={{ left: `${x}px`, top: `${layout.foot}px` }}
      onKeyDown={(event) => {
        const way = STEPS[event.key];
        if (!way) return;
        event.preventDefault();
        event.stopPropagation();
        put(time + way * (event.shiftKey ? SECOND : ROW));
      }}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus({ preventScroll: true });
        held.current = true;
      }}
      onPointerMove={(event) => {
        if (!held.current) return;
        event.stopPropagation();
        const box = event.currentTarget.parentElement?.getBoundingClientRect();
        put(timeAt(Math.min(plotWidth.value, Math.max(0, event.clientX - (box?.left ?? 0)))));
      }}
      onPointerUp={() => {
        held.current = false;
      }}
      onPointerCancel={() => {
        held.current = false;
      }}
    >
      <svg viewBox="-8 0 16 16" aria-hidden="true">
        <path d={end === "from" ? "M0 0V14H-8V6z" : "M0 0V14H8V6z"} />
      </svg>
    </div>
  );
}

/** Handles at the ends of the stretch. */
export const Ends = ({ layout }: StretchProps) => (
  <>
    <End end="from" layout={layout} />
    <End end="to" layout={layout} />
  </>
);
