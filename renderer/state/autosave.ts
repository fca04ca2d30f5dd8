import type { BenchState } from "./bench.ts";
import { readBench } from "./saved-bench.ts";

/** What keeps texts by name: the browser's local storage, or a stand-in for it. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

export const AUTOSAVE_KEY = "trishaft.bench";

/** Version of what is kept; others are ignored with a note. */
export const AUTOSAVE_VERSION = 1;

/** What was found: nothing, a bench, or something that is ignored for a reason. */
export type Restored =
  | { readonly kind: "nothing" }
  | { readonly kind: "bench"; readonly bench: BenchState }
  | { readonly kind: "ignored"; readonly reason: string };

/** Keeps the bench. False when the store refuses (full, or switched off). */
export function keepBench(store: TextStore, bench: BenchState): boolean {
  try {
    store.setItem(AUTOSAVE_KEY, JSON.stringify({ version: AUTOSAVE_VERSION, bench }));
    return true;
  } catch {
    return false;
  }
}

function readText(store: TextStore): string | null {
  try {
    return store.getItem(AUTOSAVE_KEY);
  } catch {
    return null;
  }
}

/** Reads the kept bench back. Broken or foreign content never stops the app. */
export function restoreBench(store: TextStore): Restored {
  const text = readText(store);
  if (text === null) return { kind: "nothing" };
  let kept: unknown;
  try {
    kept = JSON.parse(text);
  } catch {
    return { kind: "ignored", reason: "not readable" };
  }
  const version = typeof kept === "object" && kept !== null && "version" in kept ? kept.version : undefined;
  if (version !== AUTOSAVE_VERSION) return { kind: "ignored", reason: `version ${String(version)}` };
  const read = readBench((kept as { bench?: unknown }).bench);
  return read.ok ? { kind: "bench", bench: read.bench } : { kind: "ignored", reason: read.reason };
}
