import { computed, effect, signal } from "@preact/signals";
import type { RecordedChannelId, RecordedLog } from "../../shared/recorded.ts";
import type { ChannelId } from "../../sim/run/channels.ts";
import { recordingOf } from "./recordings.ts";
import { run } from "./road.ts";
import { overlays, type RoadOverlay } from "./road-overlay.ts";

/** The channel of a run's log that each recorded one is laid over. */
const OVER: Readonly<Record<RecordedChannelId, ChannelId>> = {
  engineSpeed: "engineSpeed",
  soc: "soc",
  batteryCurrent: "batteryCurrent",
  vehicleSpeed: "speed",
};

/** A recorded log as the plots take it. */
export function overlayOf(name: string, { time, channels }: RecordedLog): RoadOverlay {
  const laid: Partial<Record<ChannelId, Float64Array>> = {};
  for (const { id, values } of channels) laid[OVER[id]] = values;
  return { name, time, channels: laid };
}

/** What was recorded beside the cycle of the run that is looked at. */
const recorded = computed<RoadOverlay | null>(() => {
  const cycle = run.value?.request.cycle;
  const log = cycle && recordingOf(cycle)?.overlay;
  return cycle && log && log.channels.length > 0 ? overlayOf(cycle.title, log) : null;
});

/** Whether there is something to lay over, and whether a person wants it. */
export const canLayOver = computed(() => recorded.value !== null);
export const laidOver = signal(false);

/** Lays the recording over as long as Road is open. @returns stops it */
export function followRecording(): () => void {
  return effect(() => {
    overlays.value = laidOver.value ? recorded.value : null;
  });
}
