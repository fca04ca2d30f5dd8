import { rpmToRadPerS } from "../../shared/units.ts";
import { otherThan, type Shaft } from "./shafts.ts";

/** One of the ten moments that can be put on the bench. Numbers for reading: rev/min and N·m. */
export interface Situation {
  readonly id: SituationId;
  /** two shafts are given, held ones at rest; the third follows */
  readonly given: readonly [Given, Given];
  /** N·m; negative: the engine is motored */
  readonly engineTorque: number;
  /** N·m of the output machine; null: the battery rests */
  readonly outputTorque: number | null;
}

interface Given {
  readonly shaft: Shaft;
  readonly rpm: number;
}

/** Name of a situation. */
export type SituationId =
  | "engine-start"
  | "electric-pull-away"
  | "engine-pull-away"
  | "one-to-one"
  | "above-direct"
  | "sun-at-rest"
  | "sun-backward"
  | "charging-at-rest"
  | "slowing-down"
  | "backing-up";

type Row = readonly [SituationId, Shaft, number, Shaft, number, number, number | null];

const ROWS: readonly Row[] = [
  ["engine-start", "sun", 3500, "ring", 0, -12, null],
  ["electric-pull-away", "carrier", 0, "ring", 1000, 0, 60],
  ["engine-pull-away", "carrier", 2400, "ring", 1000, 100, null],
  ["one-to-one", "carrier", 2200, "ring", 2200, 70, null],
  ["above-direct", "carrier", 2500, "ring", 2900, 80, null],
  ["sun-at-rest", "sun", 0, "carrier", 2000, 80, null],
  ["sun-backward", "carrier", 1800, "ring", 3320, 70, null],
  ["charging-at-rest", "carrier", 1400, "ring", 0, 60, null],
  ["slowing-down", "carrier", 0, "ring", 2000, 0, -40],
  ["backing-up", "carrier", 0, "ring", -800, 0, -30],
];

/** All ten, in the order of the strip: from the first start to backing up. */
export const SITUATIONS: readonly Situation[] = ROWS.map(
  ([id, a, aRpm, b, bRpm, engineTorque, outputTorque]) => ({
    id,
    given: [
      { shaft: a, rpm: aRpm },
      { shaft: b, rpm: bRpm },
    ],
    engineTorque,
    outputTorque,
  }),
);

/** Speeds of the two given shafts, rad/s, the follower at 0; and who follows. */
export function givenSpeeds({ given: [a, b] }: Situation) {
  const speeds = {
    sun: 0,
    carrier: 0,
    ring: 0,
    [a.shaft]: rpmToRadPerS(a.rpm),
    [b.shaft]: rpmToRadPerS(b.rpm),
  };
  return { speeds, follower: otherThan(a.shaft, b.shaft) };
}

/** The situation of an id. */
export function situationById(id: SituationId): Situation {
  const found = SITUATIONS.find((situation) => situation.id === id);
  if (!found) throw new Error(`no situation ${id}`);
  return found;
}
