import { at } from "../../shared/at.ts";
import type { RecordedLog } from "../../shared/recorded.ts";
import type { ClockPart } from "./work.ts";

/**
 * Moves what was recorded beside a drive onto the clock that the treatments left; what was cut away goes.
 * @param clock parts of the recorded clock that are left, in order
 */
export function moveLog(log: RecordedLog, clock: readonly ClockPart[]): RecordedLog {
  const rows: number[] = [];
  const time: number[] = [];
  let k = 0;
  log.time.forEach((t, i) => {
    while (k < clock.length && at(clock, k).end < t) k += 1;
    const part = clock[k];
    if (!part || t < part.start) return;
    const moved = t + part.shift;
    if (moved <= (time[time.length - 1] ?? Number.NEGATIVE_INFINITY)) return;
    rows.push(i);
    time.push(moved);
  });
  return {
    time: Float64Array.from(time),
    channels: log.channels.map((channel) => ({
      ...channel,
      values: Float64Array.from(rows, (i) => at(channel.values, i)),
    })),
  };
}
