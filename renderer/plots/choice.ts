import { signal } from "@preact/signals";
import { PLOTS, type Plot } from "./registry.ts";

/** Plots chosen by the person, by id; null: as many of the first ones as fit. */
export const chosenPlots = signal<ReadonlySet<string> | null>(null);

/** Least height of a row, lines of text. */
const LEAST_LINES = 3.3;

/** The plots to show: chosen ones as long as they fit, in their order. @param text size of text, px */
export function plotsFor(height: number, text: number, chosen: ReadonlySet<string> | null): readonly Plot[] {
  const most = Math.max(1, Math.floor(height / (LEAST_LINES * text)));
  const usual = PLOTS.slice(0, 5);
  const wanted = chosen ? PLOTS.filter(({ id }) => chosen.has(id)) : usual;
  return wanted.slice(0, most);
}
