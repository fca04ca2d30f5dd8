import type { FaultList } from "../faults.ts";
import { MAX_GPX_LENGTH, MAX_GPX_POINTS } from "./limits.ts";

/** So much of a file is looked at to see what it is; a GPX file names itself in its first lines. */
const HEAD = 65_536;

const ROOT = /^\s*(?:<\?[^>]*\?>\s*|<!--(?:[^-]|-(?!->))*-->\s*)*<((?:[A-Za-z_][\w.-]*:)?)gpx[\s/>]/;

/** True when a text names itself a GPX file. Looks at its first lines only. @param text with or without byte-order mark */
export function looksLikeGpx(text: string): boolean {
  return ROOT.test(unmarked(text.slice(0, HEAD)));
}

/**
 * Refuses what cannot be a track before anything is built from it: wrong kinds of file by their first lines, files that
 * are too long by their length, so that a wrong file of any size is refused at once.
 * @param text without byte-order mark
 * @returns the prefix of the file's own elements: "" or such as "gpx:"
 * @throws InputError
 */
export function guardGpx(text: string, faults: FaultList): string {
  const head = text.slice(0, HEAD);
  if (head.trim() === "") faults.stop("The file is empty.", {}, "", TRACK);
  const code = firstControl(head);
  if (code !== null) faults.stop("This is not a text file.", {}, `character code ${code}`, TRACK);
  const prefix = ROOT.exec(head)?.[1];
  if (prefix === undefined) {
    const found = head.trim().split(/[\r\n]/, 1)[0] ?? "";
    faults.stop("The file does not start as a GPX file does.", { row: 1 }, found, "a gpx element");
  }
  if (text.length > MAX_GPX_LENGTH) {
    const found = `${Math.round(text.length / 1e6)} million characters`;
    faults.stop("The file is too long.", {}, found, `up to ${MAX_GPX_LENGTH / 1e6} million characters`);
  }
  // Entities of a document's own could blow a small file up; no receiver writes them.
  if (text.includes("<!DOCTYPE") || text.includes("<!ENTITY")) {
    faults.stop("The file defines a document type of its own.", {}, "<!DOCTYPE", "GPX without one");
  }
  const points = countUpTo(text, `<${prefix}trkpt`, MAX_GPX_POINTS + 1);
  if (points > MAX_GPX_POINTS) {
    const limit = MAX_GPX_POINTS.toLocaleString("en");
    faults.stop(`The file has more than ${limit} track points.`, {}, "", `up to ${limit} track points`);
  }
  return prefix ?? "";
}

/** The text without a byte-order mark. */
export const unmarked = (text: string): string => (text.startsWith("\uFEFF") ? text.slice(1) : text);

const TRACK = "a GPX file with a recorded track";

function firstControl(text: string): number | null {
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13) return code;
  }
  return null;
}

function countUpTo(text: string, word: string, most: number): number {
  let count = 0;
  for (let i = text.indexOf(word); i >= 0 && count < most; i = text.indexOf(word, i + word.length))
    count += 1;
  return count;
}
