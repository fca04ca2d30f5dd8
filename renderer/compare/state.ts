import { computed, signal } from "@preact/signals";
import type { EnergySeries } from "../../sim/study/compare/differ.ts";
import type { ComparedStrategy, ComparisonJob } from "../../sim/study/compare/job.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { ownVehicles } from "../state/store.ts";
import { findVehicle } from "../state/vehicles.ts";
import type { BoundReply } from "../workers/contract.ts";
import type { UnderWay } from "./under-way.ts";

/** The views of Compare: one at a time. */
export const COMPARE_VIEWS = ["strategies", "own", "sweep", "regeneration"] as const;

export type CompareView = (typeof COMPARE_VIEWS)[number];

export const compareView = signal<CompareView>("strategies");

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

/** A line that could not be driven, and why: an own strategy that failed, say. The others go on. */
export interface FailedLine {
  readonly index: number;
  readonly strategy: string;
  readonly vehicle: string;
  readonly cycle: string;
  readonly why: string;
}

export const failures = signal<readonly FailedLine[]>([]);

/** All lines of the last comparison, driven or not. */
export const jobs = signal<readonly ComparisonJob[]>([]);

/** What each line was driven with, by its index: an own text may have changed since. */
export const drivenWith = computed<ReadonlyMap<number, ComparedStrategy>>(
  () => new Map(jobs.value.map(({ index, strategy }) => [index, strategy])),
);

/** Least fuel of each vehicle on each cycle, by `boundKey`. */
export const bounds = signal<ReadonlyMap<string, BoundReply>>(new Map());

export const boundKey = (vehicle: string, cycle: string): string => `${vehicle} ${cycle}`;

/** Jobs done and all of them, while a comparison is under way. */
export const under = signal<UnderWay | null>(null);

/** The line picked, by its index, and what it is held against; null: the line with the least fuel. */
export const picked = signal<number | null>(null);
export const reference = signal<number | "bound" | null>(null);

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

/** What fuel is counted over: another line, or the least fuel possible. */
export interface Against {
  /** null: the bound */
  readonly result: ComparisonResult | null;
  readonly series: EnergySeries;
  /** fuel that one unit of battery energy counts as */
  readonly slope: number;
}

/** What the difference of fuel is shown over; null without lines. */
export const against = computed<Against | null>(() => {
  const one = pickedResult.value;
  const other = referenceResult.value;
  const bound = one && reference.value === "bound" ? boundOf(one) : null;
  if (one && bound?.feasible) return { result: null, series: bound, slope: one.row.slope };
  return other && { result: other, series: other.series, slope: other.row.slope };
});

/** Lower heating value of the fuel of a line's vehicle, J/kg: grams of what is counted in joules. */
export const lowerHeatOf = ({ row }: ComparisonResult): number =>
  findVehicle(ownVehicles.value, row.vehicle.id).fuel.lowerHeat;

/** Puts or takes an id in a list. */
export const toggled = (list: readonly string[], id: string): readonly string[] =>
  list.includes(id) ? list.filter((one) => one !== id) : [...list, id];
