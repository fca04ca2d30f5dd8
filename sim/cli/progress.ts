/** Work shorter than this is not announced, ms. */
const QUIET = 1000;
/** Time between two lines where a line cannot be written over, ms. */
const SPARSE = 10_000;

/** The part of a stream that is used. */
export interface Screen {
  readonly isTTY?: boolean;
  write(text: string): boolean;
}

/** A line on stderr that tells how far long work is. */
export interface ProgressLine {
  readonly show: (what: string, share: number) => void;
  /** Takes the line away before something else is printed. */
  readonly clear: () => void;
}

/**
 * Shows nothing in the first second. On a terminal one line is written over and over, elsewhere a line now and then.
 * @param stream where to; stderr, so that stdout stays clean
 */
export function progressLine(stream: Screen = process.stderr, now = () => Date.now()): ProgressLine {
  const began = now();
  let last = Number.NEGATIVE_INFINITY;
  let shown = 0;
  const terminal = stream.isTTY === true;
  return {
    show(what, share) {
      const time = now();
      if (time - began < QUIET || (!terminal && time - last < SPARSE)) return;
      last = time;
      const text = `${what} … ${Math.floor(100 * share)} %`;
      stream.write(terminal ? `\r${text.padEnd(shown)}` : `${text}\n`);
      shown = text.length;
    },
    clear() {
      if (terminal && shown > 0) stream.write(`\r${" ".repeat(shown)}\r`);
      shown = 0;
    },
  };
}
