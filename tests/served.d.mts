import type { Browser } from "playwright-core";

/** Where the app is served, and how to end that. */
export interface Served {
  readonly address: string;
  readonly stop: () => void;
}

/** Builds what is stale and serves it. */
export function serve(): Promise<Served>;
/** The installed browser without a window. `flags`: further ones of its own. */
export function openBrowser(flags?: readonly string[]): Promise<Browser>;
