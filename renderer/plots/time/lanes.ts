import { at } from "../../../shared/at.ts";
import { REGIMES, type RegimeFamily } from "../../../sim/run/regimes.ts";

/** The lanes from top to bottom. */
export const LANES: readonly RegimeFamily[] = ["engine", "electric", "braking", "rest"];

const LANE_OF = REGIMES.map(({ family }) => LANES.indexOf(family));

/** Stretches of a drive with one regime each: first row and regime; the next one's first row ends it. */
export interface Spells {
  readonly rows: number;
  readonly starts: readonly number[];
  readonly regimes: readonly number[];
}

/** Finds the spells of a drive. @param regime indices into REGIMES; may be longer than there are rows */
export function spellsOf(regime: Uint8Array, rows: number): Spells {
  const starts: number[] = [];
  const regimes: number[] = [];
  let last = -1;
  for (let row = 0; row < rows; row += 1) {
    const now = at(regime, row);
    if (now === last) continue;
    starts.push(row);
    regimes.push(now);
    last = now;
  }
  return { rows, starts, regimes };
}

/** A piece of a lane to be drawn: columns of pixels from … to. */
export interface LaneMark {
  readonly lane: number;
  readonly regime: number;
  readonly from: number;
  readonly to: number;
}

/** The spell that a row lies in. */
export function spellAt({ starts }: Spells, row: number): number {
  let [low, high] = [0, starts.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (at(starts, middle) <= row) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Rows that spells too short to be drawn took in one column of one lane, by regime. */
class Crowd {
  private column = -1;
  private readonly rows = new Map<number, number>();

  constructor(
    private readonly lane: number,
    private readonly marks: LaneMark[],
  ) {}

  add(column: number, regime: number, rows: number): void {
    if (column !== this.column) this.flush();
    this.column = column;
    this.rows.set(regime, (this.rows.get(regime) ?? 0) + rows);
  }

  /** One mark, a column wide, for the regime that took the longest. */
  flush(): void {
    let [longest, most] = [-1, 0];
    for (const [regime, rows] of this.rows) if (rows > most) [longest, most] = [regime, rows];
    this.rows.clear();
    if (longest < 0) return;
    const { lane, column } = this;
    this.marks.push({ lane, regime: longest, from: column, to: column + 1 });
  }
}

/**
 * What to draw of the spells in a window. Spells shorter than a column of pixels share it: the one that lasts longest
 * there is drawn, so that none of a lane's columns with anything in it stays empty, and there are never more marks
 * than columns.
 * @param first, last rows at the window's edges; need not be whole
 * @param columns columns of pixels
 */
export function laneMarks(spells: Spells, first: number, last: number, columns: number): readonly LaneMark[] {
  const marks: LaneMark[] = [];
  const crowds = LANES.map((_, lane) => new Crowd(lane, marks));
  const scale = columns / Math.max(1e-9, last - first);
  const place = (row: number): number => Math.min(columns, Math.max(0, (row - first) * scale));
  const { starts, regimes, rows } = spells;
  if (starts.length === 0) return marks;
  for (let i = spellAt(spells, Math.max(0, first)); i < starts.length && at(starts, i) <= last; i += 1) {
    const begin = at(starts, i);
    const end = starts[i + 1] ?? rows;
    const [from, to] = [place(begin), place(end)];
    const regime = at(regimes, i);
    const lane = LANE_OF[regime] ?? 0;
    const crowd = crowds[lane];
    if (to - from >= 1) {
      crowd?.flush();
      marks.push({ lane, regime, from, to });
    } else crowd?.add(Math.min(columns - 1, Math.floor((from + to) / 2)), regime, end - begin);
  }
  for (const crowd of crowds) crowd.flush();
  return marks;
}
