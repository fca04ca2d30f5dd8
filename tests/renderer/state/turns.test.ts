import { describe, expect, it } from "vitest";
import { perCarrierTurn, timeOfStep, turnedOn, turnsSince } from "../../../renderer/state/turns.ts";
import { following, type Shaft } from "../../../sim/bench/shafts.ts";

const TURN = 2 * Math.PI;
const DEMO = 100 / 40;
const CHECK = 104 / 32;
const COMMON = 104 / 40;

/** Turns after the carrier made some turns with a shaft held. */
function turnsWith(k: number, held: Shaft, follower: Shaft, carrierTurns: number) {
  const speeds = following(k, { sun: 0, carrier: 100, ring: 0, [held]: 0 }, follower);
  const marks = { carrier: 3, ring: -7 };
  const angles = turnedOn(marks, speeds, (carrierTurns * TURN) / 100);
  return turnsSince(k, angles, marks);
}

describe("turn counters", () => {
  it("ring held: the sun turns 3.50 for one of the carrier", () => {
    const turns = turnsWith(DEMO, "ring", "sun", 1);
    expect(turns.carrier).toBeCloseTo(1, 12);
    expect(turns.sun).toBeCloseTo(3.5, 10);
    expect(turns.ring).toBeCloseTo(0, 12);
  });

  it("sun held: the ring turns 1.40", () => {
    const turns = turnsWith(DEMO, "sun", "ring", 1);
    expect(turns.ring).toBeCloseTo(1.4, 10);
    expect(turns.sun).toBeCloseTo(0, 10);
  });

  it("with teeth 40/32/104: 3.60 and 1.385", () => {
    expect(turnsWith(COMMON, "ring", "sun", 1).sun).toBeCloseTo(3.6, 10);
    expect(turnsWith(COMMON, "sun", "ring", 1).ring).toBeCloseTo(1.3846, 4);
  });

  it("count as many turns as are made, also many and backward", () => {
    expect(turnsWith(DEMO, "ring", "sun", 1000).sun).toBeCloseTo(3500, 6);
    expect(turnsWith(CHECK, "ring", "sun", -2).sun).toBeCloseTo(-2 * (1 + CHECK), 9);
  });

  it("are told for one turn of the carrier, when it turns", () => {
    expect(perCarrierTurn({ sun: 29.5, carrier: 12, ring: 5 })?.sun).toBeCloseTo(2.4583, 4);
    expect(perCarrierTurn({ sun: 1, carrier: 0, ring: -0.4 })).toBeNull();
  });

  it("step by a share of the fastest shaft's turn", () => {
    const speeds = following(DEMO, { sun: 0, carrier: 200, ring: 100 }, "sun");
    const seconds = timeOfStep(speeds, 1 / 8);
    expect((speeds.sun * seconds) / TURN).toBeCloseTo(1 / 8, 12);
    expect(timeOfStep({ sun: 0, carrier: 0, ring: 0 }, 1)).toBe(0);
  });
});
