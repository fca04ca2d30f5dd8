import { at } from "../../shared/at.ts";

/** Edits (insert, delete, replace, letter case free) that turn one word into the other: Levenshtein's distance. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(at(row, j) + 1, at(next, j - 1) + 1, at(row, j - 1) + same));
    }
    row = next;
  }
  return at(row, b.length);
}

/** Longest part of a word that is looked at: names are short, what people paste need not be. */
const MOST_LETTERS = 80;

/**
 * The known word most like the one given.
 * @returns undefined when nothing is known
 */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const wanted = word.slice(0, MOST_LETTERS).toLowerCase();
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const distance = edits(wanted, candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}
