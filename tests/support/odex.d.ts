// What we use of odex: its package points at sources that our strict settings refuse.

/** Gragg–Bulirsch–Stoer extrapolation for non-stiff systems. */
export class Solver {
  constructor(equations: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(
    rates: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
  ): { y: number[]; outcome: number };
}
