import { at } from "../../shared/at.ts";
import { MAX_GRADE } from "../limits.ts";
import { findJitter } from "./jitter.ts";
import { believable } from "./jumps.ts";
import { smoothRobust } from "./robust.ts";
import {
  ELEVATION_LIVELINESS,
  JITTER_RISE,
  STEEPEST_STEP,
  STRAY_ELEVATIONS,
  WIDE_HEIGHT,
} from "./settings.ts";
import type { Plane } from "./track.ts";

/** One stretch without gaps, smoothed; all lists are of one length. */
export interface Layer {
  /** s, on the recorded clock. */
  readonly time: Float64Array;
  /** m/s. */
  readonly speed: Float64Array;
  readonly plane: Plane;
  /** Number of the recorded place at each time, −1 for none. */
  readonly source: Int32Array;
  /** 1 for the times of the even clock. */
  readonly wanted: Uint8Array;
}

/** What the elevations gave. */
export interface SmoothedElevation {
  /** Rise over run at each time of each layer. */
  readonly grades: readonly Float64Array[];
  /** m from the end of each layer to the start of the next. */
  readonly rises: readonly number[];
  /** m; 0 when there were too few elevations and the road is level. */
  readonly jitter: number;
  /** Elevations not believed. */
  readonly setAside: number;
}

/** Of the places; with fewer elevations a grade would be guessed. */
const LEAST_SHARE = 0.2;

/**
 * Smooths elevations over the way driven. Over time, a stop would put hundreds of measurements on one spot and a fast
 * stretch hardly any; over the way, all of a stop's measurements agree on one height.
 * @param elevation m for each recorded place, NaN where none
 * @param layers in order
 * @param jumps m from each layer's end to the next one's start
 * @param jitter m, or "auto"
 */
export function smoothElevation(
  elevation: Float64Array,
  layers: readonly Layer[],
  jumps: readonly number[],
  jitter: number | "auto",
): SmoothedElevation {
  const { way, height, ends } = layOut(elevation, layers, jumps);
  const given = height.filter((h) => !Number.isNaN(h)).length;
  const places = layers.reduce((sum, layer) => sum + layer.source.filter((i) => i >= 0).length, 0);
  if (given < 3 || given < LEAST_SHARE * places) {
    const level = layers.map((layer) => new Float64Array(layer.time.length));
    return { grades: level, rises: layers.map(() => 0), jitter: 0, setAside: 0 };
  }
  const known = knownOf(way, height);
  const measured = { along: way, values: [height], known };
  const size = jitter === "auto" ? findJitter(measured, ELEVATION_LIVELINESS, 0.3, 15) : jitter;
  const { smooth, used } = smoothRobust(measured, size, ELEVATION_LIVELINESS, WIDE_HEIGHT);
  const slope = at(smooth.rates, 0);
  const level = at(smooth.values, 0);
  const grades = layers.map((_, k) =>
    slope
      .subarray(k === 0 ? 0 : at(ends, k - 1), at(ends, k))
      .map((g) => Math.max(-MAX_GRADE, Math.min(MAX_GRADE, g))),
  );
  const rises = layers.map((_, k) =>
    k === layers.length - 1 ? 0 : at(level, at(ends, k)) - at(level, at(ends, k) - 1),
  );
  return { grades, rises, jitter: size, setAside: given - used.reduce((sum, yes) => sum + yes, 0) };
}

/** All layers one behind the other: way, elevation, and where each ends. */
function layOut(elevation: Float64Array, layers: readonly Layer[], jumps: readonly number[]) {
  const count = layers.reduce((sum, layer) => sum + layer.time.length, 0);
  const way = new Float64Array(count);
  const height = new Float64Array(count);
  const ends: number[] = [];
  let k = 0;
  let here = 0;
  layers.forEach(({ time, speed, source }, l) => {
    for (let i = 0; i < time.length; i += 1) {
      if (i > 0) here += ((at(speed, i) + at(speed, i - 1)) / 2) * (at(time, i) - at(time, i - 1));
      way[k] = here;
      const place = at(source, i);
      height[k] = place < 0 ? Number.NaN : at(elevation, place);
      k += 1;
    }
    ends.push(k);
    here += at(jumps, l);
  });
  return { way, height, ends };
}

/** 1 where there is an elevation that its neighbours allow. */
function knownOf(way: Float64Array, height: Float64Array): Uint8Array {
  const given: number[] = [];
  height.forEach((h, i) => {
    if (!Number.isNaN(h)) given.push(i);
  });
  const possible = (a: number, b: number): boolean => {
    const i = at(given, a);
    const j = at(given, b);
    const rise = Math.abs(at(height, j) - at(height, i));
    return rise <= JITTER_RISE + STEEPEST_STEP * (at(way, j) - at(way, i));
  };
  const good = believable(given.length, possible, STRAY_ELEVATIONS);
  const known = new Uint8Array(height.length);
  given.forEach((i, a) => {
    known[i] = at(good, a);
  });
  return known;
}
