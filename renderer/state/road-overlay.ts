import { signal } from "@preact/signals";
import type { ChannelId } from "../../sim/run/channels.ts";

/** A recorded log laid over the simulated run: its own times, and any of the log's channels, SI. */
export interface RoadOverlay {
  readonly name: string;
  /** s on the run's time axis, growing */
  readonly time: Float64Array;
  /** as many numbers each as there are times; not a number where nothing was recorded */
  readonly channels: Readonly<Partial<Record<ChannelId, Float64Array>>>;
}

/** What is laid over the plots, if anything is. */
export const overlays = signal<RoadOverlay | null>(null);
