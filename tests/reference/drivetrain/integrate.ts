import { Solver } from "odex";
import { at } from "../../../shared/at.ts";

/** Rates of change at a time, s. */
export type Rates = (time: number, state: number[]) => number[];

/**
 * States at rising times, from a general-purpose integrator (odex: Gragg–Bulirsch–Stoer extrapolation after Hairer,
 * Nørsett and Wanner), each stretch to a relative and absolute tolerance of 1e-11.
 */
export function integrate(rates: Rates, start: readonly number[], times: readonly number[]): number[][] {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-11;
  let from = 0;
  let state = [...start];
  return times.map((time) => {
    const { y, outcome } = solver.solve(rates, from, state, time);
    if (outcome !== 0) throw new Error(`the integrator gave up before ${time} s (outcome ${outcome})`);
    from = time;
    state = y;
    return state;
  });
}

/** The state at one time. */
export const integrateTo = (rates: Rates, start: readonly number[], time: number): number[] =>
  at(integrate(rates, start, [time]), 0);
