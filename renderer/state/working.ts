import { signal } from "@preact/signals";
import type { Shaft } from "../../sim/bench/shafts.ts";

/** A number whose working can be shown. */
export type WorkingId =
  | `speed:${Shaft}`
  | `torque:${Shaft}`
  | `power:${Shaft}`
  | `turns:${Shaft}`
  | `limit:${Shaft}`
  | `per:${Shaft}`
  | "balance"
  | "full-load"
  | "electrical"
  | "output"
  | "output-power"
  | "output-most"
  | "battery"
  | "ratio"
  | "road";

/** The number whose working is open; it stays while values move. */
export const working = signal<WorkingId | null>(null);

/** Opens a working, or closes it when it is open already. */
export function toggleWorking(id: WorkingId): void {
  working.value = working.value === id ? null : id;
}
