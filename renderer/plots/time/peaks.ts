import { at } from "../../../shared/at.ts";

/** Rows of one block. */
export const BLOCK = 64;

/** Shorter curves are looked through row by row: quicker than keeping blocks. */
const LEAST_ROWS = 20_000;

/** Least and most of a stretch of rows, and the rows where they are. */
export interface Peak {
  least: number;
  most: number;
  leastAt: number;
  mostAt: number;
}

/** A peak to be filled in. */
export const emptyPeak = (): Peak => ({ least: 0, most: 0, leastAt: 0, mostAt: 0 });

/**
 * Least and most of any stretch of a long curve without looking at each of its rows: of full blocks they are known.
 * A curve may grow; its last row may still change, so that only blocks before it are kept.
 */
export class Peaks {
  private blocks = 0;
  private leasts = new Uint32Array(0);
  private mosts = new Uint32Array(0);

  /** Takes in full blocks that have come since. @param values the curve as it is now, its first rows as before */
  extend(values: ArrayLike<number>): void {
    const full = values.length < LEAST_ROWS ? 0 : Math.floor((values.length - 1) / BLOCK);
    if (full <= this.blocks) return;
    if (full > this.leasts.length) {
      this.leasts = wider(this.leasts, full);
      this.mosts = wider(this.mosts, full);
    }
    const found = emptyPeak();
    for (let block = this.blocks; block < full; block += 1) {
      start(values, block * BLOCK, found);
      rows(values, block * BLOCK + 1, (block + 1) * BLOCK, found);
      this.leasts[block] = found.leastAt;
      this.mosts[block] = found.mostAt;
    }
    this.blocks = full;
  }

  /**
   * Least and most of rows from … end − 1, into `found`.
   * @param values the curve that was taken in
   * @param from, end rows, from < end, within the curve
   */
  between(values: ArrayLike<number>, from: number, end: number, found: Peak): void {
    start(values, from, found);
    const first = Math.ceil((from + 1) / BLOCK);
    const last = Math.min(this.blocks, Math.floor(end / BLOCK));
    if (first >= last) {
      rows(values, from + 1, end, found);
      return;
    }
    rows(values, from + 1, first * BLOCK, found);
    for (let block = first; block < last; block += 1) {
      take(values, at(this.leasts, block), found);
      take(values, at(this.mosts, block), found);
    }
    rows(values, last * BLOCK, end, found);
  }
}

function wider(list: Uint32Array, least: number): Uint32Array<ArrayBuffer> {
  const next = new Uint32Array(Math.max(least, 2 * list.length));
  next.set(list);
  return next;
}

function start(values: ArrayLike<number>, row: number, found: Peak): void {
  const value = at(values, row);
  found.least = value;
  found.most = value;
  found.leastAt = row;
  found.mostAt = row;
}

function take(values: ArrayLike<number>, row: number, found: Peak): void {
  const value = at(values, row);
  if (value < found.least) {
    found.least = value;
    found.leastAt = row;
  } else if (value > found.most) {
    found.most = value;
    found.mostAt = row;
  }
}

function rows(values: ArrayLike<number>, from: number, end: number, found: Peak): void {
  for (let row = from; row < end; row += 1) take(values, row, found);
}
