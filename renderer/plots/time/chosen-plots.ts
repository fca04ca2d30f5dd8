import { signal } from "@preact/signals";
import { PLOTS, type Plot } from "../registry.ts";

/** How many of the first plots are shown unless others are chosen. */
const USUAL = 5;

/** Plots chosen by the person, by id; null: the usual ones. */
export const chosenPlots = signal<ReadonlySet<Plot["id"]> | null>(null);

/** The plots wanted, in their order: at most as many as fit are shown, from the first. Never none. */
export function wantedPlots(): readonly Plot[] {
  const chosen = chosenPlots.value;
  const wanted = chosen ? PLOTS.filter(({ id }) => chosen.has(id)) : PLOTS.slice(0, USUAL);
  return wanted.length > 0 ? wanted : PLOTS.slice(0, 1);
}

/**
 * Chooses a plot or lets it go.
 * @param fits as many as have room: of the usual ones only those were seen, so only those stay
 */
export function togglePlot(id: Plot["id"], fits: number): void {
  const now = new Set(
    wantedPlots()
      .slice(0, fits)
      .map((plot) => plot.id),
  );
  if (!now.delete(id)) now.add(id);
  chosenPlots.value = now;
}
