/** Most sheets of one handout: a large lecture. */
export const MOST_SHEETS = 500;

/** Largest seed. */
export const LARGEST_SEED = 4_294_967_295;

/** A seed as it is typed; null for what is none. */
export function readSeed(text: string): number | null {
  const plain = text.trim();
  const seed = /^\d{1,10}$/.test(plain) ? Number(plain) : Number.NaN;
  return seed <= LARGEST_SEED ? seed : null;
}

/** A number of sheets as it is typed; null for what is none. */
export function readCount(text: string): number | null {
  const plain = text.trim();
  const count = /^\d{1,4}$/.test(plain) ? Number(plain) : Number.NaN;
  return count >= 1 && count <= MOST_SHEETS ? count : null;
}

/** Names, one a line; empty lines do not count. The command line reads its file of names the same way. */
export const readNames = (text: string): readonly string[] =>
  text
    .split(/\r?\n|\r/)
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** For whom a handout is made. */
export type Whom = "one" | "count" | "names";

/**
 * The students of a handout.
 * @param named gives the name of the n-th unnamed one, from 1
 * @returns null when the number of sheets is none
 */
export function studentsOf(
  whom: Whom,
  count: string,
  names: string,
  named: (n: number) => string,
): readonly string[] | null {
  if (whom === "one") return [];
  if (whom === "names") return readNames(names);
  const sheets = readCount(count);
  return sheets === null ? null : Array.from({ length: sheets }, (_, i) => named(i + 1));
}
