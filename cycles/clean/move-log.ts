import { at } from "../../shared/at.ts";
import type { RecordedLog } from "../../shared/recorded.ts";
import type { ClockPart } from "./work.ts";

/** Samples that are left of a recorded clock, by their index, and the times they have now. */
export interface MovedTimes {
  readonly rows: readonly number[];
  readonly time: Float64Array;
}

/**
 * Moves recorded times onto the clock that the treatments left; what was cut away goes.
 * @param recorded s, rising
 * @param clock parts of the recorded clock that are left, in order
 */
export function moveTimes(recorded: Float64Array, clock: readonly ClockPart[]): MovedTimes {
  const rows: number[] = [];
  const time: number[] = [];
  let k = 0;
  recorded.forEach((t, i) => {
    while (k < clock.length && at(clock, k).end < t) k += 1;
    const part = clock[k];
    if (!part || t < part.start) return;
    const moved = t + part.shift;
    if (moved <= (time[time.length - 1] ?? Number.NEGATIVE_INFINITY)) return;
    rows.push(i);
    time.push(moved);
  });
  return { rows, time: Float64Array.from(time) };
}

/** The same for what was recorded beside a drive. */
export function moveLog(log: RecordedLog, clock: readonly ClockPart[]): RecordedLog {
  const { rows, time } = moveTimes(log.time, clock);
  return {
    time,
    channels: log.channels.map((channel) => ({
      ...channel,
      values: Float64Array.from(rows, (i) => at(channel.values, i)),
    })),
  };
}
