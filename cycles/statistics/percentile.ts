import { at } from "../../shared/at.ts";

/**
 * Percentile with straight lines between the ranks, rank (n − 1) · share.
 * @param values any order; not changed
 * @param share 0–1
 * @returns NaN when there are no values
 */
export function percentile(values: readonly number[], share: number): number {
  if (values.length === 0) return Number.NaN;
  const sorted = Float64Array.from(values).sort();
  const rank = (sorted.length - 1) * share;
  const below = Math.floor(rank);
  const low = at(sorted, below);
  const high = at(sorted, Math.min(below + 1, sorted.length - 1));
  return low + (high - low) * (rank - below);
}
