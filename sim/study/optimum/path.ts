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

/** Follows the least-fuel policy from the problem's start, with the charge as it really comes out. */
class Follower {
  private best = Number.POSITIVE_INFINITY;
  private bestPoint = -1;
  private bestShare = 0;
  private bestPower = 0;
  private bestSoc = 0;
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
    this.bestPoint = point;
    this.bestShare = share;
    this.bestPower = power;
    this.bestSoc = soc;
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
      const place = this.place(next, low);
      const value = read(on, base, steps, place);
      if (!(place >= 0) && Number.isNaN(value)) {
        if (a > first && realAt(powers, a - 1) >= into) this.edge(a, soc, open, low, extra + realAt(on, base));
        break;
      }
      this.offer(extra + stage * realAt(fuel, a) + value, a, 0, power, next);
    }
  }

  private edge(a: number, soc: number, open: number, low: number, cost: number): void {
    const { problem } = this.v;
    const { power, fuel, stage, source } = problem;
    const share = edgeShare(problem, source, a, soc, open, low);
    const mean = (list: Float64Array): number => realAt(list, a - 1) * (1 - share) + realAt(list, a) * share;
    this.offer(cost + stage * mean(fuel), a, 1 - share, mean(power), low);
  }

  follow(): Path {
    const { problem } = this.v;
    const { stages, stage } = problem;
    const soc = new Float64Array(stages + 1);
    const on = new Float64Array(stages);
    const fuel = new Float64Array(stages);
    const battery = new Float64Array(stages);
    const point = new Int32Array(stages).fill(-1);
    const share = new Float64Array(stages);
    const factor = new Float64Array(stages);
    let x = problem.startSoc;
    let running = problem.startOn;
    let starts = 0;
    let fuelEnergy = 0;
    soc[0] = x;
    for (let k = 0; k < stages; k += 1) {
      this.best = Number.POSITIVE_INFINITY;
      factor[k] = this.factor(k, x, running);
      this.rest(k, x);
      const startCharge = running ? 0 : this.v.startCharge;
      this.run(k, x - startCharge, running ? 0 : problem.startFuel);
      if (!Number.isFinite(this.best)) {
        return { soc, on, fuel, battery, point, share, factor, starts, fuelEnergy: Number.NaN, feasible: false };
      }
      const runs = this.bestPoint >= 0;
      if (runs) {
        const a = this.bestPoint;
        const s = this.bestShare;
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
      battery[k] = this.bestPower;
      running = runs;
      x = this.bestSoc;
      soc[k + 1] = x;
    }
    return { soc, on, fuel, battery, point, share, factor, starts, fuelEnergy, feasible: true };
  }

  /** Slope of the values, as fuel energy for battery energy; the mean of an interval either side. */
  private factor(k: number, soc: number, running: boolean): number {
    const { on, off, lowOn, lowOff, high, steps, problem } = this.v;
    const low = realAt(running ? lowOn : lowOff, k);
    const values = running ? on : off;
    const step = (high - low) / steps;
    const place = Math.min(steps - 1, Math.max(0, (soc - low) / step - 0.5));
    const base = k * (steps + 1);
    const fall = read(values, base, steps, place) - read(values, base, steps, place + 1);
    return fall / (step * openAt(problem.source, soc) * problem.source.charge);
  }
}

/** The optimum's path: the policy of the values followed from the start. */
export const followPolicy = (values: Values): Path => new Follower(values).follow();
