import type { Working, WorkToken } from "./working.ts";

/** A piece of a hint: as in the working, or a number left blank. */
export type HintToken = WorkToken | { readonly kind: "blank"; readonly next: boolean };

/** The working as far as it is shown. */
export interface Hint {
  /** the lines, each to be put behind the symbol and an equals sign */
  readonly symbol: WorkToken;
  readonly lines: readonly (readonly HintToken[])[];
  readonly note: string;
  /** pushes made, and pushes until everything is shown */
  readonly level: number;
  readonly last: number;
}

/** Pushes until a working is shown whole: its formula, each of its numbers but the last, its last, its result. */
export const hintLevels = (working: Working): number =>
  2 + working.live.filter(({ kind }) => kind === "number").length;

/**
 * A hint built from the working: the first push shows the formula, with the live numbers still blank; each further one
 * fills the next blank; the last shows the result.
 * @param level pushes so far, from 1; more than there is to show is the whole working
 */
export function hintOf(working: Working, level: number): Hint {
  const last = hintLevels(working);
  const now = Math.max(1, Math.min(last, Math.floor(level)));
  let filled = now - 1;
  let blanks = 0;
  const live = working.live.map((token): HintToken => {
    if (token.kind !== "number") return token;
    if (filled > 0) {
      filled -= 1;
      return token;
    }
    blanks += 1;
    return { kind: "blank", next: blanks === 1 };
  });
  const result: HintToken[] = now === last ? [working.result] : [{ kind: "blank", next: blanks === 0 }];
  const lines = blanks > 0 ? [working.formula, live] : [working.formula, live, result];
  return { symbol: working.symbol, lines, note: working.note, level: now, last };
}
