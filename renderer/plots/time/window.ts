import type { Stretch } from "../../state/road.ts";

/** Shortest window, s: what is shorter than this is a handful of rows. */
export const LEAST_WINDOW = 2;

/** Share of the window that stays in view when it turns over to the next page. */
const OVERLAP = 0.08;

/**
 * A window within a drive, as long as asked; null when that is all of it.
 * @param duration of the drive, s
 */
function within(from: number, length: number, duration: number): Stretch | null {
  if (length >= duration) return null;
  const start = Math.min(duration - length, Math.max(0, from));
  return { from: start, to: start + length };
}

/** The window closer or wider about a time that keeps its place. @param factor length after over before */
export function zoomed(
  shown: Stretch | null,
  duration: number,
  about: number,
  factor: number,
): Stretch | null {
  const { from, to } = shown ?? { from: 0, to: duration };
  const length = Math.max(Math.min(LEAST_WINDOW, duration), (to - from) * factor);
  const share = to > from ? (about - from) / (to - from) : 0;
  return within(about - share * length, length, duration);
}

/** The window moved by some seconds, as far as the drive goes. */
export function moved(shown: Stretch | null, duration: number, by: number): Stretch | null {
  return shown && within(shown.from + by, shown.to - shown.from, duration);
}

/**
 * The window that has the cursor in it: the same while it does; the next page when the cursor runs out of it at the
 * end; else one about the cursor.
 */
export function followed(shown: Stretch | null, duration: number, cursor: number): Stretch | null {
  if (!shown || (cursor >= shown.from && cursor <= shown.to)) return shown;
  const length = shown.to - shown.from;
  const ranOut = cursor > shown.to && cursor < shown.to + 0.5 * length;
  return within(ranOut ? cursor - OVERLAP * length : cursor - length / 2, length, duration);
}
