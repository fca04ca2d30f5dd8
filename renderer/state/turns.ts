import type { ShaftValues } from "../../sim/bench/shafts.ts";
import { sunSpeed } from "../../sim/drivetrain/gear-set.ts";

/** Turned angles, rad, unwrapped; the sun's follows from the teeth. */
export interface Angles {
  readonly carrier: number;
  readonly ring: number;
}

const TURN = 2 * Math.PI;

/** Angles a while later. @param seconds of the shafts' own time, already slowed; negative goes back */
export const turnedOn = (angles: Angles, speeds: ShaftValues, seconds: number): Angles => ({
  carrier: angles.carrier + speeds.carrier * seconds,
  ring: angles.ring + speeds.ring * seconds,
});

/** Turns of each shaft since the marks were set. */
export function turnsSince(k: number, angles: Angles, marks: Angles): ShaftValues {
  const carrier = (angles.carrier - marks.carrier) / TURN;
  const ring = (angles.ring - marks.ring) / TURN;
  return { sun: sunSpeed(k, carrier, ring), carrier, ring };
}

/** Turns for one turn of the carrier, from turns or speeds; null when the carrier does not turn. */
export function perCarrierTurn({ sun, carrier, ring }: ShaftValues): ShaftValues | null {
  if (Math.abs(carrier) < 1e-9) return null;
  return { sun: sun / carrier, carrier: 1, ring: ring / carrier };
}

/** Seconds of the shafts' time in which the fastest shaft makes a share of a turn; 0 when all rest. */
export function timeOfStep({ sun, carrier, ring }: ShaftValues, turns: number): number {
  const fastest = Math.max(Math.abs(sun), Math.abs(carrier), Math.abs(ring));
  return fastest > 0 ? (turns * TURN) / fastest : 0;
}

/** Slowings of the turning gear set: the shafts take n times as long as at their speeds. */
export const SLOWINGS: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 120, 200];
