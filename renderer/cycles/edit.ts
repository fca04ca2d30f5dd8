import { crop } from "../../cycles/edit.ts";
import { fullLine, manoeuvre } from "../../cycles/manoeuvres/catalogue.ts";
import { slug } from "../../cycles/slug.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { InputError, type InputFault } from "../../shared/errors.ts";
import type { Treatment } from "../../shared/treatments.ts";
import { driveUnasked } from "../drive/actions.ts";
import { DRAFT, freshCycleId, renamed } from "../state/cycle-ids.ts";
import { goTo } from "../state/place.ts";
import { noted, recordingOf } from "../state/recordings.ts";
import { cycleId, ownCycles, type Stretch } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";
import type { ReadChoices, TreatedReply } from "../workers/cycle-contract.ts";
import { noteReply, replyShown } from "./figures-state.ts";
import {
  busy,
  change,
  chosenSpan,
  cycleShown,
  type Draft,
  draft,
  kindShown,
  lineOf,
  lines,
  refusal,
  refusedEdit,
  selected,
  shownSpan,
} from "./state.ts";
import { cycleWorker } from "./worker.ts";

/** Newest work asked for: what an older one answers is dropped. */
let asked = 0;

/** Asks the worker, and says meanwhile what it is at. @returns null when newer work was asked for meanwhile */
async function ask<T>(words: string, work: () => Promise<T>): Promise<T | null> {
  asked += 1;
  const mine = asked;
  busy.value = words;
  try {
    const answer = await work();
    return mine === asked ? answer : null;
  } finally {
    if (mine === asked) busy.value = null;
  }
}

/** The cycle that a reply describes, its recording noted. */
function traceOf(
  reply: TreatedReply,
  raw: NonNullable<Draft["read"]["imported"]>["raw"],
  treatments: readonly Treatment[],
): CycleTrace {
  const { after, overlay } = reply.treated;
  const trace = noted({ trace: after, recording: { raw, treatments, overlay } });
  noteReply(trace, reply);
  return trace;
}

const refuse = (name: string, faults: readonly InputFault[]): void => {
  refusal.value = { name, faults };
};

/** What was done to the recording before, if it can be done to this one as well. */
function carried(before: Draft | null, kind: "positions" | "speeds"): readonly Treatment[] | null {
  const recording = before?.trace ? recordingOf(before.trace) : null;
  return recording?.raw.kind === kind ? recording.treatments : null;
}

/**
 * Reads a file: a recording becomes the draft, a cycle file an own cycle. One that cannot be read is refused with its
 * faults, and all that is open stays.
 * @param before the draft that is read again in another way; null for a new file
 */
export async function openFile(
  text: string,
  name: string,
  choices: ReadChoices = {},
  before: Draft | null = null,
): Promise<void> {
  const answer = await ask(t.cycles.reading(name), async () => cycleWorker().read(text, name, choices));
  if (!answer) return;
  if (!answer.ok) return refuse(name, answer.faults);
  refusal.value = null;
  const read = answer.value;
  if (read.kind === "own") {
    const { trace, recording } = read.own;
    const id = freshCycleId(trace.id, ownCycles.value);
    const own = renamed(noted({ trace, recording }), id, trace.title);
    return change({ own: [...ownCycles.value, own], selected: id });
  }
  const empty: Draft = { name, text, choices, read, trace: null };
  if (!read.imported) return change({ draft: empty, selected: DRAFT });
  const { raw } = read.imported;
  const lists = [carried(before, raw.kind), read.usual];
  for (const treatments of lists) {
    if (!treatments) continue;
    const treated = await ask(t.cycles.treating, async () => cycleWorker().treat(raw, treatments));
    if (!treated) return;
    if (treated.ok) {
      const trace = traceOf(treated.value, raw, treatments);
      return change({ draft: { ...empty, trace }, selected: DRAFT });
    }
    if (treatments === read.usual) return refuse(name, treated.faults);
  }
}

/** Reads the draft's file again with other columns, units or another track. */
export function readAgain(choices: ReadChoices): void {
  const now = draft.value;
  if (now) void openFile(now.text, now.name, choices, now);
}

/** Opens the invented recording. */
export async function openInvented(): Promise<void> {
  const text = await ask(t.cycles.reading(t.cycles.inventedFile), () => cycleWorker().invented());
  if (text) await openFile(text, t.cycles.inventedFile);
}

/** What the worker is at: an edit that comes meanwhile builds on it. */
let wanted: { readonly subject: CycleTrace; readonly treatments: readonly Treatment[] } | null = null;

/**
 * Does other treatments to the recording looked at. What cannot be done is refused; everything stays as it was.
 * @param next the list after the edit
 * @param index of the one that was edited, for the words of a refusal
 */
export async function editTreatments(
  next: (now: readonly Treatment[]) => readonly Treatment[],
  index: number,
  gesture: string | null = null,
): Promise<boolean> {
  const subject = cycleShown.value;
  const recording = subject && recordingOf(subject);
  if (!subject || !recording) return false;
  const { raw } = recording;
  const treatments = next(wanted?.subject === subject ? wanted.treatments : recording.treatments);
  wanted = { subject, treatments };
  const answer = await ask(t.cycles.treating, async () => cycleWorker().treat(raw, treatments));
  if (!answer) return false;
  wanted = null;
  if (cycleShown.value !== subject) return false;
  if (!answer.ok) {
    refusedEdit.value = { index, faults: answer.faults };
    return false;
  }
  const trace = traceOf(answer.value, raw, treatments);
  shownSpan.value = null;
  chosenSpan.value = null;
  replaceShown(trace, gesture);
  return true;
}

/** Puts another version of the draft or own cycle in the place of what is looked at. */
function replaceShown(trace: CycleTrace, gesture: string | null): void {
  const now = draft.value;
  if (kindShown.value === "draft" && now) change({ draft: { ...now, trace } }, gesture);
  else change({ own: ownCycles.value.map((one) => (one.id === trace.id ? trace : one)) }, gesture);
}

/** Gives what is looked at another name; an empty one is not taken. */
export function rename(title: string): void {
  const trace = cycleShown.value;
  const name = title.trim().slice(0, 200);
  if (!trace || name === "" || name === trace.title) return;
  replaceShown(renamed(trace, trace.id, name), null);
}

/** Sets a manoeuvre's parameters. @throws InputError, and nothing changes, when it cannot be drawn so */
export function setLine(id: string, line: string, gesture: string | null): void {
  const full = fullLine(line);
  if (full === fullLine(lineOf(id))) return;
  change({ lines: { ...lines.value, [id]: full } }, gesture);
}

/** Back to a manoeuvre's own parameters. */
export function resetLine(id: string): void {
  const { [id]: _, ...others } = lines.value;
  change({ lines: others });
}

/** Keeps the draft, or the manoeuvre as it is set, as an own cycle, and looks at it. @returns its id */
export function keepShown(): string | null {
  const trace = cycleShown.value;
  const kind = kindShown.value;
  if (!trace || (kind !== "draft" && kind !== "manoeuvre")) return null;
  const base = kind === "draft" ? slug(trace.title, "recording").slice(0, 70) : trace.id.slice(0, 70);
  const id = freshCycleId(base.replace(/-+$/, ""), ownCycles.value);
  const own = renamed(trace, id, trace.title);
  if (replyShown.value) noteReply(own, replyShown.value);
  change({
    own: [...ownCycles.value, own],
    selected: id,
    ...(kind === "draft" ? { draft: null } : {}),
  });
  return id;
}

/** The stretch chosen, alone: of a recording as one more treatment, of any other cycle as an own one. */
export async function keepStretch(span: Stretch): Promise<void> {
  const trace = cycleShown.value;
  if (!trace) return;
  const recording = recordingOf(trace);
  if (recording) {
    const cut: Treatment = { kind: "crop", start: span.from, end: span.to };
    await editTreatments((now) => [...now, cut], recording.treatments.length);
    return;
  }
  const cut = crop(trace, { start: span.from, end: span.to });
  const id = freshCycleId(`${trace.id.slice(0, 60)}-part`.replace(/-+/g, "-"), ownCycles.value);
  const title = t.cycles.partOf(trace.title).slice(0, 200);
  change({ own: [...ownCycles.value, { ...cut, id, title }], selected: id });
}

/** Takes the own cycle or the draft that is looked at away. Undo brings it back. */
export function dropShown(): void {
  if (kindShown.value === "draft") {
    change({ draft: null, selected: "udds" });
    return;
  }
  const id = selected.value;
  if (cycleId.value === id) cycleId.value = "udds";
  change({ own: ownCycles.value.filter((one) => one.id !== id), selected: "udds" });
}

/** Sets Road to what is looked at, goes there and drives it; a draft is kept first. */
export function driveIt(): void {
  const kind = kindShown.value;
  const trace = cycleShown.value;
  if (!trace) return;
  if (kind === "draft") cycleId.value = keepShown() ?? "udds";
  else if (kind === "manoeuvre") {
    const id = selected.value;
    cycleId.value = fullLine(lineOf(id)) === fullLine(id) ? id : fullLine(lineOf(id));
  } else cycleId.value = trace.id;
  goTo("road");
  driveUnasked(true);
}

/** Why a manoeuvre's line cannot be drawn; null when it can. */
export function lineFaults(line: string): readonly InputFault[] | null {
  try {
    manoeuvre(line);
    return null;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.faults;
  }
}
