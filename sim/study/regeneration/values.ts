/** Evenly spaced numbers, both ends included. @param count ≥ 2 */
export const evenNumbers = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) =>
    i === count - 1 ? to : Number((from + ((to - from) * i) / (count - 1)).toPrecision(12)),
  );
