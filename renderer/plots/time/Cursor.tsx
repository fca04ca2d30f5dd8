import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { chosen, cursor, duration, frame, held, moveTo, playing, run, toMoment } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import { metrics } from "../../ui/metrics.ts";
import { clockTime } from "../../ui/time.ts";
import type { TimeLayout } from "./layout.ts";
import { Ends, Shade } from "./Stretch.tsx";
import { boxOff, choose, follow, pan, plotWidth, setEnd, timeAt, windowNow, xOf, zoom } from "./view.ts";
import { cursorWords } from "./words.ts";

/** Seconds of an arrow key with Shift. */
const LONG_STEP = 1;

/** Length of the window after a press on + over before. */
const CLOSER = 0.5;

/** Length of the window for each px of the wheel. */
const WHEEL = 1.0015;

/** Shorter drags with Shift than this, px, choose nothing. */
const LEAST_DRAG = 3;

/** How near a press must be to a moment's mark to take it, px. */
const NEAR = 6;

function jump(by: number): void {
  playing.value = false;
  moveTo(cursor.value + by);
}

function go(time: number): void {
  playing.value = false;
  moveTo(time);
}

const KEYS: Readonly<Record<string, (shift: boolean) => void>> = {
  ArrowLeft: (shift) => (shift ? jump(-LONG_STEP) : frame(-1)),
  ArrowDown: (shift) => (shift ? jump(-LONG_STEP) : frame(-1)),
  ArrowRight: (shift) => (shift ? jump(LONG_STEP) : frame(1)),
  ArrowUp: (shift) => (shift ? jump(LONG_STEP) : frame(1)),
  PageDown: () => toMoment(-1),
  PageUp: () => toMoment(1),
  Home: () => go(0),
  End: () => go(duration.value),
  "+": () => zoom(CLOSER, cursor.value),
  "=": () => zoom(CLOSER, cursor.value),
  "-": () => zoom(1 / CLOSER, cursor.value),
  "0": () => zoom(Number.POSITIVE_INFINITY, cursor.value),
  s: () => setEnd("from", cursor.value),
  e: () => setEnd("to", cursor.value),
};

function onKeyDown(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey || !run.value) return;
  const act = KEYS[event.key];
  const lets = event.key === "Escape" && chosen.value !== null;
  if (!act && !lets) return;
  event.preventDefault();
  event.stopPropagation();
  if (act) act(event.shiftKey);
  else chosen.value = null;
}

interface CursorProps {
  readonly layout: TimeLayout;
}

/** The line, its flag and its time. A frame moves it and changes its words; nothing else is drawn. */
function Line({ layout }: CursorProps) {
  const line = useRef<HTMLDivElement>(null);
  const said = useRef<HTMLSpanElement>(null);
  useSignalEffect(() => {
    const time = cursor.value;
    follow(time);
    const element = line.current;
    if (!element || !said.current) return;
    const x = Math.min(plotWidth.value, Math.max(0, xOf(time)));
    element.style.transform = `translateX(${x.toFixed(2)}px)`;
    said.current.style.translate = `${-boxOff(time, metrics.value.text).toFixed(1)}px`;
    const clock = clockTime(time);
    if (said.current.textContent !== clock) said.current.textContent = clock;
    element.setAttribute("aria-valuenow", time.toFixed(1));
    element.setAttribute("aria-valuetext", cursorWords(clock));
  });
  return (
    <div
      ref={line}
      class="time-cursor"
      role="slider"
      tabIndex={0}
      aria-label={t.plots.cursor}
      aria-valuemin={0}
      aria-valuemax={Number(duration.value.toFixed(1))}
      aria-disabled={run.value === null}
      onKeyDown={onKeyDown}
      style={{ height: `${layout.foot + 5}px` }}
    >
      <svg class="flag" viewBox="-7 0 14 9" aria-hidden="true">
        <path d="M-7 0h14l-7 9z" />
      </svg>
      <span class="time-box" ref={said} />
    </div>
  );
}

/** Time of the moment whose mark is pressed, if one is. */
function momentAt(x: number): number | null {
  const { from, to } = windowNow.value;
  const near = (run.value?.summary?.moments ?? [])
    .filter(({ time }) => time >= from && time <= to)
    .map(({ time }) => ({ time, off: Math.abs(xOf(time) - x) }))
    .sort((a, b) => a.off - b.off)[0];
  return near && near.off <= NEAR ? near.time : null;
}

/** The cursor is no longer drawn about, also when its place is left meanwhile. */
function letGo(): void {
  held.value = false;
}

/** A press moves the cursor, a drag goes on doing so; with Shift it chooses a stretch. */
function useDragging(layout: TimeLayout) {
  const start = useRef<number | null>(null);
  const xIn = (event: PointerEvent): number => {
    const box = event.currentTarget instanceof Element ? event.currentTarget.getBoundingClientRect() : null;
    return event.clientX - (box?.left ?? 0);
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || !run.value || !(event.currentTarget instanceof HTMLElement)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      event.currentTarget.querySelector<HTMLElement>(".time-cursor")?.focus({ preventScroll: true });
      event.preventDefault();
      held.value = true;
      const x = xIn(event);
      start.current = event.shiftKey ? x : null;
      const onMarks = Math.abs(event.offsetY - layout.marks - 4) < NEAR;
      go((onMarks ? momentAt(x) : null) ?? timeAt(x));
    },
    onPointerMove: (event: PointerEvent) => {
      if (!held.value) return;
      const x = Math.min(plotWidth.value, Math.max(0, xIn(event)));
      const from = start.current;
      moveTo(timeAt(x));
      if (from !== null && Math.abs(x - from) >= LEAST_DRAG) choose(timeAt(from), timeAt(x));
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onLostPointerCapture: letGo,
  };
}

/** The wheel shows more or less about the pointer; sideways or with Shift it moves the window. */
function useWheel() {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const turn = (event: WheelEvent): void => {
      if (!run.value) return;
      event.preventDefault();
      const across = event.shiftKey ? event.deltaX || event.deltaY : event.deltaX;
      if (Math.abs(across) > Math.abs(event.deltaY) || event.shiftKey) pan(across / plotWidth.value);
      else zoom(WHEEL ** event.deltaY, timeAt(event.clientX - element.getBoundingClientRect().left));
    };
    element.addEventListener("wheel", turn, { passive: false });
    return () => element.removeEventListener("wheel", turn);
  }, []);
  return ref;
}

/** What lies over lanes and plots: the cursor, the chosen stretch, and what the pointer does. */
export function Cursor({ layout }: CursorProps) {
  const ref = useWheel();
  const drag = useDragging(layout);
  useEffect(() => letGo, []);
  return (
    <div
      ref={ref}
      class="time-over"
      style={{
        left: `${layout.left}px`,
        width: `${layout.width}px`,
        height: `${layout.foot + layout.footHeight}px`,
      }}
      {...drag}
    >
      <Shade layout={layout} />
      <Line layout={layout} />
      <Ends layout={layout} />
    </div>
  );
}
