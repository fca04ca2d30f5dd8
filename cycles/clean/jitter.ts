import { at } from "../../shared/at.ts";
import type { Measured } from "./spline.ts";
import { Walk } from "./walk.ts";

/** Ratio of neighbouring tries: finer would not change the smooth curve visibly (it follows the square root). */
const RATIO = 1.25;
/** Standard deviations: a wilder measurement costs no more than this, so that it cannot buy a larger jitter. */
const GATE = 5;
/** After so many wild ones in a row the walk is lost and starts anew where they are. */
const LOST = 3;

/**
 * The jitter that explains the measurements best, among tries from `least` to `most`: the one that makes what each
 * measurement adds to the expectation from those before most likely (innovations' likelihood; Schweppe 1965, from
 * memory). Slow wandering of a receiver is not seen: it looks like movement.
 * @param liveliness as in `SmoothingModel`
 */
export function findJitter(measured: Measured, liveliness: number, least: number, most: number): number {
  let best = least;
  let highest = Number.NEGATIVE_INFINITY;
  for (let jitter = least; jitter <= most; jitter *= RATIO) {
    const height = likelihood(measured, jitter, liveliness);
    if (height > highest) {
      highest = height;
      best = jitter;
    }
  }
  return best;
}

/** Log-likelihood up to a constant. */
function likelihood(measured: Measured, jitter: number, liveliness: number): number {
  const { along, known, values } = measured;
  const noise = jitter * jitter;
  const walk = new Walk(values.length, liveliness);
  const first = known.indexOf(1);
  walk.start(measured, first, noise);
  let sum = 0;
  let wild = 0;
  for (let i = first + 1; i < along.length; i += 1) {
    walk.advance(at(along, i) - at(along, i - 1));
    if (at(known, i) === 0) continue;
    const spread = walk.vv + noise;
    const far = walk.missSquared(values, i) / spread;
    sum -= 0.5 * (Math.min(far, GATE * GATE) + values.length * Math.log(spread));
    if (far <= GATE * GATE) {
      wild = 0;
      walk.takeValue(values, i, noise);
    } else {
      wild += 1;
      if (wild >= LOST) walk.start(measured, i, noise);
    }
  }
  return sum;
}
