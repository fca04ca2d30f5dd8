import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { type Place, placeAfter } from "../clean/geodesy.ts";
import { Draws } from "./draws.ts";
import type { TrueDrive } from "./true-drive.ts";

/** What a receiver does wrong. All of it is left out when not given. */
export interface ReceiverFaults {
  /** m, each place on its own. */
  readonly jitter?: number;
  /** m, slow: the size of the wander, which forgets itself within `wanderTime`. */
  readonly wander?: number;
  /** s. */
  readonly wanderTime?: number;
  /** m, each elevation on its own. */
  readonly elevationJitter?: number;
  /** m; elevations are written to the nearest multiple. */
  readonly elevationStep?: number;
  /** s; nothing is recorded. */
  readonly gaps?: readonly Span[];
  /** s; the last place is repeated. */
  readonly frozen?: readonly Span[];
  /** s; the elevation is 0. */
  readonly noHeight?: readonly Span[];
  /** Share of places thrown hundreds of metres away, 0–1. */
  readonly wild?: number;
}

/** One recorded point. */
export interface RecordedPoint extends Place {
  /** s from the start. */
  readonly time: number;
  /** m. */
  readonly elevation: number;
}

/**
 * What a receiver with these faults records of a drive.
 * @param every s between the points, a multiple of 0.1
 * @param start where the drive begins
 * @param seed of the faults
 */
export function receive(
  drive: TrueDrive,
  every: number,
  start: Place,
  faults: ReceiverFaults,
  seed: number,
): RecordedPoint[] {
  const draws = new Draws(seed);
  const { jitter = 0, wander = 0, wanderTime = 30, elevationJitter = 0, elevationStep = 0 } = faults;
  const forget = Math.exp(-every / wanderTime);
  const kick = wander * Math.sqrt(1 - forget * forget);
  let east = 0;
  let north = 0;
  let origin = start;
  let from = 0;
  const points: RecordedPoint[] = [];
  const stride = Math.round(every / 0.1);
  for (let i = 0; i < drive.time.length; i += stride) {
    const t = at(drive.time, i);
    // The origin moves along so that the step from it stays short and exact.
    origin = placeAfter(origin, {
      east: at(drive.east, i) - at(drive.east, from),
      north: at(drive.north, i) - at(drive.north, from),
    });
    from = i;
    east = forget * east + kick * draws.normal();
    north = forget * north + kick * draws.normal();
    const wild = draws.even() < (faults.wild ?? 0) ? 400 : 0;
    const off = {
      east: east + jitter * draws.normal() + wild * draws.between(-1, 1),
      north: north + jitter * draws.normal() + wild * draws.between(-1, 1),
    };
    const height = at(drive.elevation, i) + elevationJitter * draws.normal();
    const elevation = elevationStep > 0 ? elevationStep * Math.round(height / elevationStep) : height;
    if (isIn(t, faults.gaps)) continue;
    const last = points[points.length - 1];
    const place = isIn(t, faults.frozen) && last ? last : placeAfter(origin, off);
    points.push({
      time: t,
      latitude: place.latitude,
      longitude: place.longitude,
      elevation: isIn(t, faults.noHeight) ? 0 : elevation,
    });
  }
  return points;
}

const isIn = (t: number, spans: readonly Span[] | undefined): boolean =>
  spans?.some((span) => t >= span.start && t < span.end) ?? false;
