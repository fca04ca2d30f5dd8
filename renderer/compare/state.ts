import { computed, signal } from "@preact/signals";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import type { BoundReply } from "../workers/contract.ts";

/** What is compared: ids of vehicles, cycles and strategies. */
export const chosenVehicles = signal<readonly string[]>(["compact"]);
export const chosenCycles = signal<readonly string[]>(["udds"]);
export const chosenStrategies = signal<readonly string[]>([
  "rules",
  "equivalent-adapted",
  "thermostat",
  "no-regeneration",
]);
export const withBound = signal(true);

/** Finished lines of the last comparison, in the order of their indices. */
export const results = signal<readonly ComparisonResult[]>([]);

/** Least fuel of each vehicle on each cycle, by `boundKey`. */
export const bounds = signal<ReadonlyMap<string, BoundReply>>(new Map());

export const boundKey = (vehicle: string, cycle: string): string => `${vehicle} ${cycle}`;

/** Jobs done and all of them, while a comparison is under way. */
export const under = signal<{ readonly done: number; readonly all: number } | null>(null);

/** The line picked, by its index, and the one that it is held against; null: the line with the least fuel. */
export const picked = signal<number | null>(null);
export const reference = signal<number | null>(null);

/** Time looked at in the overlays, s. */
export const compareCursor = signal(0);

export const pickedResult = computed(
  () => results.value.find(({ row }) => row.index === picked.value) ?? results.value[0] ?? null,
);

/** Lines of the same vehicle and cycle as the picked one: those can be laid over each other. */
export const laid = computed(() => {
  const one = pickedResult.value;
  if (!one) return [];
  return results.value.filter(
    ({ row }) => row.vehicle.id === one.row.vehicle.id && row.cycle.id === one.row.cycle.id,
  );
});

const litres = (result: ComparisonResult): number =>
  result.row.fuel.balanced ? result.row.fuel.litres_per_100km : Number.POSITIVE_INFINITY;

/** What the picked line is held against. */
export const referenceResult = computed(() => {
  const list = laid.value;
  const asked = list.find(({ row }) => row.index === reference.value);
  return asked ?? [...list].sort((a, b) => litres(a) - litres(b))[0] ?? null;
});

/** The bound of a line, if it was found. */
export const boundOf = (result: ComparisonResult): BoundReply | null =>
  bounds.value.get(boundKey(result.row.vehicle.id, result.row.cycle.id)) ?? null;

/** Puts or takes an id in a list. */
export const toggled = (list: readonly string[], id: string): readonly string[] =>
  list.includes(id) ? list.filter((one) => one !== id) : [...list, id];
