import { realAt } from "../../../shared/at.ts";
import { mostIn, mostOut, openAt, type Source } from "./battery.ts";
import type { Problem, Window } from "./problem.ts";

/**
 * Backward dynamic programming over charge × engine on/off (Bellman).
 *
 * The infeasible edge: in each stage and for each engine state the grid begins exactly at the least charge from which
 * the end can still be reached (found by bisection, so that the best charging action lands on the next stage's edge),
 * and every value between two grid points is interpolated between feasible ones. There is no penalty that could leak.
 * (After the boundary-line idea of Sundström, Ambühl and Guzzella, Oil & Gas Science and Technology 65(1), 2010; from
 * memory.) Where a value is infinite nonetheless, no figure made from it is finite, and it is never chosen. Too much
 * charge is no such edge: braking can leave it to the friction brakes, so that the value below is held.
 */
export interface Values {
  readonly problem: Problem;
  /** grid intervals of charge */
  readonly steps: number;
  /** least charge of the grid a stage (stages + 1), engine on and off; infinite when the end cannot be reached */
  readonly lowOn: Float64Array;
  readonly lowOff: Float64Array;
  /** greatest charge of the grid a stage */
  readonly high: number;
  /** least fuel to the end, J: (stages + 1) × (steps + 1), engine on and off at the stage's start */
  readonly on: Float64Array;
  readonly off: Float64Array;
  /** least fuel with the engine running through this stage, same grid as `on` */
  readonly running: Float64Array;
  /** charge that a start takes */
  readonly startCharge: number;
}

/** Share of a grid interval within which a landing just below the edge counts as on it. */
const EDGE = 1e-6;

/** Rounds of halving that find an edge. */
const HALVINGS = 44;

/** Seen by long work. */
export interface Watch {
  readonly report?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

/** Stages between two looks at the watch. */
const WATCH_EVERY = 64;

/** Solver of one problem on one grid. */
class Solver {
  readonly lowOn: Float64Array;
  readonly lowOff: Float64Array;
  readonly on: Float64Array;
  readonly off: Float64Array;
  readonly running: Float64Array;
  readonly startCharge: number;
  private readonly width: number;
  private readonly source: Source;

  constructor(
    private readonly problem: Problem,
    private readonly steps: number,
    private readonly window: Window,
  ) {
    const { stages, source } = problem;
    this.source = source;
    this.width = steps + 1;
    this.lowOn = new Float64Array(stages + 1).fill(Number.POSITIVE_INFINITY);
    this.lowOff = new Float64Array(stages + 1).fill(Number.POSITIVE_INFINITY);
    this.on = new Float64Array((stages + 1) * this.width).fill(Number.POSITIVE_INFINITY);
    this.off = new Float64Array((stages + 1) * this.width).fill(Number.POSITIVE_INFINITY);
    this.running = new Float64Array((stages + 1) * this.width).fill(Number.POSITIVE_INFINITY);
    const open = openAt(source, problem.startSoc);
    this.startCharge = problem.startEnergy / (open * source.charge);
    const end = Math.max(problem.endSoc, window.low);
    if (end < window.high) {
      this.lowOn[stages] = end;
      this.lowOff[stages] = end;
      this.on.fill(0, stages * this.width);
      this.off.fill(0, stages * this.width);
    }
  }

  /** Charge after a stage with a terminal power, from a charge. */
  private after(soc: number, open: number, power: number): number {
    const { source } = this;
    const r = power >= 0 ? source.resistanceDischarge : source.resistanceCharge;
    const square = open * open - 4 * r * power;
    if (square < 0) return Number.NaN;
    return soc - (2 * power * this.problem.stage) / ((open + Math.sqrt(square)) * source.charge);
  }

  /** Charge after a stage with the engine at rest; not a number where that cannot be. */
  private afterRest(k: number, soc: number): number {
    const { source, problem } = this;
    const open = openAt(source, soc);
    let power = realAt(problem.restPower, k);
    const out = mostOut(source, soc, open);
    if (power > out) {
      if (power > out + realAt(problem.overdraw, k)) return Number.NaN;
      power = out;
    }
    const most = mostIn(source, soc, open);
    if (power < -most) {
      if (power + realAt(problem.shed, k) < -most) return Number.NaN;
      power = -most;
    }
    return this.after(soc, open, power);
  }

  /** Greatest charge after a stage with the engine running; not a number where that cannot be. */
  private afterRunning(k: number, soc: number): number {
    const { source, problem } = this;
    const open = openAt(source, soc);
    const out = mostOut(source, soc, open);
    const into = mostIn(source, soc, open);
    const first = problem.first[k] ?? 0;
    const count = problem.count[k] ?? 0;
    const shed = realAt(problem.shed, k);
    for (let j = first; j < first + count; j += 1) {
      const power = realAt(problem.power, j);
      if (power > out)
        return power <= out + realAt(problem.overdraw, k) ? this.after(soc, open, out) : Number.NaN;
      if (power >= -into) return this.after(soc, open, power);
      if (power + shed >= -into) return this.after(soc, open, -into);
    }
    return Number.NaN;
  }

  /** Least charge from which a stage lands at or above an edge; infinite when none does. */
  private edge(k: number, running: boolean, next: number): number {
    const lands = (soc: number): boolean =>
      (running ? this.afterRunning(k, soc) : this.afterRest(k, soc)) >= next;
    let low = this.window.low;
    let high = this.window.high;
    if (lands(low)) return low;
    // Near the ceiling charging is not allowed, so that the search begins where the landing is.
    if (!lands(high)) {
      high = Math.min(high, next + (high - low) / this.steps);
      if (!lands(high)) return Number.POSITIVE_INFINITY;
    }
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = 0.5 * (low + high);
      if (lands(middle)) high = middle;
      else low = middle;
    }
    return high;
  }

  solve(watch: Watch): boolean {
    const { stages } = this.problem;
    for (let k = stages - 1; k >= 0; k -= 1) {
      if (k % WATCH_EVERY === 0) {
        watch.report?.(1 - k / stages);
        if (watch.cancelled?.()) return false;
      }
      this.stage(k);
    }
    return true;
  }

  private stage(k: number): void {
    const nextOn = realAt(this.lowOn, k + 1);
    const nextOff = realAt(this.lowOff, k + 1);
    const edgeRunning =
      (this.problem.count[k] ?? 0) > 0 ? this.edge(k, true, nextOn) : Number.POSITIVE_INFINITY;
    const restPower = realAt(this.problem.restPower, k);
    const edgeRest = Number.isNaN(restPower) ? Number.POSITIVE_INFINITY : this.edge(k, false, nextOff);
    const lowOn = Math.min(edgeRunning, edgeRest);
    const lowOff = Math.min(edgeRest, edgeRunning + this.startCharge);
    this.lowOn[k] = lowOn;
    this.lowOff[k] = lowOff;
    if (lowOn < this.window.high) this.fillOn(k, lowOn);
    if (lowOff < this.window.high) this.fillOff(k, lowOff);
  }

  /** Values with the engine on at the stage's start: it runs on, or stops, which costs nothing. */
  private fillOn(k: number, low: number): void {
    const { steps, window, width } = this;
    const step = (window.high - low) / steps;
    this.fillRunning(k, low);
    for (let i = 0; i <= steps; i += 1) {
      const place = k * width + i;
      const rest = this.restValue(k, low + i * step);
      const running = realAt(this.running, place);
      this.on[place] = Math.min(rest, running);
    }
  }

  /** Values with the engine off at the stage's start: it stays off, or starts. */
  private fillOff(k: number, low: number): void {
    const { steps, window, width, problem, startCharge } = this;
    const step = (window.high - low) / steps;
    const lowOn = realAt(this.lowOn, k);
    const perStep = steps / (window.high - lowOn);
    for (let i = 0; i <= steps; i += 1) {
      const soc = low + i * step;
      const start =
        problem.startFuel + read(this.running, k * width, steps, (soc - startCharge - lowOn) * perStep);
      let best = this.restValue(k, soc);
      // Not a number where a start is impossible, and then never less.
      if (start < best) best = start;
      this.off[k * width + i] = best;
    }
  }

  /** Least fuel to the end when the engine rests through the stage; infinite when it cannot. */
  private restValue(k: number, soc: number): number {
    const next = realAt(this.lowOff, k + 1);
    const place = ((this.afterRest(k, soc) - next) * this.steps) / (this.window.high - next);
    const value = read(this.off, (k + 1) * this.width, this.steps, place);
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
  }

  /** The innermost loops: every point of the stage from every charge of the grid. */
  private fillRunning(k: number, low: number): void {
    const { problem, source, steps, width, window, running, on } = this;
    const { power, fuel } = problem;
    const first = problem.first[k] ?? 0;
    const last = first + (problem.count[k] ?? 0);
    const shed = realAt(problem.shed, k);
    const overdraw = realAt(problem.overdraw, k);
    const h = problem.stage;
    const step = (window.high - low) / steps;
    const next = realAt(this.lowOn, k + 1);
    const perStep = steps / (window.high - next);
    const base = (k + 1) * width;
    const perCharge = (2 * h) / source.charge;
    const discharge = 4 * source.resistanceDischarge;
    const charge = 4 * source.resistanceCharge;
    let j = first;
    for (let i = 0; i <= steps; i += 1) {
      const soc = low + i * step;
      const open = openAt(source, soc);
      const square = open * open;
      const into = -mostIn(source, soc, open);
      const out = mostOut(source, soc, open);
      let best = Number.POSITIVE_INFINITY;
      // The first point that the battery can take: the grid moves little, so it is near the last one's.
      while (j > first && realAt(power, j - 1) >= into) j -= 1;
      while (j < last && realAt(power, j) < into) j += 1;
      if (j > first && realAt(power, j - 1) + shed >= into) {
        const place =
          (soc - (perCharge * into) / (open + Math.sqrt(square - charge * into)) - next) * perStep;
        best = h * realAt(fuel, j - 1) + read(on, base, steps, place);
        if (Number.isNaN(best)) best = Number.POSITIVE_INFINITY;
      }
      for (let a = j; a < last; a += 1) {
        let p = realAt(power, a);
        if (p > out) {
          if (p > out + overdraw) break;
          p = out;
        }
        const root = Math.sqrt(square - (p >= 0 ? discharge : charge) * p);
        let place = (soc - (perCharge * p) / (open + root) - next) * perStep;
        if (!(place >= 0)) {
          if (!(place >= -EDGE)) {
            if (a > j) {
              const cost = edgeCost(problem, source, a, soc, open, next);
              if (cost + realAt(on, base) < best) best = cost + realAt(on, base);
            }
            break;
          }
          place = 0;
        }
        let cell = Math.floor(place);
        if (cell >= steps) {
          cell = steps - 1;
          place = steps;
        }
        const left = realAt(on, base + cell);
        const right = realAt(on, base + cell + 1);
        const value = right === Number.POSITIVE_INFINITY ? left : left + (right - left) * (place - cell);
        const cost = h * realAt(fuel, a) + value;
        if (cost < best) best = cost;
      }
      running[k * width + i] = best;
    }
  }
}

/**
 * Fuel, J, of the stage with the mixture of two neighbouring points that lands exactly on the edge.
 * @param a the first point that lands below it
 */
export function edgeCost(
  problem: Problem,
  source: Source,
  a: number,
  soc: number,
  open: number,
  edge: number,
): number {
  const share = edgeShare(problem, source, a, soc, open, edge);
  return problem.stage * (realAt(problem.fuel, a - 1) * (1 - share) + realAt(problem.fuel, a) * share);
}

/** Share, 0–1, of point a in its mixture with the one before that lands exactly on an edge. */
export function edgeShare(
  problem: Problem,
  source: Source,
  a: number,
  soc: number,
  open: number,
  edge: number,
): number {
  const current = ((soc - edge) * source.charge) / problem.stage;
  const r = current >= 0 ? source.resistanceDischarge : source.resistanceCharge;
  const power = (open - r * current) * current;
  const before = realAt(problem.power, a - 1);
  const share = (power - before) / (realAt(problem.power, a) - before);
  return Math.min(1, Math.max(0, share));
}

/**
 * Reads a row of values at a place counted in grid intervals; not a number below the edge, held above the top. Held too
 * where the next charge up is too full to go on from: braking need not charge that far.
 */
export function read(values: Float64Array, base: number, steps: number, place: number): number {
  if (!(place >= -EDGE)) return Number.NaN;
  if (place >= steps) return realAt(values, base + steps);
  const held = Math.max(0, place);
  const cell = Math.floor(held);
  const left = realAt(values, base + cell);
  const share = held - cell;
  if (share === 0) return left;
  const right = realAt(values, base + cell + 1);
  return right === Number.POSITIVE_INFINITY ? left : left + (right - left) * share;
}

/**
 * Least fuel to the end from every stage, charge and engine state.
 * @param steps grid intervals of charge, ≥ 2
 * @returns null when cancelled
 */
export function solve(problem: Problem, steps: number, window: Window, watch: Watch = {}): Values | null {
  const solver = new Solver(problem, steps, window);
  if (!solver.solve(watch)) return null;
  const { lowOn, lowOff, on, off, running, startCharge } = solver;
  return { problem, steps, lowOn, lowOff, high: window.high, on, off, running, startCharge };
}
