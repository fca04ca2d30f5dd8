import { resolve } from "node:path";

/**
 * The project file among the words a program was started with.
 * @param words behind the program's own name and, while developing, its folder
 * @param folder the starter's working folder
 * @returns full path of the last word that names a project file; null when there is none
 */
export function projectFileIn(words: readonly string[], folder: string): string | null {
  const named = words.filter((word) => !word.startsWith("-") && word.toLowerCase().endsWith(".json"));
  const last = named.at(-1);
  return last === undefined ? null : resolve(folder, last);
}
