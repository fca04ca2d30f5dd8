import { roadSpeed } from "../../state/format.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { units } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { type Plot, type Reading, said } from "../registry.ts";
import { instantValue } from "./source.ts";

/** What stands for something that is asked for. */
export const ASKED = "?";

/** Whether a quantity may not be shown just now. */
export const isAsked = ({ tells }: Pick<Reading, "tells">): boolean =>
  tells.some((id) => hidden.value.has(id));

/** A reading's value at the cursor; with its unit where that is not its plot's. Empty without a run. */
export function readingNow(reading: Reading, plot: Plot): string {
  const at = instant.figures.value;
  if (!at) return "";
  if (isAsked(reading)) return ASKED;
  const how = reading.shown ?? plot.shown;
  const value = said(how, units.value, instantValue(reading.source, at));
  return reading.shown ? `${value} ${how.unit(units.value)}` : value;
}

/** The regime at the cursor in words. */
export function regimeNow(): string {
  const at = instant.figures.value;
  if (!at) return "";
  return hidden.value.has("regime") ? ASKED : (t.roadRegimes[at.regime]?.title ?? at.regime);
}

/** Where the cursor is, in words: time, speed, regime. @param clock the time as the cursor shows it */
export function cursorWords(clock: string): string {
  const at = instant.figures.value;
  if (!at) return t.plots.noRun;
  const speed = hidden.value.has("road-speed") ? ASKED : roadSpeed(units.value, at.at.speed);
  return t.plots.cursorAt(clock, speed, regimeNow());
}
