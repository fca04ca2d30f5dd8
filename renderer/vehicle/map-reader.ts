import type { MapReply, MapRequest, MapWorker } from "../workers/map-contract.ts";
import { Runner } from "../workers/runner.ts";

const runner = new Runner<MapWorker>(
  () => new Worker(new URL("../workers/map.worker.ts", import.meta.url), { type: "module" }),
);

/** Reads a table in the worker. @throws Cancelled */
export const readMap = (request: MapRequest): Promise<MapReply> =>
  runner.ask<MapReply>(async (worker) => await worker.read(request));

/** Ends the reading that is under way, if one is. */
export const cancelReading = (): void => runner.cancel();
