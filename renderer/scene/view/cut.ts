import type { SceneLook } from "../contract.ts";
import { APART, Z } from "../parts/stations.ts";

/** A sector taken out round an axis parallel to z. */
export interface Sector {
  readonly x: number;
  readonly y: number;
  /** Middle and half width, rad; half width 0: nothing is cut. */
  readonly middle: number;
  readonly half: number;
  /** Only what is in front of this z is taken away. */
  readonly floor: number;
}

const RADIANS = Math.PI / 180;

/** Gear set: beside the planet that stands open at zero. Drivetrain: up and toward the eye. */
const SET_MIDDLE = -33 * RADIANS;
const TRAIN_MIDDLE = 44 * RADIANS;

/** In the gear set the cut first is a shallow recess, then grows wider and deeper until half the ring is gone. */
const SET_HALF = { least: 10 * RADIANS, grows: 80 * RADIANS };
const SET_DEPTH = { least: 0.26, grows: 0.95 };

/** In the drivetrain it goes through at once and only grows wider. */
const TRAIN_HALF = { least: 24 * RADIANS, grows: 66 * RADIANS };

/** A little behind the bell's inner face would show its thickness; the floor stays just on it. */
const FLOOR_AIR = 0.05;

/** The sector taken out of the ring. */
export function ringSector(look: Pick<SceneLook, "cut" | "explode" | "extent">): Sector {
  const shift = APART.ring * look.explode;
  const depth = Z.ringFront - Z.ringBack - FLOOR_AIR;
  if (look.extent === "gear set") {
    const share = Math.min(1, SET_DEPTH.least + SET_DEPTH.grows * look.cut);
    const half = look.cut > 0 ? SET_HALF.least + SET_HALF.grows * look.cut : 0;
    return { x: 0, y: 0, middle: SET_MIDDLE, half, floor: Z.ringFront - share * depth + shift };
  }
  return { x: 0, y: 0, middle: TRAIN_MIDDLE, half: trainHalf(look.cut), floor: Z.ringFront - depth + shift };
}

/** The sector taken out of a machine's stator, all the way through. */
export const statorSector = (look: Pick<SceneLook, "cut">, x: number, y: number): Sector => ({
  x,
  y,
  middle: TRAIN_MIDDLE,
  half: trainHalf(look.cut),
  floor: -1e4,
});

const trainHalf = (cut: number): number => (cut > 0 ? TRAIN_HALF.least + TRAIN_HALF.grows * cut : 0);

/** Whether a place lies in what a sector takes away. */
export function isCutAway(sector: Sector, x: number, y: number, z: number): boolean {
  if (sector.half <= 0 || z <= sector.floor) return false;
  const dx = x - sector.x;
  const dy = y - sector.y;
  const along = dx * Math.cos(sector.middle) + dy * Math.sin(sector.middle);
  return along > Math.cos(sector.half) * Math.hypot(dx, dy);
}
