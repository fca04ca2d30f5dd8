/** So many are remembered. */
export const MOST_RECENT = 10;

/**
 * Puts a file at the head of the list.
 * @param list full paths, newest first
 * @param sameName whether two paths mean one file where capitals do not count
 */
export const remember = (
  list: readonly string[],
  path: string,
  sameName: (a: string, b: string) => boolean = (a, b) => a === b,
): string[] => [path, ...list.filter((other) => !sameName(other, path))].slice(0, MOST_RECENT);

/** Takes a file off the list. */
export const forget = (list: readonly string[], path: string): string[] =>
  list.filter((other) => other !== path);

/** Whether two paths mean one file on this system. */
export const sameNameOn = (platform: NodeJS.Platform): ((a: string, b: string) => boolean) =>
  platform === "linux" ? (a, b) => a === b : (a, b) => a.toLowerCase() === b.toLowerCase();
