import { at } from "../../shared/at.ts";
import { FASTEST_STOP } from "./settings.ts";
import { between, type Plane } from "./track.ts";

/**
 * Finds places that a receiver only repeated, as many do in a tunnel: the very same place again, reached or left by a
 * change of speed that no brake and no engine can make. At a real stop the places may repeat as well, but the vehicle
 * slowed down before.
 * @param time s, strictly increasing
 * @returns 1 for each repeated place that cannot be believed; the first of each run is not marked
 */
export function findFrozen(time: Float64Array, plane: Plane): Uint8Array {
  const count = time.length;
  const frozen = new Uint8Array(count);
  for (let first = 0; first < count; ) {
    let last = first;
    while (last + 1 < count && between(plane, first, last + 1) === 0) last += 1;
    if (last > first && (speedBefore(first) > FASTEST_STOP || speedAfter(last) > FASTEST_STOP)) {
      frozen.fill(1, first + 1, last + 1);
    }
    first = last + 1;
  }
  return frozen;

  function speedBefore(i: number): number {
    return i === 0 ? 0 : between(plane, i - 1, i) / (at(time, i) - at(time, i - 1));
  }
  function speedAfter(i: number): number {
    return i + 1 >= count ? 0 : between(plane, i, i + 1) / (at(time, i + 1) - at(time, i));
  }
}
