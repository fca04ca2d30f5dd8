import type { SpeedLimits } from "../../sim/bench/shafts.ts";

/** The shared speed scale: its ends and the distance of its ticks, all in the unit shown. */
export interface SpeedScale {
  readonly low: number;
  readonly high: number;
  readonly tick: number;
}

/** Room over a limit for its block, as a share of the sun's range. */
const OVER = 0.105;

/**
 * The scale of the lever line: up to the sun machine's limit; down to the ring's, and as far as the sun's limit when
 * the sun is there. One that only the sun needs stays short otherwise, so that the rest is large.
 * @param limits and sun in the unit shown
 */
export function speedScale(limits: SpeedLimits, sun: number, ticks: number): SpeedScale {
  const room = OVER * limits.sun.most;
  const short = limits.ring.least - 0.8 * room;
  const deep = sun < 0.95 * limits.ring.least;
  const low = deep ? limits.sun.least - room : short;
  const high = limits.sun.most + room;
  return { low, high, tick: niceStep((high - low) / ticks) };
}

/** 1, 2 or 5 times a power of ten, at least so much. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const found = [1, 2, 5].find((times) => times * power >= least * 0.999) ?? 10;
  return found * power;
}
