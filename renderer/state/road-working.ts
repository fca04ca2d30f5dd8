import { signal } from "@preact/signals";

/**
 * The number of Road whose working is open: `channel:`, `flow:`, `node:`, `ledger:`, `figure:` or `map:` and its own
 * id. It stays while values move.
 */
export const roadWorking = signal<string | null>(null);

/** Opens a working, or closes it when it is open already. */
export const showRoadWorking = (id: string): void => {
  roadWorking.value = roadWorking.value === id ? null : id;
};
