import { useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import { roadSpeed } from "../state/format.ts";
import { hidden } from "../state/predict.ts";
import { chosen, cursor, duration, frame, moveTo, now, playing, run, toMoment } from "../state/road.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { follow, plotWidth, setStretch, timeAt, xOf, zoom } from "./time-frame.ts";

/** Seconds that Shift and an arrow key move. */
const LONG_STEP = 1;

function onKey(event: KeyboardEvent): void {
  const acts: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => (event.shiftKey ? moveTo(cursor.value - LONG_STEP) : frame(-1)),
    ArrowRight: () => (event.shiftKey ? moveTo(cursor.value + LONG_STEP) : frame(1)),
    PageUp: () => toMoment(-1),
    PageDown: () => toMoment(1),
    Home: () => moveTo(0),
    End: () => moveTo(duration.value),
    "+": () => zoom(1.5, cursor.value),
    "-": () => zoom(1 / 1.5, cursor.value),
    s: () => setStretch("from", cursor.value),
    e: () => setStretch("to", cursor.value),
  };
  const act = acts[event.key];
  if (!act) return;
  event.preventDefault();
  playing.value = false;
  act();
}

function words(): string {
  const instant = now.value;
  if (!instant) return "";
  const regime = hidden.value.has("regime") ? "?" : (t.roadRegimes[instant.regime]?.title ?? "");
  const speed = hidden.value.has("road-speed") ? "?" : roadSpeed(units.value, instant.at.speed);
  return t.plots.cursorAt(clockTime(instant.time), speed, regime);
}

/** Moves the line without drawing anything else: only its place and its label change. */
function usePlaced() {
  const line = useRef<HTMLDivElement>(null);
  const label = useRef<HTMLSpanElement>(null);
  useSignalEffect(() => {
    const x = xOf(cursor.value);
    const shown = x >= -1 && x <= plotWidth.value + 1;
    if (line.current) {
      line.current.style.transform = `translateX(${x}px)`;
      line.current.style.visibility = shown ? "visible" : "hidden";
    }
    if (label.current) label.current.textContent = clockTime(cursor.value);
  });
  useSignalEffect(() => {
    if (playing.value) follow(cursor.value);
  });
  return { line, label };
}

/** The stretch that is chosen, shaded through all rows. */
function Shade() {
  const stretch = chosen.value;
  if (!stretch) return null;
  const left = Math.max(0, xOf(stretch.from));
  const right = Math.min(plotWidth.value, xOf(stretch.to));
  if (right <= left) return null;
  return <div class="stretch-shade" style={{ left: `${left}px`, width: `${right - left}px` }} />;
}

/** The cursor over lanes and plots: dragged, clicked, or moved by keys; a drag with Shift chooses a stretch. */
export function CursorLine() {
  const { line, label } = usePlaced();
  const from = useRef<number | null>(null);
  const time = (event: PointerEvent): number => timeAt(event.offsetX);
  return (
    <div
      class="time-cursor"
      role="slider"
      tabIndex={0}
      aria-label={t.plots.cursor}
      aria-valuemin={0}
      aria-valuemax={Math.round(duration.value)}
      aria-valuenow={Math.round(now.value?.time ?? 0)}
      aria-valuetext={words()}
      aria-disabled={run.value === null}
      onKeyDown={onKey}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        playing.value = false;
        from.current = event.shiftKey ? time(event) : null;
        moveTo(time(event));
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        moveTo(time(event));
        const start = from.current;
        if (start === null || Math.abs(time(event) - start) < 0.2) return;
        chosen.value = { from: Math.min(start, cursor.value), to: Math.max(start, cursor.value) };
      }}
      onWheel={(event) => {
        event.preventDefault();
        zoom(event.deltaY < 0 ? 1.25 : 1 / 1.25, timeAt(event.offsetX));
      }}
    >
      <Shade />
      <div class="cursor-line" ref={line}>
        <span class="cursor-time" ref={label} />
      </div>
    </div>
  );
}
