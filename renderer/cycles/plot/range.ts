import { niceStep } from "../../lever/scale.ts";
import type { Range } from "../../plots/time/range.ts";

/** Steps that the ends of a range are rounded out to. */
const PARTS = 8;

/** Range of a recorded curve that may be wild: at most so many times what the cycle itself spans. */
const WILD = 1.5;

function endsOf(values: Float64Array): { least: number; most: number } {
  let least = 0;
  let most = 0;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}

/**
 * The range that curves are drawn in, zero in it, its ends round in the unit shown.
 * @param values of the cycle, SI
 * @param before as recorded; its wild values run out of the picture rather than flattening it
 * @param times factor to the unit shown
 * @param smallest SI; a range is at least so wide
 */
export function curveRange(
  values: Float64Array,
  before: Float64Array | null,
  times: number,
  smallest: number,
): Range {
  const own = endsOf(values);
  const wide = Math.max(smallest, own.most - own.least);
  const old = before ? endsOf(before) : own;
  const least = Math.min(own.least, Math.max(old.least, own.least - (WILD - 1) * wide));
  const most = Math.max(own.most, Math.min(old.most, own.most + (WILD - 1) * wide));
  const step = niceStep((Math.max(smallest, most - least) * times) / PARTS);
  const out = (value: number, way: (n: number) => number): number =>
    value === 0 ? 0 : (way((value * times) / step) * step) / times;
  const low = out(least, Math.floor);
  return { least: low, most: Math.max(out(most, Math.ceil), low + smallest) };
}

/** Whether a road is level all along. */
export const isLevel = (grade: Float64Array): boolean => grade.every((value) => value === 0);
