/** Bounded undo and redo. A gesture (a drag, a run of key presses) leaves one step however many edits it makes. */
export interface History<T> {
  readonly past: readonly T[];
  readonly future: readonly T[];
  /** the gesture that made the last step; null when the next edit makes a new one */
  readonly gesture: string | null;
}

/** Steps kept: more than anybody makes in a lesson. A step holds what it changed; the rest is shared. */
export const HISTORY_LENGTH = 10_000;

export const emptyHistory = <T>(): History<T> => ({ past: [], future: [], gesture: null });

/** Notes the state before an edit. @param gesture same name as the last edit's: no new step */
export function recorded<T>(history: History<T>, before: T, gesture: string | null): History<T> {
  if (gesture !== null && gesture === history.gesture) return { ...history, future: [] };
  return { past: [...history.past, before].slice(-HISTORY_LENGTH), future: [], gesture };
}

/** Ends a gesture: the next edit makes a new step. */
export const closed = <T>(history: History<T>): History<T> =>
  history.gesture === null ? history : { ...history, gesture: null };

/** One step back, or null when there is none. @param now the state to come back to by redo */
export function undone<T>(history: History<T>, now: T): { history: History<T>; state: T } | null {
  const state = history.past.at(-1);
  if (state === undefined) return null;
  const past = history.past.slice(0, -1);
  return { history: { past, future: [...history.future, now], gesture: null }, state };
}

/** One step forward again, or null when there is none. */
export function redone<T>(history: History<T>, now: T): { history: History<T>; state: T } | null {
  const state = history.future.at(-1);
  if (state === undefined) return null;
  const future = history.future.slice(0, -1);
  return { history: { past: [...history.past, now], future, gesture: null }, state };
}
