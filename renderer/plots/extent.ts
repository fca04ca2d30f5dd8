/** Least and most of a stretch of numbers. */
export interface Extent {
  readonly least: number;
  readonly most: number;
}

/** Extent of several curves over rows. Zero is always inside; nothing has no height. */
export function extentOf(curves: readonly ArrayLike<number>[], from: number, to: number): Extent {
  let least = 0;
  let most = 0;
  for (const values of curves) {
    for (let i = from; i <= to; i += 1) {
      const value = values[i] ?? 0;
      if (value < least) least = value;
      if (value > most) most = value;
    }
  }
  return most > least ? { least, most } : { least: 0, most: 1 };
}

/** Extent of curves that do not start from zero, such as a charge: the rows' own, with a little room. */
export function ownExtent(curves: readonly ArrayLike<number>[], from: number, to: number): Extent {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const values of curves) {
    for (let i = from; i <= to; i += 1) {
      const value = values[i] ?? 0;
      if (value < least) least = value;
      if (value > most) most = value;
    }
  }
  const room = Math.max(1e-9, (most - least) * 0.08);
  return { least: least - room, most: most + room };
}
