import { signal } from "@preact/signals";
import type { FlowId, FlowNode } from "../../sim/run/flows.ts";
import type { LedgerId } from "../../sim/run/ledger.ts";

/** A number of Road whose working can be shown. */
export type RoadWorkingId = `flow:${FlowId}` | `node:${FlowNode["id"]}` | `ledger:${LedgerId}`;

/** The number whose working is open; it stays while values move. */
export const roadWorking = signal<RoadWorkingId | null>(null);

/** Opens a working, or closes it when it is open already. */
export function showRoadWorking(id: RoadWorkingId): void {
  roadWorking.value = roadWorking.value === id ? null : id;
}
