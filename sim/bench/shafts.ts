import type { Vehicle } from "../parameters/schema.ts";

/** The three shafts of the gear set. */
export type Shaft = "sun" | "carrier" | "ring";

/** All of them, in the order of the lever line. */
export const SHAFTS: readonly Shaft[] = ["sun", "carrier", "ring"];

/** One number a shaft: speeds in rad/s, torques in N·m, powers in W, turns or angles. */
export interface ShaftValues {
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
}

/** A number for each shaft, made from its name. */
export const eachShaft = (make: (shaft: Shaft) => number): ShaftValues => ({
  sun: make("sun"),
  carrier: make("carrier"),
  ring: make("ring"),
});

/** Ends of a shaft's speed, rad/s. */
export interface SpeedRange {
  readonly least: number;
  readonly most: number;
}

/** Ends of all shafts' speeds. */
export type SpeedLimits = Readonly<Record<Shaft, SpeedRange>>;

/** How far one thing can move, and which shaft ends it there. */
export interface Reach extends SpeedRange {
  readonly leastBy: Shaft;
  readonly mostBy: Shaft;
}

/** Weights of Willis' equation: ωs + k ωr − (1 + k) ωc = 0. */
const weights = (k: number): ShaftValues => ({ sun: 1, carrier: -(1 + k), ring: k });

/** The shaft that is neither of two. */
export const otherThan = (a: Shaft, b: Shaft): Shaft =>
  SHAFTS.find((shaft) => shaft !== a && shaft !== b) ?? "sun";

/** The same values with the follower's replaced by the one that Willis' equation asks for. */
export function following(k: number, values: ShaftValues, follower: Shaft): ShaftValues {
  const w = weights(k);
  let rest = 0;
  for (const shaft of SHAFTS) if (shaft !== follower) rest += w[shaft] * values[shaft];
  return { ...values, [follower]: rest === 0 ? 0 : -rest / w[follower] };
}

/** Speeds that engine and machines bear: the sun machine both ways, the engine never backward, the output machine. */
export function speedLimits(v: Vehicle): SpeedLimits {
  const ring = v.outputMachine.maxSpeed / v.outputMachine.reduction;
  return {
    sun: { least: -v.sunMachine.maxSpeed, most: v.sunMachine.maxSpeed },
    carrier: { least: 0, most: v.engine.maxSpeed },
    ring: { least: -ring, most: ring },
  };
}

/**
 * How far a shaft can be moved about a shaft that keeps its speed: its own limits, and the third one's.
 * @param pivotSpeed rad/s, of the shaft that keeps its speed
 */
export function reachAbout(
  k: number,
  limits: SpeedLimits,
  moved: Shaft,
  pivot: Shaft,
  pivotSpeed: number,
): Reach {
  const third = otherThan(moved, pivot);
  const w = weights(k);
  const at = (end: number): number => -(w[third] * end + w[pivot] * pivotSpeed) / w[moved];
  const a = at(limits[third].least);
  const b = at(limits[third].most);
  const own = limits[moved];
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  return {
    least: Math.max(own.least, low),
    leastBy: own.least >= low ? moved : third,
    most: Math.min(own.most, high),
    mostBy: own.most <= high ? moved : third,
  };
}

/** How far all three can be shifted together, rad/s: least ≤ 0 ≤ most inside the limits. */
export function reachOfShift(limits: SpeedLimits, speeds: ShaftValues): Reach {
  let least = Number.NEGATIVE_INFINITY;
  let most = Number.POSITIVE_INFINITY;
  let leastBy: Shaft = "carrier";
  let mostBy: Shaft = "carrier";
  for (const shaft of SHAFTS) {
    const down = limits[shaft].least - speeds[shaft];
    const up = limits[shaft].most - speeds[shaft];
    if (down > least) [least, leastBy] = [down, shaft];
    if (up < most) [most, mostBy] = [up, shaft];
  }
  return { least, most, leastBy, mostBy };
}

/** Road speed, m/s, of a ring speed, rad/s. */
export const roadOfRing = (v: Vehicle, ring: number): number =>
  (ring * v.body.wheelRadius) / v.finalDrive.ratio;

/** Ring speed, rad/s, of a road speed, m/s. */
export const ringOfRoad = (v: Vehicle, road: number): number =>
  (road * v.finalDrive.ratio) / v.body.wheelRadius;
