import { at } from "../../../shared/at.ts";

/** First place of a growing list that is not before a time. */
function firstFrom(time: Float64Array, seconds: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(time, middle) < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A recorded value at a time, between its neighbours; null outside of what was recorded. */
export function recordedAt(recorded: Float64Array, values: Float64Array, seconds: number): number | null {
  const next = firstFrom(recorded, seconds);
  if (next >= recorded.length) return null;
  if (at(recorded, next) === seconds) return known(at(values, next));
  if (next === 0) return null;
  const [t0, t1] = [at(recorded, next - 1), at(recorded, next)];
  const [v0, v1] = [at(values, next - 1), at(values, next)];
  return known(v0 + ((v1 - v0) * (seconds - t0)) / (t1 - t0));
}

/**
 * A recorded curve at the times of a drawn one.
 * @param recorded s, growing; values belong to them
 * @param time s, of what is drawn
 * @param paired times are two a column of pixels: least and most of what was recorded in it are taken
 */
export function laidOver(
  recorded: Float64Array,
  values: Float64Array,
  time: Float64Array,
  paired: boolean,
): (number | null)[] {
  if (!paired) return Array.from(time, (seconds) => recordedAt(recorded, values, seconds));
  const found: (number | null)[] = [];
  for (let i = 0; i + 1 < time.length; i += 2) {
    const from = firstFrom(recorded, at(time, i));
    const end = i + 2 < time.length ? firstFrom(recorded, at(time, i + 2)) : recorded.length;
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let place = from; place < end; place += 1) {
      const value = at(values, place);
      if (value < least) least = value;
      if (value > most) most = value;
    }
    if (least <= most) found.push(least, most);
    else found.push(recordedAt(recorded, values, at(time, i)), recordedAt(recorded, values, at(time, i + 1)));
  }
  return found;
}
