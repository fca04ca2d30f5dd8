import { computed, effect, signal, untracked } from "@preact/signals";
import { RECORDED_REST_SPEED, type StatisticsRow } from "../../cycles/statistics/beside-standard.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { recordingOf } from "../state/recordings.ts";
import type { TreatedReply } from "../workers/cycle-contract.ts";
import { cycleShown, kindShown } from "./state.ts";
import { cycleWorker } from "./worker.ts";

/** The lines of the standard cycles; empty until the worker has counted them. */
export const standards = signal<readonly StatisticsRow[]>([]);

const found = signal<{ readonly trace: CycleTrace; readonly row: StatisticsRow } | null>(null);
const kept = signal<{ readonly trace: CycleTrace; readonly reply: TreatedReply } | null>(null);

/** What the worker said of shorter recordings, as long as their cycles are held (by undo, say). */
const shorter = new WeakMap<CycleTrace, TreatedReply>();
const SHORT = 20_000;

/** Notes what the worker said of a treated recording. Of long ones only the newest is held: it can be a day. */
export function noteReply(trace: CycleTrace, reply: TreatedReply): void {
  if (trace.time.length <= SHORT) shorter.set(trace, reply);
  kept.value = { trace, reply };
}

/** What the treatments did to the recording looked at; null when it is none, or not known yet. */
export const replyShown = computed(() => {
  const trace = cycleShown.value;
  const newest = kept.value;
  if (!trace) return null;
  return newest?.trace === trace ? newest.reply : (shorter.get(trace) ?? null);
});

/** The line of the cycle looked at; null until it is counted. */
export const rowShown = computed<StatisticsRow | null>(() => {
  const trace = cycleShown.value;
  if (!trace) return null;
  if (replyShown.value) return replyShown.value.row;
  const standard = kindShown.value === "catalogue" && standards.value.find(({ id }) => id === trace.id);
  return standard || (found.value?.trace === trace ? found.value.row : null);
});

async function count(trace: CycleTrace): Promise<void> {
  const worker = cycleWorker();
  if (standards.value.length === 0) standards.value = await worker.standard();
  if (cycleShown.value !== trace || rowShown.value) return;
  const recording = recordingOf(trace);
  if (recording) {
    const answer = await worker.treat(recording.raw, recording.treatments);
    if (answer.ok && cycleShown.value === trace) noteReply(trace, answer.value);
    return;
  }
  const row = await worker.row(trace, kindShown.value === "own" ? RECORDED_REST_SPEED : 0);
  if (cycleShown.value === trace) found.value = { trace, row };
}

/** Counts what is looked at, as long as the place is open. @returns stops it */
export const followFigures = (): (() => void) =>
  effect(() => {
    const trace = cycleShown.value;
    if (trace) untracked(() => void count(trace));
  });
