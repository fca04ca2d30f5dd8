import type { Balance } from "../balance.ts";

/**
 * How wrong the slope may be that the rest of the net battery energy is corrected by, as a share of it: measured over all
 * demo vehicles, cycles and strategies, slopes lie within 15 % of their mean; a quarter leaves room.
 */
const SLOPE_DOUBT = 0.25;

/** Most net battery energy over fuel energy that a figure in a comparison may carry after its correction. */
export const MOST_REMAINDER = 0.001;

/** Net battery energy over fuel energy that may be left after the correction: what the slope may be wrong by. */
export const remainder = ({ netShare }: Pick<Balance, "netShare">): number =>
  Math.abs(netShare) * SLOPE_DOUBT;

/** Why a balance is not good enough to be compared; empty when it is. */
export function whyNotComparable(balance: Balance): string {
  if (!balance.balanced) return balance.reason;
  const left = remainder(balance);
  if (left <= MOST_REMAINDER) return "";
  const percent = (share: number): string => (100 * share).toFixed(2);
  return `after the correction up to ${percent(left)} % of the fuel energy may still be the battery's; at most ${percent(MOST_REMAINDER)} % is compared`;
}
