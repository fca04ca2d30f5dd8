/** What a file is taken for. A table is a cycle or an engine map, as its columns tell. */
export type FileKind = "project" | "vehicle" | "cycle" | "table" | "lesson" | "strategy";

const ENDINGS: readonly (readonly [RegExp, FileKind])[] = [
  [/\.trishaft\.json$/i, "project"],
  [/\.cycle\.json$/i, "cycle"],
  [/\.gpx$/i, "cycle"],
  [/\.(csv|tsv|txt)$/i, "table"],
  [/\.(md|markdown)$/i, "lesson"],
  [/\.m?js$/i, "strategy"],
  [/\.vehicle\.json$/i, "vehicle"],
];

/**
 * What a file is, by its name; a JSON file of another name by what it begins with.
 * @returns null for what none of our places reads
 */
export function fileKind(name: string, text: string): FileKind | null {
  const known = ENDINGS.find(([ending]) => ending.test(name))?.[1];
  if (known) return known;
  if (!/\.json$/i.test(name)) return null;
  return /^\s*\{\s*"schemaVersion"/.test(text) ? "project" : "vehicle";
}
