import { at } from "../../../shared/at.ts";

/** Orders from errors at steps that are each half of the one before: log2 of each ratio. */
export const orders = (errors: readonly number[]): number[] =>
  errors.slice(1).map((error, i) => Math.log2(at(errors, i) / error));
