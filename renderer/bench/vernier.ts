/** One ruled mark of the strip: place in px from its left, height class, number if it bears one. */
export interface VernierMark {
  readonly x: number;
  readonly kind: "fine" | "half" | "full";
  readonly value: number;
  readonly labelled: boolean;
}

export interface VernierLayout {
  readonly marks: readonly VernierMark[];
  /** px up to which, and from which on, the strip is beyond a limit; null where that is out of sight */
  readonly below: number | null;
  readonly above: number | null;
}

interface VernierInput {
  readonly width: number;
  readonly text: number;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** value a px, and of a fine mark */
  readonly perPixel: number;
  readonly fine: number;
}

/** A ruled strip under a fixed index in its middle. All in the unit shown. */
export function vernierLayout({
  width,
  text,
  value,
  least,
  most,
  perPixel,
  fine,
}: VernierInput): VernierLayout {
  const middle = width / 2;
  const at = (n: number): number => middle + (n - value) / perPixel;
  const from = Math.max(least, value - middle * perPixel);
  const to = Math.min(most, value + middle * perPixel);
  const [low, high] = [at(least), at(most)];
  const marks: VernierMark[] = [];
  for (let n = Math.ceil(from / fine - 1e-9); n * fine <= to + 1e-9; n += 1) {
    const x = at(n * fine);
    const full = n % 10 === 0;
    const clear =
      Math.abs(x - middle) > text * 1.7 &&
      x > text * 1.6 &&
      x < width - text * 1.6 &&
      x - low > text * 1.6 &&
      high - x > text * 1.6;
    marks.push({
      x,
      kind: full ? "full" : n % 5 === 0 ? "half" : "fine",
      value: n * fine,
      labelled: full && clear,
    });
  }
  return {
    marks,
    below: low > 0 ? Math.min(low, width) : null,
    above: high < width ? Math.max(0, high) : null,
  };
}
