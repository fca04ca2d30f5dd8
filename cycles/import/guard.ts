import { MAX_SAMPLES } from "../limits.ts";
import type { FaultList } from "./faults.ts";

const TAB = 9;
const LINE_FEED = 10;
const FORM_FEED = 12;
const CARRIAGE_RETURN = 13;
const BLANK = 32;
const HASH = 35;

/**
 * Looks a file's text over before anything is built from it: not empty, not binary, not too long. One pass without
 * allocation, left at the first line too many, so that a file of any length is refused at once.
 * @param text without byte-order mark
 * @throws InputError when the file cannot be a table
 */
export function guardText(text: string, faults: FaultList): void {
  let lines = 0;
  let row = 1;
  let lineIsOpen = true;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === LINE_FEED || code === CARRIAGE_RETURN) {
      if (code === LINE_FEED || text.charCodeAt(i + 1) !== LINE_FEED) row += 1;
      lineIsOpen = true;
    } else if (code < BLANK && code !== TAB && code !== FORM_FEED) {
      refuseBinary(code, row, faults);
    } else if (lineIsOpen && code > BLANK) {
      lineIsOpen = false;
      if (code !== HASH) lines += 1;
      // One line more than the rows: the header.
      if (lines > MAX_SAMPLES + 1) refuseLength(row, faults);
    }
  }
  if (lines === 0) {
    faults.stop("The file is empty.", {}, "", "a header row and at least two rows of time and speed");
  }
}

function refuseBinary(code: number, row: number, faults: FaultList): never {
  const shown = `character code ${code}`;
  faults.stop("This is not a text file.", { row }, shown, "comma-separated text in UTF-8");
}

function refuseLength(row: number, faults: FaultList): never {
  const limit = MAX_SAMPLES.toLocaleString("en");
  faults.stop(`The file has more than ${limit} rows.`, { row }, "", `at most ${limit} rows of data`);
}
