import { at } from "../../../shared/at.ts";

/** First place where a list does not rise from the entry before; −1 when it rises throughout. */
export const firstFall = (list: readonly number[], allowEqual = false): number =>
  list.findIndex((value, i) => i > 0 && (allowEqual ? value < at(list, i - 1) : value <= at(list, i - 1)));

/** Relative difference by which a speed typed in another unit may miss the one it means. */
const ROUNDING = 1e-6;

/** Whether a rising list covers a range, but for rounding. */
export const covers = (list: readonly number[], from: number, to: number): boolean =>
  ends(list).first <= from * (1 + ROUNDING) && ends(list).last >= to * (1 - ROUNDING);

/** First and last entry of a list that has at least one. */
export const ends = (list: readonly number[]): { first: number; last: number } => ({
  first: at(list, 0),
  last: at(list, list.length - 1),
});
