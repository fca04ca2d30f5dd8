import { createStore, promisifyRequest } from "idb-keyval";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { OwnCycle } from "../../shared/own-cycles.ts";
import type { RecordedLog } from "../../shared/recorded.ts";
import { freshCycleId, renamed } from "./cycle-ids.ts";
import { noted, withRecording } from "./recordings.ts";

/**
 * Own cycles on this device. They can be large (a day's recording: some 10 MB), too large for the browser's text store
 * of about 5 million characters, so they lie in its database, as typed arrays.
 */
export interface ObjectStore {
  /** All that is kept, by its key. */
  read(): Promise<ReadonlyMap<string, unknown>>;
  /** Puts and takes away in one step: it holds the old or the new values, never a mixture. */
  change(put: ReadonlyMap<string, unknown>, gone: readonly string[]): Promise<void>;
}

/** What is kept. */
export interface KeptCycles {
  readonly own: readonly CycleTrace[];
  /** the own cycle that Road is set to; null when it is set to one of the catalogue */
  readonly chosen: string | null;
}

/** What was found; `broken` when there was something among it that cannot be used, or the store cannot be read. */
export interface FoundCycles extends KeptCycles {
  readonly broken: boolean;
}

/** The browser's database; made when it is first used. */
export function databaseStore(): ObjectStore {
  const place = () => createStore("trishaft", "own-cycles");
  let store: ReturnType<typeof place> | null = null;
  const open = (): ReturnType<typeof place> => {
    store ??= place();
    return store;
  };
  return {
    read: () =>
      open()("readonly", async (objects) => {
        const [keys, values] = await Promise.all([
          promisifyRequest(objects.getAllKeys()),
          promisifyRequest<unknown[]>(objects.getAll()),
        ]);
        return new Map(keys.map((key, i) => [String(key), values[i]]));
      }),
    change: (put, gone) =>
      open()("readwrite", (objects) => {
        for (const key of gone) objects.delete(key);
        for (const [key, value] of put) objects.put(value, key);
        const done = promisifyRequest(objects.transaction);
        // At once, for a window that is being closed hears no answer any more.
        objects.transaction.commit();
        return done;
      }),
  };
}

/** Under which the cycle that Road is set to is named by its key. */
const CHOSEN = "chosen";

/** Under which all cycles stood together before each had a key. */
const TOGETHER = "cycles";
const VERSION = 1;

/** One cycle in the store. */
interface Entry extends OwnCycle {
  /** its place in the list of them all */
  readonly order: number;
}

/**
 * Keeps own cycles. Each version of one lies under a key of its own that no other window gives out, and a window only
 * puts what it made and takes away what it itself had: so several windows may keep theirs without reading what the
 * others have kept, also while they are being closed. What was deleted in one stays deleted; what was changed in one
 * while another changed or deleted it is there afterwards.
 */
export class CycleKeeper {
  private readonly store: ObjectStore;
  private readonly newKey: () => string;
  private readonly keys = new WeakMap<CycleTrace, string>();
  /** what this window has in the store, by key */
  private kept = new Map<string, { readonly id: string; readonly order: number }>();
  private chosen: string | null = null;

  /** @param newKey gives one that is given out nowhere else */
  constructor(store: ObjectStore, newKey: () => string) {
    this.store = store;
    this.newKey = newKey;
  }

  /** What the store holds: two cycles under the same id, made in two windows, get different ones. */
  async restore(): Promise<FoundCycles> {
    try {
      const { entries, chosen, broken } = await this.entries();
      const own: CycleTrace[] = [];
      for (const [key, { order, ...one }] of entries) {
        const trace = noted(one);
        const taken = own.some(({ id }) => id === trace.id);
        const free = taken ? renamed(trace, freshCycleId(trace.id, own), trace.title) : trace;
        this.keys.set(free, key);
        this.kept.set(key, { id: free.id, order });
        own.push(free);
      }
      this.chosen = chosen;
      const onRoad = own.find((trace) => this.keys.get(trace) === chosen);
      return { own, chosen: onRoad?.id ?? null, broken };
    } catch {
      return { own: [], chosen: null, broken: true };
    }
  }

  /** Keeps them. False when the store refuses (full, or switched off). */
  async keep({ own, chosen }: KeptCycles): Promise<boolean> {
    const before = { kept: this.kept, chosen: this.chosen };
    const put = new Map<string, unknown>();
    const now = new Map<string, { readonly id: string; readonly order: number }>();
    let last = Math.max(0, ...[...before.kept.values()].map(({ order }) => order));
    for (const trace of own) {
      const key = this.keys.get(trace) ?? this.newKey();
      this.keys.set(trace, key);
      const old = before.kept.get(key) ?? [...before.kept.values()].find(({ id }) => id === trace.id);
      if (!old) last += 1;
      const order = old?.order ?? last;
      now.set(key, { id: trace.id, order });
      if (!before.kept.has(key)) put.set(key, { ...withRecording(trace), order } satisfies Entry);
    }
    const gone = [...before.kept.keys()].filter((key) => !now.has(key));
    const onRoad = own.find(({ id }) => id === chosen);
    this.chosen = (onRoad && this.keys.get(onRoad)) ?? null;
    if (this.chosen !== before.chosen) put.set(CHOSEN, this.chosen);
    // What comes while this is under way builds on it: the store takes one after the other.
    this.kept = now;
    if (put.size === 0 && gone.length === 0) return true;
    try {
      await this.store.change(put, gone);
      return true;
    } catch {
      // None of it was done: it is tried again with the next edit.
      for (const key of put.keys()) this.kept.delete(key);
      for (const key of gone) {
        const old = before.kept.get(key);
        if (old) this.kept.set(key, old);
      }
      if (put.has(CHOSEN)) this.chosen = before.chosen;
      return false;
    }
  }

  /** The store's cycles in their order; those that stood together are given keys first. */
  private async entries() {
    const found = await this.store.read();
    const together = found.get(TOGETHER);
    const earlier = together === undefined ? null : apart(together);
    if (earlier && earlier.put.size > 0) await this.store.change(earlier.put, [TOGETHER]);
    const all = new Map([...(earlier?.put ?? []), ...found]);
    const chosen = all.get(CHOSEN);
    const rest = [...all].filter(([key]) => key !== CHOSEN && key !== TOGETHER);
    const entries = rest.filter((one): one is [string, Entry] => isEntry(one[1]));
    entries.sort(([a, one], [b, other]) => one.order - other.order || (a < b ? -1 : 1));
    return {
      entries,
      chosen: typeof chosen === "string" ? chosen : null,
      broken: entries.length < rest.length || earlier?.broken === true,
    };
  }
}

/** Cycles that stood together, each under a key that every window gives it. */
function apart(together: unknown): { readonly put: ReadonlyMap<string, unknown>; readonly broken: boolean } {
  if (!isObject(together) || together.version !== VERSION || !Array.isArray(together.cycles))
    return { put: new Map(), broken: true };
  const good = together.cycles.filter(isOwn);
  const keyOf = (id: unknown): string => `first-${id}`;
  const put = new Map<string, unknown>(
    good.map((one, i) => [keyOf(one.trace.id), { ...one, order: i + 1 } satisfies Entry]),
  );
  put.set(CHOSEN, typeof together.chosen === "string" ? keyOf(together.chosen) : null);
  return { put, broken: good.length < together.cycles.length };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const isOwn = (value: unknown): value is OwnCycle =>
  isObject(value) && isTrace(value.trace) && (value.recording === null || isRecording(value.recording));

function areSamples(time: unknown, ...others: readonly unknown[]): boolean {
  if (!(time instanceof Float64Array) || time.length < 2 || time[0] !== 0) return false;
  return others.every((list) => list instanceof Float64Array && list.length === time.length);
}

const isTrace = (value: unknown): value is CycleTrace =>
  isObject(value) &&
  typeof value.id === "string" &&
  typeof value.title === "string" &&
  typeof value.source === "string" &&
  areSamples(value.time, value.speed, value.grade) &&
  [value.phases, value.soaks, value.treatment].every(Array.isArray);

function isLog(value: unknown): value is RecordedLog {
  if (!isObject(value) || !(value.time instanceof Float64Array) || !Array.isArray(value.channels))
    return false;
  const { length } = value.time;
  return value.channels.every(
    (channel: unknown) =>
      isObject(channel) && channel.values instanceof Float64Array && channel.values.length === length,
  );
}

function isRecording(value: unknown): boolean {
  if (!isObject(value) || !Array.isArray(value.treatments) || !isObject(value.raw)) return false;
  const { raw, overlay } = value;
  const lists =
    raw.kind === "positions" ? [raw.latitude, raw.longitude, raw.elevation] : [raw.speed, raw.grade];
  return areSamples(raw.time, ...lists) && (overlay === null || isLog(overlay));
}

const isEntry = (value: unknown): value is Entry =>
  isObject(value) && typeof value.order === "number" && isOwn(value);
