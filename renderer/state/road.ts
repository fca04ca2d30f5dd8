import { batch, computed, signal } from "@preact/signals";
import { cycleById } from "../../cycles/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { RunOptions } from "../../sim/options.ts";
import { logReader } from "../../sim/run/log.ts";
import type { RunReply, RunRequest } from "../workers/contract.ts";
import { ownStrategies, strategyOf } from "./own-strategies.ts";
import type { RoadChoice } from "./project-road.ts";
import { anglesAt, type BalanceState, durationOf, type Now, ROW, type Run, readNow, rowAt } from "./run.ts";
import { vehicle } from "./store.ts";

/** What the next run drives. The vehicle is the project's, the same as on Bench. */
export const cycleId = signal("udds");
export const strategyId = signal("rules");
export const runOptions = signal<RunOptions>({});

/** Cycles that are not in the catalogue: driven by hand, imported. */
export const ownCycles = signal<readonly CycleTrace[]>([]);

/** A cycle by its id: an own one, else the catalogue's. @throws InputError for an unknown id */
export const chosenCycle = (id: string): CycleTrace =>
  ownCycles.value.find((cycle) => cycle.id === id) ?? cycleById(id);

/** What Road is set to. */
export const roadNow = (): RoadChoice => ({
  cycle: cycleId.value,
  own: ownCycles.value,
  strategy: strategyId.value,
  options: runOptions.value,
});

/** Sets Road to what a project says; own cycles of before stay. */
export function setRoad({ cycle, own, strategy, options }: RoadChoice): void {
  batch(() => {
    const others = ownCycles.value.filter((one) => !own.some((fresh) => fresh.id === one.id));
    ownCycles.value = [...others, ...own];
    cycleId.value = cycle;
    strategyId.value = strategy;
    runOptions.value = options;
  });
}

/** The runs kept, oldest first, and the one that is looked at. */
export const runs = signal<readonly Run[]>([]);
export const run = signal<Run | null>(null);
export const balances = signal<ReadonlyMap<number, BalanceState>>(new Map());

/** What is under way: its share done, 0–1; null: nothing. */
export const progress = signal<number | null>(null);

/** Time looked at, s; whether it moves, how fast, and within which span it goes round. */
export const cursor = signal(0);
export const playing = signal(false);
/** Whether the cursor is held and drawn about by hand. */
export const held = signal(false);
export const rate = signal(1);
export const RATES = [0.1, 1, 5, 20, 100] as const;
export const slowing = signal(120);

/** What Road does: replay a run, be driven by hand, or find the limits. */
export const mode = signal<"replay" | "pedals" | "limits">("replay");

/** In projector mode, what stands beside the lever line. */
export const projected = signal<"flow" | "plots">("flow");

/** A stretch of time, s. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretch chosen by the person (statistics, loop), and whether play goes round in it. */
export const chosen = signal<Stretch | null>(null);
export const looping = signal(false);

/** The stretch of time that the plots show; null: all of it. */
export const shown = signal<Stretch | null>(null);

/** While a drive by hand is under way: the row of the instant, told anew each frame; null otherwise. */
export const liveRow = signal<{ readonly row: number } | null>(null);

export const duration = computed(() => (run.value ? durationOf(run.value.log) : 0));
export const row = computed(() => liveRow.value?.row ?? (run.value ? rowAt(run.value.log, cursor.value) : 0));
/** Everything of the instant at the cursor; null without a run. */
export const now = computed<Now | null>(() => {
  // The same row says other things each frame while it is driven by hand.
  const live = liveRow.value;
  return run.value ? readNow(run.value, live?.row ?? row.value) : null;
});
export const angles = computed(() => {
  if (!run.value) return { carrier: 0, ring: 0 };
  const { log, request } = run.value;
  const live = liveRow.value;
  const time = live ? live.row * ROW : cursor.value;
  const { carrier, ring } = anglesAt(log, request.vehicle, time);
  return { carrier: carrier / slowing.value, ring: ring / slowing.value };
});

/** Most runs kept, and most bytes of all their logs together; the newest stays in any case. */
export const MOST_RUNS = 12;
export const MOST_BYTES = 400e6;

let made = 0;

/** The newest runs that may be kept. */
export function kept(all: readonly Run[]): readonly Run[] {
  let bytes = 0;
  const good: Run[] = [];
  for (const one of [...all].reverse()) {
    bytes += one.bytes;
    if (good.length > 0 && (good.length === MOST_RUNS || bytes > MOST_BYTES)) break;
    good.unshift(one);
  }
  return good;
}

/** The request as chosen now. @throws InputError for an unknown cycle or strategy */
export function requestNow(): RunRequest {
  const chosenStrategy = strategyOf(ownStrategies.value, strategyId.value);
  return {
    vehicle: vehicle.value,
    cycle: chosenCycle(cycleId.value),
    strategy: strategyId.value,
    ...(chosenStrategy.kind === "own"
      ? { own: { title: chosenStrategy.title, text: chosenStrategy.text } }
      : {}),
    options: runOptions.value,
  };
}

const alike = (one: object, other: object): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

/** Whether the run looked at is the drive chosen now, an own strategy's text included. */
export const fits = computed(() => {
  if (!run.value) return false;
  const { request } = run.value;
  try {
    const now = requestNow();
    const isOwn = ownCycles.value.includes(now.cycle);
    return (
      alike(request.vehicle, now.vehicle) &&
      alike(request.options, now.options) &&
      request.strategy === now.strategy &&
      request.own?.text === now.own?.text &&
      (isOwn ? request.cycle === now.cycle : request.cycle.id === now.cycle.id)
    );
  } catch {
    // What is chosen is not there any more.
    return false;
  }
});

/** Takes a finished run among the kept ones and looks at it. */
export function takeRun(request: RunRequest, reply: RunReply, name: string): Run {
  made += 1;
  const { log, regime, summary } = reply;
  const bytes =
    log.columns.byteLength +
    log.flows.byteLength +
    log.masks.byteLength +
    log.modes.byteLength +
    regime.byteLength;
  const one: Run = { id: made, name, request, log: logReader(log), regime, summary, bytes };
  batch(() => {
    runs.value = kept([...runs.value, one]);
    lookAt(one);
  });
  return one;
}

/** Looks at a run from its start. */
export function lookAt(one: Run): void {
  batch(() => {
    run.value = one;
    cursor.value = 0;
    chosen.value = null;
    shown.value = null;
    looping.value = false;
  });
}

/** Moves the cursor, s, within the run. */
export function moveTo(time: number): void {
  cursor.value = Math.min(duration.value, Math.max(0, time));
}

/** One frame on or back: to the next row. */
export const frame = (by: number): void => {
  playing.value = false;
  moveTo((row.value + by) * ROW);
};

/** To the next moment after the cursor, or the last one before it. */
export function toMoment(by: 1 | -1): void {
  const list = run.value?.summary?.moments ?? [];
  const time = cursor.value;
  const next =
    by > 0
      ? list.find((m) => m.time > time + ROW / 2)
      : [...list].reverse().find((m) => m.time < time - ROW / 2);
  playing.value = false;
  moveTo(next ? next.time : by > 0 ? duration.value : 0);
}

/** The playing clock moved on by some seconds of the person's time. It does nothing but move the cursor. */
export function playFor(seconds: number): void {
  const loop = looping.value ? chosen.value : null;
  const end = loop?.to ?? duration.value;
  const next = cursor.value + seconds * rate.value;
  if (next < end) {
    cursor.value = next;
    return;
  }
  if (loop) cursor.value = loop.from + ((next - loop.from) % Math.max(ROW, loop.to - loop.from));
  else
    batch(() => {
      cursor.value = end;
      playing.value = false;
    });
}
