import { kilowatts } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import { NOTHING } from "./balance.ts";

/** Below this a power rounds to 0.0 kW, W. */
const LITTLE = 50;

/** A power as it stands on the sheet: its size to 0.1 kW, "< 0.1" for what is less, "?" for what is asked. */
export function shownPower(watts: number, asked: boolean): string {
  if (asked) return t.roadFlow.asked;
  const size = Math.abs(watts);
  return size >= LITTLE || size <= NOTHING ? kilowatts(size) : t.roadFlow.little;
}

/** Whether a power shows as a number. */
export const isShown = (watts: number): boolean => Math.abs(watts) >= LITTLE;
