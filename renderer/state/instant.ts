import { batch, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { held, liveRow, now, playing, run } from "./road.ts";
import type { Now } from "./run.ts";

/** Drawings of Road that show the instant, in the order in which they take turns. */
export const TURNS = ["flow", "stage", "figures"] as const;
export type Turn = (typeof TURNS)[number];

const shown: Readonly<Record<Turn, Signal<Now | null>>> = {
  flow: signal(null),
  stage: signal(null),
  figures: signal(null),
};

/**
 * The instant at the cursor as each group of drawings shows it. While the cursor moves they take turns, one group a
 * frame, so that no frame draws everything anew; as soon as it rests, all show where it is.
 */
export const instant: Readonly<Record<Turn, ReadonlySignal<Now | null>>> = shown;

/** Keeps {@link instant} with the cursor. @returns what stops it */
export function followInstant(): () => void {
  let frame = 0;
  let turn = 0;
  let log = run.peek()?.log;
  /** Deals the next group that lags behind. */
  const deal = (): void => {
    frame = 0;
    const at = now.peek();
    for (let tried = 0; tried < TURNS.length; tried += 1) {
      const name = TURNS[turn % TURNS.length] ?? "flow";
      turn += 1;
      if (shown[name].peek() === at) continue;
      shown[name].value = at;
      frame = requestAnimationFrame(deal);
      return;
    }
  };
  const stop = effect(() => {
    const at = now.value;
    const moves = playing.value || held.value || liveRow.value !== null;
    const other = run.value?.log !== log;
    log = run.value?.log;
    if (moves && !other) {
      if (frame === 0) deal();
      return;
    }
    if (frame !== 0) cancelAnimationFrame(frame);
    frame = 0;
    batch(() => {
      for (const name of TURNS) shown[name].value = at;
    });
  });
  return () => {
    stop();
    if (frame !== 0) cancelAnimationFrame(frame);
  };
}
