import { at } from "../../shared/at.ts";
import { groundStep } from "./geodesy.ts";

/** Places laid out on a plane, m, step by step: lengths and turns are those on the ground all along the way. */
export interface Plane {
  readonly east: Float64Array;
  readonly north: Float64Array;
}

/**
 * Rolls a track out on a plane by adding up its steps. No projection keeps lengths over a whole country; the sum of the
 * steps does, and nothing here asks where the way comes back to.
 * @param latitude degrees
 * @param longitude degrees, as long
 */
export function rollOut(latitude: Float64Array, longitude: Float64Array): Plane {
  const count = latitude.length;
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  for (let i = 1; i < count; i += 1) {
    const step = groundStep(
      { latitude: at(latitude, i - 1), longitude: at(longitude, i - 1) },
      { latitude: at(latitude, i), longitude: at(longitude, i) },
    );
    east[i] = at(east, i - 1) + step.east;
    north[i] = at(north, i - 1) + step.north;
  }
  return { east, north };
}

/** Straight distance between two samples of a plane, m. */
export function between({ east, north }: Plane, i: number, j: number): number {
  const dx = at(east, j) - at(east, i);
  const dy = at(north, j) - at(north, i);
  return Math.sqrt(dx * dx + dy * dy);
}
