/** A line of a text that is marked, from 1, with what is to be said of it. */
export interface LineMark {
  readonly line: number;
  readonly text: string;
}

/** Lines of a text: at least one. */
export const lineCount = (text: string): number => {
  let count = 1;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count += 1;
  return count;
};

/**
 * Where a line begins and ends, as places in the text without the line feed.
 * @param line from 1; one beyond the text is its last
 */
export function lineSpan(text: string, line: number): { readonly start: number; readonly end: number } {
  let start = 0;
  for (let left = Math.max(1, line) - 1; left > 0; left -= 1) {
    const next = text.indexOf("\n", start);
    if (next < 0) break;
    start = next + 1;
  }
  const end = text.indexOf("\n", start);
  return { start, end: end < 0 ? text.length : end };
}

/** The line in which a place of the text stands, from 1. */
export const lineAt = (text: string, place: number): number => lineCount(text.slice(0, Math.max(0, place)));

/** Marks by their line, several of one line joined; lines beyond the text on its last. */
export function marksByLine(marks: readonly LineMark[], lines: number): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  for (const { line, text } of marks) {
    const at = Math.min(lines, Math.max(1, line));
    const before = found.get(at);
    found.set(at, before === undefined ? text : `${before} ${text}`);
  }
  return found;
}
