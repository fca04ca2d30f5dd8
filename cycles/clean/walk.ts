import { at } from "../../shared/at.ts";
import type { Measured } from "./spline.ts";

/** Standard deviation with which a rate is held at zero while standing, in units of rate. */
const STILL = 0.01;
/** Variance of the rate where nothing is known: 100 units a unit is far beyond anything driven or climbed. */
const UNKNOWN_RATE = 1e4;

/**
 * One state going along: value and rate of each quantity, and the covariance that they share. The rate wanders at random
 * (continuous white noise on its change).
 */
export class Walk {
  readonly value: Float64Array;
  readonly rate: Float64Array;
  /** Variance of the value, covariance, variance of the rate. */
  vv = 0;
  vr = 0;
  rr = 0;

  /** @param liveliness variance of the rate gained per unit */
  constructor(
    channels: number,
    private readonly liveliness: number,
  ) {
    this.value = new Float64Array(channels);
    this.rate = new Float64Array(channels);
  }

  /** Begins at sample i, of which only the values are known. @param noise variance of a measurement */
  start({ values }: Measured, i: number, noise: number): void {
    for (let c = 0; c < this.value.length; c += 1) this.value[c] = at(at(values, c), i);
    this.rate.fill(0);
    this.vv = noise;
    this.vr = 0;
    this.rr = UNKNOWN_RATE;
  }

  /** Goes on by a step, 0 or more. */
  advance(step: number): void {
    for (let c = 0; c < this.value.length; c += 1) {
      this.value[c] = at(this.value, c) + at(this.rate, c) * step;
    }
    const q = this.liveliness;
    this.vv += step * (2 * this.vr + step * this.rr) + (q * step * step * step) / 3;
    this.vr += step * this.rr + (q * step * step) / 2;
    this.rr += q * step;
  }

  /** Square of how far sample i is from what was expected, all quantities together. */
  missSquared(values: readonly Float64Array[], i: number): number {
    let sum = 0;
    for (let c = 0; c < this.value.length; c += 1) {
      const miss = at(at(values, c), i) - at(this.value, c);
      sum += miss * miss;
    }
    return sum;
  }

  /** Takes sample i in. @param noise variance of the measurement */
  takeValue(values: readonly Float64Array[], i: number, noise: number): void {
    const spread = this.vv + noise;
    const k0 = this.vv / spread;
    const k1 = this.vr / spread;
    for (let c = 0; c < this.value.length; c += 1) {
      const miss = at(at(values, c), i) - at(this.value, c);
      this.value[c] = at(this.value, c) + k0 * miss;
      this.rate[c] = at(this.rate, c) + k1 * miss;
    }
    this.rr -= k1 * this.vr;
    this.vr -= k0 * this.vr;
    this.vv -= k0 * this.vv;
  }

  /** Takes in that the rate is zero. */
  takeStill(): void {
    const spread = this.rr + STILL * STILL;
    const k0 = this.vr / spread;
    const k1 = this.rr / spread;
    for (let c = 0; c < this.value.length; c += 1) {
      const miss = -at(this.rate, c);
      this.value[c] = at(this.value, c) + k0 * miss;
      this.rate[c] = at(this.rate, c) + k1 * miss;
    }
    this.vv -= k0 * this.vr;
    this.vr -= k0 * this.rr;
    this.rr -= k1 * this.rr;
  }
}
