import { signal } from "@preact/signals";
import type { ChannelId } from "../../sim/run/channels.ts";
import type { FlowId, FlowNode } from "../../sim/run/flows.ts";
import type { LedgerId } from "../../sim/run/ledger.ts";

/** Figures of a run as a whole. */
export const FIGURES = [
  "fuel-raw",
  "fuel-balanced",
  "co2",
  "electricity",
  "charge",
  "distance",
  "braking-asked",
  "braking-shaft",
  "recovered",
  "friction-brakes",
  "recovery-share",
  "engine-starts",
  "engine-on",
  "engine-efficiency",
  "trace-rms",
  "trace-worst",
  "trace-outside",
  "closure",
] as const;

export type FigureId = (typeof FIGURES)[number];

/** A number of Road whose working can be shown. */
export type RoadWorkingId =
  | `channel:${ChannelId}`
  | `flow:${FlowId}`
  | `node:${FlowNode["id"]}`
  | `ledger:${LedgerId}`
  | `figure:${FigureId}`
  | `map:${"engine" | "sunMachine" | "outputMachine" | "wheels"}`;

/** The number whose working is open; it stays while values move. */
export const roadWorking = signal<RoadWorkingId | null>(null);

/** Opens a working, or closes it when it is open already. */
export function showRoadWorking(id: RoadWorkingId): void {
  roadWorking.value = roadWorking.value === id ? null : id;
}
