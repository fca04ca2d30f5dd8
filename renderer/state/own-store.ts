import { createStore, get, set } from "idb-keyval";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { OwnCycle } from "../../shared/own-cycles.ts";
import type { RecordedLog } from "../../shared/recorded.ts";
import { noted, withRecording } from "./recordings.ts";

/**
 * Own cycles on this device. They can be large (a day's recording: some 10 MB), too large for the browser's text store
 * of about 5 million characters, so they lie in its database, as typed arrays.
 */
export interface ObjectStore {
  read(): Promise<unknown>;
  /** Holds the old or the new value, never a mixture. */
  write(value: unknown): Promise<void>;
}

/** What is kept. */
export interface KeptCycles {
  readonly own: readonly CycleTrace[];
  /** the own cycle that Road is set to; null when it is set to one of the catalogue */
  readonly chosen: string | null;
}

const VERSION = 1;

/** The browser's database; made when it is first used. */
export function databaseStore(): ObjectStore {
  const place = () => createStore("trishaft", "own-cycles");
  let store: ReturnType<typeof place> | null = null;
  const open = (): ReturnType<typeof place> => {
    store ??= place();
    return store;
  };
  return {
    read: async () => get("cycles", open()),
    write: async (value) => set("cycles", value, open()),
  };
}

/** Keeps them. False when the store refuses (full, or switched off). */
export async function keepCycles(store: ObjectStore, { own, chosen }: KeptCycles): Promise<boolean> {
  try {
    await store.write({ version: VERSION, chosen, cycles: own.map(withRecording) });
    return true;
  } catch {
    return false;
  }
}

/** What was found, or nothing; `broken` when there was something that cannot be used, or the store cannot be read. */
export async function restoreCycles(store: ObjectStore): Promise<KeptCycles | "nothing" | "broken"> {
  try {
    const found = await store.read();
    if (found === undefined || found === null) return "nothing";
    return isKept(found)
      ? { own: found.cycles.map(noted), chosen: typeof found.chosen === "string" ? found.chosen : null }
      : "broken";
  } catch {
    return "broken";
  }
}

interface Stored {
  readonly chosen: unknown;
  readonly cycles: readonly OwnCycle[];
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const isKept = (value: unknown): value is Stored =>
  isObject(value) && value.version === VERSION && Array.isArray(value.cycles) && value.cycles.every(isOwn);

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
