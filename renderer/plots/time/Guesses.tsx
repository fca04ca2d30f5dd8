import { signal, useSignalEffect } from "@preact/signals";
import { asking, guesses, type HideableId, revealed } from "../../state/predict.ts";
import { cursor } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import type { Plot, Reading } from "../registry.ts";
import type { TimeLayout } from "./layout.ts";
import type { Range } from "./range.ts";
import { windowNow, xOf } from "./view.ts";

/** Curves of which one may guess a value. */
const GUESSED: Readonly<Partial<Record<Reading["id"], HideableId>>> = {
  road: "road-speed",
  engine: "engine-power",
  sunMachine: "sun-machine-power",
  outputMachine: "output-machine-power",
  battery: "battery-power",
  charge: "charge",
  sun: "sun-speed",
  carrier: "carrier-speed",
  ring: "ring-speed",
  recovered: "recovered",
  fuel: "fuel",
};

/** The instant about which it was guessed: where the cursor was when the answers came; null before. */
const guessedAt = signal<number | null>(null);

/** Remembers the instant of the reveal. */
export function useGuessTime(): void {
  useSignalEffect(() => {
    guessedAt.value = asking.value && revealed.value ? cursor.peek() : null;
  });
}

interface GuessesProps {
  readonly plot: Plot;
  readonly height: number;
  readonly layout: TimeLayout;
  readonly range: Range;
}

/** Guesses beside the curves after the reveal, at the instant about which they were made. */
export function Guesses({ plot, height, layout, range }: GuessesProps) {
  const time = guessedAt.value;
  const { from, to } = windowNow.value;
  if (time === null || time < from || time > to) return null;
  return (
    <>
      {plot.curves.map(({ id, ink }) => {
        const quantity = GUESSED[id];
        const value = quantity ? guesses.value[quantity] : undefined;
        if (typeof value !== "number") return null;
        const y = ((range.most - value) / (range.most - range.least)) * height;
        const inside = Math.min(height, Math.max(0, y));
        return (
          <svg
            key={id}
            class={`guess edge ${ink}`}
            viewBox="-6 -6 12 12"
            role="img"
            aria-label={t.plots.guess(t.plots.curves[id].long)}
            style={{ left: `${layout.left + xOf(time)}px`, top: `${inside}px` }}
          >
            <path d="M0-5L5 0 0 5-5 0z" />
          </svg>
        );
      })}
    </>
  );
}
