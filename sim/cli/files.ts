import { closeSync, constants, fstatSync, openSync, readSync } from "node:fs";
import { MAX_GPX_LENGTH } from "../../cycles/import/gpx/limits.ts";
import { InputError } from "../../shared/errors.ts";
import { firstJsonFault } from "./json-place.ts";
import { fileFault } from "./system-faults.ts";

/** Largest file that is read, bytes. */
const MOST_BYTES = 200_000_000;

const PIECE = 1 << 20;

/** True when a text given where an id, a manoeuvre or a file may stand can only mean a file. */
export const looksLikeFile = (text: string): boolean =>
  /[\\/]|\.[a-z0-9]{1,8}$/i.test(text) && !/^[a-z-]+:.*=/i.test(text);

/**
 * Reads a text file.
 * @param where the option that named it, for messages
 * @param most bytes; a larger file is refused before it is read
 * @throws InputError for a missing file, a folder, a file that is too large or no text
 */
export function readText(where: string, path: string, most = MOST_BYTES): string {
  const refuse = (what: string, accepted: string): never => {
    throw new InputError({ what, where, value: path, accepted });
  };
  const accepted = `at most ${most / 1e6} MB`;
  const bytes = readBytes(where, path, most, () => refuse("the file is too large", accepted));
  if (bytes.includes(0)) refuse("this is a binary file", "a text file in UTF-8");
  const text = bytes.toString("utf8");
  return text.startsWith("\uFEFF") ? text.slice(1) : text;
}

/**
 * Reads a recorded drive; a GPX file by its name may be as large as the import takes, so that a wrong one of any size is
 * refused without being read.
 * @throws InputError as `readText`
 */
export const readDriveFile = (where: string, path: string): string =>
  /\.gpx$/i.test(path) ? readText(where, path, MAX_GPX_LENGTH) : readText(where, path);

/** Reads to the end, whatever kind of file it is, but never beyond the limit. */
function readBytes(where: string, path: string, most: number, tooLarge: () => never): Buffer {
  let file: number | undefined;
  try {
    file = openSync(path, constants.O_RDONLY);
    const stat = fstatSync(file);
    if (stat.isDirectory()) throw Object.assign(new Error("a folder"), { code: "EISDIR" });
    if (stat.size > most) tooLarge();
    const pieces: Buffer[] = [];
    for (let total = 0; ; ) {
      const piece = Buffer.allocUnsafe(PIECE);
      const count = readSync(file, piece);
      if (count === 0) return Buffer.concat(pieces);
      pieces.push(piece.subarray(0, count));
      total += count;
      if (total > most) tooLarge();
    }
  } catch (error) {
    throw error instanceof InputError ? error : new InputError(fileFault(error, where, path, "read"));
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/**
 * Reads a JSON file.
 * @throws InputError as `readText`, and with line and column for text that is no JSON
 */
export function readJson(where: string, path: string): unknown {
  const text = readText(where, path);
  try {
    return JSON.parse(text);
  } catch {
    const { line, column, found } = firstJsonFault(text);
    throw new InputError({
      what: "this is not JSON",
      where: `${path}, line ${line}, column ${column}`,
      value: found,
      accepted: "JSON: names and texts in double quotes, commas between entries and none after the last",
    });
  }
}
