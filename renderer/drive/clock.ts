import { effect } from "@preact/signals";
import { playFor, playing } from "../state/road.ts";

/** Longest step of one frame, s: a window that slept does not catch up. */
const LONGEST = 0.25;

/** While a run plays, moves the cursor once a frame. It does nothing else. Returns what stops it. */
export function startClock(): () => void {
  let frame = 0;
  let last = 0;
  const beat = (now: number): void => {
    frame = 0;
    if (!playing.value) return;
    if (last > 0) playFor(Math.min(LONGEST, (now - last) / 1000));
    last = now;
    frame = requestAnimationFrame(beat);
  };
  const stop = effect(() => {
    if (!playing.value || frame !== 0) return;
    last = 0;
    frame = requestAnimationFrame(beat);
  });
  return () => {
    stop();
    cancelAnimationFrame(frame);
  };
}
