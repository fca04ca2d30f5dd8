import { at } from "../../../shared/at.ts";

/** First place where a list does not rise from the entry before; −1 when it rises throughout. */
export const firstFall = (list: readonly number[], allowEqual = false): number =>
  list.findIndex((value, i) => i > 0 && (allowEqual ? value < at(list, i - 1) : value <= at(list, i - 1)));

/** First and last entry of a list that has at least one. */
export const ends = (list: readonly number[]): { first: number; last: number } => ({
  first: at(list, 0),
  last: at(list, list.length - 1),
});
