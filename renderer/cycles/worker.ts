import { type Remote, wrap } from "comlink";
import type { CycleWorker } from "../workers/cycle-contract.ts";

let remote: Remote<CycleWorker> | null = null;

/** The worker that reads and treats recordings; started when it is first asked. */
export function cycleWorker(): Remote<CycleWorker> {
  remote ??= wrap<CycleWorker>(
    new Worker(new URL("../workers/cycle.worker.ts", import.meta.url), { type: "module" }),
  );
  return remote;
}
