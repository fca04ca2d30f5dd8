import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { longestStep } from "./work.ts";

/** A stretch without gaps. */
export interface Piece extends Span {
  /** First and last place. */
  readonly first: number;
  readonly last: number;
}

/**
 * Stretches of good places without a gap or an impossible step; those of fewer than 3 places tell no speed and are left
 * out.
 * @param time s, rising
 * @param used 1 for each good place
 * @param possible whether place j may follow place i
 */
export function piecesOf(
  time: Float64Array,
  used: Uint8Array,
  possible: (i: number, j: number) => boolean,
): Piece[] {
  const good: number[] = [];
  used.forEach((yes, i) => {
    if (yes === 1) good.push(i);
  });
  if (good.length < 3) return [];
  const longest = longestStep(Float64Array.from(good, (i) => at(time, i)));
  const pieces: Piece[] = [];
  let first = 0;
  for (let k = 1; k <= good.length; k += 1) {
    if (k < good.length && follows(at(good, k - 1), at(good, k))) continue;
    const a = at(good, first);
    const b = at(good, k - 1);
    if (k - first >= 3) pieces.push({ first: a, last: b, start: at(time, a), end: at(time, b) });
    first = k;
  }
  return pieces;

  function follows(i: number, j: number): boolean {
    return at(time, j) - at(time, i) <= longest && possible(i, j);
  }
}

/** The times of a piece's good places and of an even clock, merged. `source` is the place's number, −1 for none. */
export function withGrid(
  time: Float64Array,
  used: Uint8Array,
  piece: Piece,
  step: number,
): { along: Float64Array; source: Int32Array; wanted: Uint8Array } {
  const along: number[] = [];
  const source: number[] = [];
  const wanted: number[] = [];
  const add = (t: number, i: number, want: number): void => {
    along.push(t);
    source.push(i);
    wanted.push(want);
  };
  let k = 0;
  for (let i = piece.first; i <= piece.last; i += 1) {
    if (at(used, i) === 0) continue;
    const t = at(time, i);
    // A clock mark within a thousandth of a step of a place is that place.
    for (; piece.start + k * step < t - step / 1000; k += 1) add(piece.start + k * step, -1, 1);
    const onMark = Math.abs(piece.start + k * step - t) <= step / 1000;
    if (onMark) k += 1;
    add(t, i, onMark || i === piece.last ? 1 : 0);
  }
  return {
    along: Float64Array.from(along),
    source: Int32Array.from(source),
    wanted: Uint8Array.from(wanted),
  };
}
