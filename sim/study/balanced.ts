import type { Simulation } from "../run/simulation.ts";

/** Charge-balanced fuel: what the drive costs when the battery ends as full as it began. */
export interface Balance {
  /** the run nearest to balance, from which everything else is read */
  readonly run: Simulation;
  readonly runs: number;
  /** net battery energy over fuel energy of that run, before the correction; positive when the battery gave */
  readonly netShare: number;
  /** fuel energy that stands for one unit of battery energy */
  readonly slope: number;
  /**
   * "measured" over neighbouring start charges; "marginal" from the engine's best point where those do not tell, or the
   * price itself of a strategy that has one
   */
  readonly slopeSource: "measured" | "marginal";
  /** J, corrected for the rest; not a number when the drive cannot be balanced */
  readonly fuelEnergy: number;
  /** false when the drive cannot be balanced (no fuel used, or the charge runs away) */
  readonly balanced: boolean;
  /** why not, one sentence; empty when balanced */
  readonly reason: string;
}

/** Net battery energy over fuel energy that ends the search: SAE J1711 allows 1 %. */
export const BALANCE_WINDOW = 0.01;

/**
 * Why a search for balance did not end in it; empty when it did.
 * @param share net battery energy over fuel energy of the best run
 * @param fuel of that run, J
 * @param what was searched over, such as "start charge"
 */
export function whyNotBalanced(
  share: number,
  fuel: number,
  window: number,
  cancelled: boolean,
  what: string,
): string {
  if (cancelled) return "the search was cancelled";
  if (fuel <= 0) return "no fuel was used, so there is nothing to balance: see the electric consumption";
  if (Math.abs(share) <= Math.max(window, BALANCE_WINDOW)) return "";
  const percent = (100 * Math.abs(share)).toFixed(1);
  return `the battery still ${share > 0 ? "gives" : "takes"} ${percent} % of the fuel energy at the nearest ${what}`;
}
