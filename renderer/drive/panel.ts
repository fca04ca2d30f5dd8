import { signal } from "@preact/signals";

/** A panel over Road, if one is open. */
export type RoadPanel = "options" | "figures" | "runs" | "picture" | "clip";

export const openPanel = signal<RoadPanel | null>(null);

export const togglePanel = (name: RoadPanel): void => {
  openPanel.value = openPanel.value === name ? null : name;
};
