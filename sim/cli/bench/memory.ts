import { PerformanceObserver } from "node:perf_hooks";
import { setImmediate as turn } from "node:timers/promises";
import { getHeapStatistics } from "node:v8";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { CycleDriver } from "../../control/driver.ts";
import type { StrategyDefinition } from "../../control/strategy.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { Simulation } from "../../run/simulation.ts";

/** Control periods of one window, and how many windows are looked at. */
const WINDOW = 200;
const WINDOWS = 60;

/** Heap used now, bytes. */
const heap = (): number => getHeapStatistics().used_heap_size;

/**
 * Bytes that the time loop takes from the heap for each step: growth of the heap over windows of 200 control periods,
 * less what asking for it costs; windows in which the collector ran are left out; median of the rest.
 * @returns NaN when the collector ran in every window
 */
export async function bytesPerStep(
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: StrategyDefinition,
): Promise<number> {
  const collections: { start: number; end: number }[] = [];
  const watch = new PerformanceObserver((list) => {
    for (const e of list.getEntries())
      collections.push({ start: e.startTime, end: e.startTime + e.duration });
  });
  watch.observe({ entryTypes: ["gc"] });
  const run = new Simulation(vehicle, new CycleDriver(cycle), strategy, {}, WINDOW * (WINDOWS + 5));
  for (let i = 0; i < 4 * WINDOW; i += 1) run.tick();
  const windows = Array.from({ length: WINDOWS }, () => window(run));
  await turn();
  watch.disconnect();
  const quiet = windows.filter((w) => !collections.some((c) => c.start < w.end && c.end > w.start));
  const grown = quiet.map((w) => w.bytes / (WINDOW * run.p.stepsPerTick)).sort((a, b) => a - b);
  return grown[Math.floor(grown.length / 2)] ?? Number.NaN;
}

function window(run: Simulation): { start: number; end: number; bytes: number } {
  const start = performance.now();
  const asking = -heap() + heap();
  const before = heap();
  for (let i = 0; i < WINDOW; i += 1) run.tick();
  const bytes = heap() - before - asking;
  return { start, end: performance.now(), bytes };
}
