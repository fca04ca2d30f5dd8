import { realAt } from "../../../shared/at.ts";
import { currentFor, mostIn, mostOut, openAt } from "./battery.ts";
import { edgeShare, read, type Values } from "./solve.ts";

/** What the optimum does, stage by stage. */
export interface Path {
  /** charge at the stages' starts, and at the end: stages + 1 */
  readonly soc: Float64Array;
  /** 1 where the engine runs through the stage */
  readonly on: Float64Array;
  /** fuel power, W, without the starts' extra */
  readonly fuel: Float64Array;
  /** battery power at the terminals, W, without the starts' share */
  readonly battery: Float64Array;
  /** point of the problem's list that is taken, and the share of the one before it in a mixture; −1 at rest */
  readonly point: Int32Array;
  readonly share: Float64Array;
  /** fuel that one unit of battery energy is worth there */
  readonly factor: Float64Array;
  readonly starts: number;
  /** J, starts included */
  readonly fuelEnergy: number;
  /** false when the end cannot be reached from the start */
  readonly feasible: boolean;
}

/**
 * The least-fuel policy of the values: what to do in a stage from a charge and engine state. Results stand in its
 * fields.
 */
export class Policy {
  /** least fuel to the end, J; infinite when the end cannot be reached */
  best = Number.POSITIVE_INFINITY;
  /** point taken and the share of the one before it in a mixture; −1 at rest */
  point = -1;
  share = 0;
  /** battery power, W, and charge at the stage's end */
  power = 0;
  soc = 0;
  constructor(private readonly v: Values) {}

  private place(soc: number, low: number): number {
    return ((soc - low) * this.v.steps) / (this.v.high - low);
  }

  private after(soc: number, open: number, power: number): number {
    const { source, stage } = this.v.problem;
    return soc - (currentFor(source, open, power) * stage) / source.charge;
  }

  private offer(cost: number, point: number, share: number, power: number, soc: number): void {
    if (!(cost < this.best)) return;
    this.best = cost;
    this.point = point;
    this.share = share;
    this.power = power;
    this.soc = soc;
  }

  /** Offers the stage with the engine at rest. */
  private rest(k: number, soc: number): void {
    const { problem, off, steps } = this.v;
    const { source } = problem;
    const open = openAt(source, soc);
    let power = realAt(problem.restPower, k);
    const out = mostOut(source, soc, open);
    if (!(power <= out + realAt(problem.overdraw, k))) return;
    power = Math.min(power, out);
    const into = -mostIn(source, soc, open);
    if (power < into) {
      if (power + realAt(problem.shed, k) < into) return;
      power = into;
    }
    const next = this.after(soc, open, power);
    const place = this.place(next, realAt(this.v.lowOff, k + 1));
    this.offer(read(off, (k + 1) * (steps + 1), steps, place), -1, 0, power, next);
  }

  /** Offers every running point, at a cost that is added to each. */
  private run(k: number, soc: number, extra: number): void {
    const { problem, on, steps } = this.v;
    const { source, power: powers, fuel, stage } = problem;
    const first = problem.first[k] ?? 0;
    const last = first + (problem.count[k] ?? 0);
    const open = openAt(source, soc);
    const into = -mostIn(source, soc, open);
    const out = mostOut(source, soc, open);
    const shed = realAt(problem.shed, k);
    const overdraw = realAt(problem.overdraw, k);
    const low = realAt(this.v.lowOn, k + 1);
    const base = (k + 1) * (steps + 1);
    for (let a = first; a < last; a += 1) {
      const asked = realAt(powers, a);
      if (asked > out + overdraw) break;
      if (asked < into && asked + shed < into) continue;
      const power = Math.min(out, Math.max(asked, into));
      const next = this.after(soc, open, power);
      const value = read(on, base, steps, this.place(next, low));
      if (Number.isNaN(value) && next < low) {
        if (a > first && realAt(powers, a - 1) >= into)
          this.edge(a, soc, open, low, extra + realAt(on, base));
        break;
      }
      this.offer(extra + stage * realAt(fuel, a) + value, a, 0, power, next);
    }
  }

  /** Offers the mixture of two points that lands exactly on the edge. */
  private edge(a: number, soc: number, open: number, low: number, cost: number): void {
    const { problem } = this.v;
    const { power, fuel, stage, source } = problem;
    const share = edgeShare(problem, source, a, soc, open, low);
    const mean = (list: Float64Array): number => realAt(list, a - 1) * (1 - share) + realAt(list, a) * share;
    this.offer(cost + stage * mean(fuel), a, 1 - share, mean(power), low);
  }

  /** Decides a stage. @param soc charge at its start @param on engine running before it */
  decide(k: number, soc: number, on: boolean): void {
    this.best = Number.POSITIVE_INFINITY;
    this.point = -1;
    this.rest(k, soc);
    this.run(k, on ? soc : soc - this.v.startCharge, on ? 0 : this.v.problem.startFuel);
  }

  /** Slope of the values as fuel energy for battery energy, over a grid interval around the charge. */
  factor(k: number, soc: number, on: boolean): number {
    const { lowOn, lowOff, high, steps, problem } = this.v;
    const low = realAt(on ? lowOn : lowOff, k);
    const values = on ? this.v.on : this.v.off;
    const step = (high - low) / steps;
    const place = Math.min(steps - 1, Math.max(0, (soc - low) / step - 0.5));
    const base = k * (steps + 1);
    const fall = read(values, base, steps, place) - read(values, base, steps, place + 1);
    return fall / (step * openAt(problem.source, soc) * problem.source.charge);
  }
}

/** The optimum's path: the policy followed from the problem's start, with the charge as it really comes out. */
export function followPolicy(values: Values): Path {
  const { problem } = values;
  const { stages, stage } = problem;
  const policy = new Policy(values);
  const soc = new Float64Array(stages + 1);
  const on = new Float64Array(stages);
  const fuel = new Float64Array(stages);
  const battery = new Float64Array(stages);
  const point = new Int32Array(stages).fill(-1);
  const share = new Float64Array(stages);
  const factor = new Float64Array(stages);
  let running = problem.startOn;
  let starts = 0;
  let fuelEnergy = 0;
  let feasible = true;
  soc[0] = problem.startSoc;
  for (let k = 0; k < stages && feasible; k += 1) {
    factor[k] = policy.factor(k, realAt(soc, k), running);
    policy.decide(k, realAt(soc, k), running);
    feasible = Number.isFinite(policy.best);
    const runs = policy.point >= 0;
    if (runs) {
      const { point: a, share: s } = policy;
      on[k] = 1;
      point[k] = a;
      share[k] = s;
      fuel[k] = realAt(problem.fuel, a) * (1 - s) + (s > 0 ? realAt(problem.fuel, a - 1) * s : 0);
      if (!running) {
        starts += 1;
        fuelEnergy += problem.startFuel;
      }
    }
    fuelEnergy += stage * realAt(fuel, k);
    battery[k] = policy.power;
    running = runs;
    soc[k + 1] = policy.soc;
  }
  const energy = feasible ? fuelEnergy : Number.NaN;
  return { soc, on, fuel, battery, point, share, factor, starts, fuelEnergy: energy, feasible };
}
