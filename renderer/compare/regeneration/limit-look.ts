import type { LimitId } from "../../../sim/limits.ts";
import { t } from "../../texts/catalogue.ts";

const c = t.compare.regeneration;

/** Limits that can leave braking to the friction brakes, in the order of their patterns. */
export const BRAKE_LIMITS: readonly LimitId[] = [
  "battery-charge",
  "output-torque",
  "output-speed",
  "axle-share",
  "tyre-grip",
  "low-speed-fade",
  "regeneration-off",
];

/** Pattern of a limit; null where nothing limited. */
export function patternOf(limit: LimitId | null): number | null {
  const index = limit === null ? -1 : BRAKE_LIMITS.indexOf(limit);
  return index < 0 ? null : index;
}

/** Letter and words of a limit. */
export const limitWords = (limit: LimitId | null): readonly [letter: string, words: string] =>
  (limit && c.limits[limit]) ?? [c.none[0], c.none[1]];
