import { at } from "../../shared/at.ts";
import { type Measured, type Smoothed, smoothSpline } from "./spline.ts";

/** Jitters; farther from the smooth curve than this a measurement is set aside. */
const FARTHEST = 5;
/** Factor from one round to the next of what still counts as near. */
const CLOSER = 0.35;

/** A smooth curve and which measurements it believes. */
export interface Believed {
  readonly smooth: Smoothed;
  /** 1 where a measurement was believed. */
  readonly used: Uint8Array;
}

/**
 * Smooths and sets aside what is far off. Each round weighs measurements by their distance from the curve of the round
 * before (1/(1 + d²/c²), the weight of a Cauchy error), with c falling from `wide` to a few jitters, so that no early
 * wrong belief locks the right ones out (iterated reweighting: Holland and Welsch 1977; falling scale: Blake and
 * Zisserman 1987; both from memory). The last curve is made from the believed ones alone, each counting in full.
 * @param wide how far off measurements may be at all, in the unit of the values
 */
export function smoothRobust(measured: Measured, jitter: number, liveliness: number, wide: number): Believed {
  const count = measured.along.length;
  const weights = new Float64Array(count).fill(1);
  let smooth = smoothSpline(measured, { jitter, liveliness });
  for (let near = wide; ; near = Math.max(near * CLOSER, 3 * jitter)) {
    for (let i = 0; i < count; i += 1)
      weights[i] = 1 / (1 + missSquared(measured, smooth, i) / (near * near));
    smooth = smoothSpline(measured, { jitter, liveliness, weights });
    if (near <= 3 * jitter) break;
  }
  const most = FARTHEST * FARTHEST * jitter * jitter;
  const used = measured.known.map((known, i) =>
    known === 1 && missSquared(measured, smooth, i) <= most ? 1 : 0,
  );
  if (!used.includes(1)) return { smooth, used };
  return { smooth: smoothSpline({ ...measured, known: used }, { jitter, liveliness }), used };
}

function missSquared({ values }: Measured, smooth: Smoothed, i: number): number {
  let sum = 0;
  for (let c = 0; c < values.length; c += 1) {
    const miss = at(at(values, c), i) - at(at(smooth.values, c), i);
    sum += miss * miss;
  }
  return sum;
}
