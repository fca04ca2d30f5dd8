import { at } from "../../shared/at.ts";
import { interpolate, stretchAt } from "../sample.ts";
import { Draws } from "./draws.ts";

/** A drive that is known exactly, ten times a second. */
export interface TrueDrive {
  /** s. */
  readonly time: Float64Array;
  /** m/s. */
  readonly speed: Float64Array;
  /** m from the start. */
  readonly way: Float64Array;
  /** m from the start. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  /** m. */
  readonly elevation: Float64Array;
  /** m climbed in all. */
  readonly ascent: number;
}

/** Speed over time by straight lines. */
export interface SpeedPlan {
  /** s, rising from 0. */
  readonly time: Float64Array;
  /** m/s, 0 or more. */
  readonly speed: Float64Array;
}

/** One hill of the land: elevation swings by ± height over a way of `length`. */
export interface Hill {
  /** m. */
  readonly height: number;
  /** m of way from one top to the next. */
  readonly length: number;
}

const STEP = 0.1;
/** m/s²; cars take bends with less. */
const SIDEWAYS = 2;
/** 1/m; the tightest bend, a street corner. */
const TIGHTEST = 1 / 10;

/**
 * Drives a speed plan along an invented winding road over invented hills.
 * @param seed of the bends; the hills are as given
 */
export function trueDrive(plan: SpeedPlan, hills: readonly Hill[], seed: number): TrueDrive {
  const draws = new Draws(seed);
  const end = at(plan.time, plan.time.length - 1);
  const count = Math.floor(end / STEP + 1e-9) + 1;
  const list = (): Float64Array => new Float64Array(count);
  const drive = { time: list(), speed: list(), way: list(), east: list(), north: list(), elevation: list() };
  let heading = draws.between(0, 2 * Math.PI);
  let bend = 0;
  let wanted = 0;
  let nextBend = 0;
  let ascent = 0;
  for (let i = 0; i < count; i += 1) {
    const t = i * STEP;
    drive.time[i] = t;
    drive.speed[i] = interpolate(plan.time, plan.speed, stretchAt(plan.time, t), t);
    if (i > 0) {
      const step = ((at(drive.speed, i) + at(drive.speed, i - 1)) / 2) * STEP;
      const way = at(drive.way, i - 1) + step;
      drive.way[i] = way;
      if (way > nextBend) {
        nextBend = way + draws.between(50, 300);
        wanted = draws.even() < 0.5 ? 0 : draws.between(-0.03, 0.03);
      }
      // Bends begin and end over some 15 m, as roads are laid out.
      bend += (wanted - bend) * Math.min(1, step / 15);
      const most = Math.min(TIGHTEST, SIDEWAYS / Math.max(1, at(drive.speed, i) ** 2));
      heading += Math.max(-most, Math.min(most, bend)) * step;
      drive.east[i] = at(drive.east, i - 1) + step * Math.sin(heading);
      drive.north[i] = at(drive.north, i - 1) + step * Math.cos(heading);
    }
    drive.elevation[i] = elevationAt(at(drive.way, i), hills);
    if (i > 0) ascent += Math.max(0, at(drive.elevation, i) - at(drive.elevation, i - 1));
  }
  return { ...drive, ascent };
}

/** m above the sea; hills start level, so that the first metres are no kink. */
function elevationAt(way: number, hills: readonly Hill[]): number {
  return hills.reduce(
    (height, hill) => height + (hill.height * (1 - Math.cos((2 * Math.PI * way) / hill.length))) / 2,
    240,
  );
}
