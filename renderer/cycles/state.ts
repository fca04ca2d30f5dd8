import { batch, computed, signal } from "@preact/signals";
import { cycleById, listCycles } from "../../cycles/catalogue.ts";
import { manoeuvre } from "../../cycles/manoeuvres/catalogue.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { InputFault } from "../../shared/errors.ts";
import { DRAFT } from "../state/cycle-ids.ts";
import { closed, emptyHistory, type History, recorded, redone, undone } from "../state/history.ts";
import { recordingOf } from "../state/recordings.ts";
import { ownCycles, type Stretch } from "../state/road.ts";
import type { ReadChoices, ReadFile } from "../workers/cycle-contract.ts";

/** A recording that was opened and is not kept yet. */
export interface Draft {
  readonly name: string;
  /** the file, so that it can be read again in other units */
  readonly text: string;
  readonly choices: ReadChoices;
  readonly read: Extract<ReadFile, { kind: "recording" }>;
  /** as treated; null while the columns are not clear */
  readonly trace: CycleTrace | null;
}

/** What undo and redo bring back. */
export interface Edited {
  readonly own: readonly CycleTrace[];
  readonly draft: Draft | null;
  /** manoeuvres whose parameters were changed, by id: the line that draws them */
  readonly lines: Readonly<Record<string, string>>;
  /** what is looked at: an id, or DRAFT */
  readonly selected: string;
}

export const draft = signal<Draft | null>(null);
export const lines = signal<Readonly<Record<string, string>>>({});
export const selected = signal("udds");

/** The window of time that the plot shows, null: all; and the stretch chosen on it. */
export const shownSpan = signal<Stretch | null>(null);
export const chosenSpan = signal<Stretch | null>(null);

/** What the worker is at, in words; null: nothing. */
export const busy = signal<string | null>(null);

/** A file that was refused, and why; everything open stays. */
export const refusal = signal<{ readonly name: string; readonly faults: readonly InputFault[] } | null>(null);

/** Why the last edit of the treatments was not taken: of which one (its place in the list), and why. */
export const refusedEdit = signal<{ readonly index: number; readonly faults: readonly InputFault[] } | null>(
  null,
);

const history = signal<History<Edited>>(emptyHistory());
export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.future.length > 0);

/** Own cycles as this store last saw them: others come from driving by hand and from opened projects. */
let seen: readonly CycleTrace[] = [];

/** Cycles that came from elsewhere belong into every step, so that undo never takes them away. */
function takeIn(): void {
  if (ownCycles.value === seen) return;
  const fresh = ownCycles.value.filter((one) => !seen.some((old) => old.id === one.id));
  const add = (step: Edited): Edited => ({ ...step, own: [...step.own, ...fresh] });
  const { past, future, gesture } = history.value;
  history.value = { past: past.map(add), future: future.map(add), gesture };
  seen = ownCycles.value;
}

export const editedNow = (): Edited => ({
  own: ownCycles.value,
  draft: draft.value,
  lines: lines.value,
  selected: selected.value,
});

function put(next: Edited): void {
  batch(() => {
    ownCycles.value = next.own;
    seen = next.own;
    draft.value = next.draft;
    lines.value = next.lines;
    selected.value = next.selected;
    // Times of before mean other places in what is there now.
    shownSpan.value = null;
    chosenSpan.value = null;
    refusedEdit.value = null;
  });
}

/** Samples that all steps together may hold; a day's recording has 86,400. */
const MOST_SAMPLES = 2_000_000;
const FEWEST_STEPS = 5;

/** The newest steps, fewer of large recordings: each may hold a copy. */
function bounded(kept: History<Edited>): History<Edited> {
  const largest = Math.max(
    1,
    ...ownCycles.value.map(({ time }) => time.length),
    draft.value?.trace?.time.length ?? 0,
  );
  const most = Math.max(FEWEST_STEPS, Math.floor(MOST_SAMPLES / largest));
  return { ...kept, past: kept.past.slice(-most) };
}

/** One edit, noted for undo. @param gesture edits of the same gesture count as one */
export function change(changed: Partial<Edited>, gesture: string | null = null): void {
  takeIn();
  const before = editedNow();
  batch(() => {
    put({ ...before, ...changed });
    history.value = bounded(recorded(history.value, before, gesture));
  });
}

/** A run of edits is over. */
export const endEdit = (): void => {
  history.value = closed(history.value);
};

function step(go: typeof undone): void {
  takeIn();
  const taken = go(history.value, editedNow());
  if (!taken) return;
  batch(() => {
    history.value = taken.history;
    put(taken.state);
  });
}

export const undoCycles = (): void => step(undone);
export const redoCycles = (): void => step(redone);

/** Looks at another cycle. */
export function look(id: string): void {
  if (selected.value === id) return;
  batch(() => {
    selected.value = id;
    shownSpan.value = null;
    chosenSpan.value = null;
    refusedEdit.value = null;
  });
}

const MANOEUVRE_IDS: ReadonlySet<string> = new Set(
  listCycles()
    .filter(({ kind }) => kind === "manoeuvre")
    .map(({ id }) => id),
);

export const isManoeuvreId = (id: string): boolean => MANOEUVRE_IDS.has(id);

/** The line of a manoeuvre as it is set now. */
export const lineOf = (id: string): string => lines.value[id] ?? id;

/** The own cycle looked at, if it is one. */
export const ownShown = computed(() => ownCycles.value.find(({ id }) => id === selected.value) ?? null);

/** What kind of thing is looked at. */
export const kindShown = computed<"draft" | "own" | "manoeuvre" | "catalogue">(() => {
  if (selected.value === DRAFT && draft.value) return "draft";
  if (ownShown.value) return "own";
  return isManoeuvreId(selected.value) ? "manoeuvre" : "catalogue";
});

/** The cycle looked at; null for a recording whose columns are not clear. */
export const cycleShown = computed<CycleTrace | null>(() => {
  const id = selected.value;
  switch (kindShown.value) {
    case "draft":
      return draft.value?.trace ?? null;
    case "own":
      return ownShown.value;
    case "manoeuvre":
      return manoeuvre(lineOf(id));
    case "catalogue":
      return cycleById(listCycles().some((info) => info.id === id) ? id : "udds");
  }
});

/** The recording looked at, if it is one. */
export const recordingShown = computed(() => (cycleShown.value ? recordingOf(cycleShown.value) : null));
