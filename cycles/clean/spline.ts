import { at } from "../../shared/at.ts";
import { Walk } from "./walk.ts";

/** What is to be smoothed: one or two quantities measured together along one abscissa (time, or way). */
export interface Measured {
  /** Not falling; several samples at one place are allowed. */
  readonly along: Float64Array;
  /** One array for each quantity, as long as `along`; where `known` is 0 nothing is read. */
  readonly values: readonly Float64Array[];
  /** 1 where there is a measurement, 0 where only an answer is wanted. */
  readonly known: Uint8Array;
}

/** How hard to smooth. */
export interface SmoothingModel {
  /** Standard deviation of one measurement, in the unit of the values. */
  readonly jitter: number;
  /** How fast the rate may wander: its variance gained per unit of `along`. */
  readonly liveliness: number;
  /** What each measurement counts, above 0 to 1; all 1 when left out. */
  readonly weights?: Float64Array;
  /** 1 where the rate is known to be zero (standing); none when left out. */
  readonly still?: Uint8Array;
}

/** The smooth curve at every sample. */
export interface Smoothed {
  readonly values: readonly Float64Array[];
  /** Change per unit of `along`. */
  readonly rates: readonly Float64Array[];
}

/**
 * Smooths by a Kalman filter forward and a Rauch–Tung–Striebel smoother backward, over the model "the rate wanders at
 * random" (continuous white-noise acceleration). The result is the cubic smoothing spline: the curve with the least sum
 * of squared misses plus a penalty on its curvature (Wahba 1978; Rauch, Tung and Striebel 1965; Bar-Shalom, Li and
 * Kirubarajan, Estimation with Applications to Tracking and Navigation, ch. 6; all from memory). All quantities share
 * one noise, so one covariance serves them.
 * @param measured at least one known sample
 */
export function smoothSpline(measured: Measured, model: SmoothingModel): Smoothed {
  const filter = new Filter(measured, model);
  filter.forward();
  return filter.backward();
}

/** Variances of a measurement: how far off the start may be. */
const UNKNOWN = 1e6;

/** Filter over all samples. The state of each quantity is its value and rate. */
class Filter {
  private readonly count: number;
  // Filtered states and covariances, kept for the way back.
  private readonly value: Float64Array[];
  private readonly rate: Float64Array[];
  private readonly vv: Float64Array;
  private readonly vr: Float64Array;
  private readonly rr: Float64Array;

  constructor(
    private readonly measured: Measured,
    private readonly model: SmoothingModel,
  ) {
    this.count = measured.along.length;
    this.value = measured.values.map(() => new Float64Array(this.count));
    this.rate = measured.values.map(() => new Float64Array(this.count));
    this.vv = new Float64Array(this.count);
    this.vr = new Float64Array(this.count);
    this.rr = new Float64Array(this.count);
  }

  forward(): void {
    const { known, values } = this.measured;
    const { jitter, still, weights } = this.model;
    const walk = new Walk(values.length, this.model.liveliness);
    // Begun with hardly any belief, so that the first measurement counts as the others do.
    walk.start(this.measured, known.indexOf(1), UNKNOWN * jitter * jitter);
    for (let i = 0; i < this.count; i += 1) {
      if (i > 0) walk.advance(at(this.measured.along, i) - at(this.measured.along, i - 1));
      if (at(known, i) === 1) {
        const weight = weights ? at(weights, i) : 1;
        walk.takeValue(values, i, (jitter * jitter) / weight);
      }
      if (still && at(still, i) === 1) walk.takeStill();
      this.keep(walk, i);
    }
  }

  private keep(walk: Walk, i: number): void {
    this.value.forEach((list, c) => {
      list[i] = at(walk.value, c);
    });
    this.rate.forEach((list, c) => {
      list[i] = at(walk.rate, c);
    });
    this.vv[i] = walk.vv;
    this.vr[i] = walk.vr;
    this.rr[i] = walk.rr;
  }

  /** Backward over what `run` kept; the kept states become the smooth ones. */
  backward(): Smoothed {
    const { along } = this.measured;
    const { liveliness } = this.model;
    for (let i = this.count - 2; i >= 0; i -= 1) {
      const step = at(along, i + 1) - at(along, i);
      // At one place nothing happens in between: the next state is this one's.
      const vv = at(this.vv, i);
      const vr = at(this.vr, i);
      const rr = at(this.rr, i);
      const pvv = vv + step * (2 * vr + step * rr) + (liveliness * step * step * step) / 3;
      const pvr = vr + step * rr + (liveliness * step * step) / 2;
      const prr = rr + liveliness * step;
      const det = pvv * prr - pvr * pvr;
      // Gain = P Fᵀ P⁻, written out for two states.
      const a = vv + step * vr;
      const b = vr;
      const c = vr + step * rr;
      const d = rr;
      const g00 = (a * prr - b * pvr) / det;
      const g01 = (b * pvv - a * pvr) / det;
      const g10 = (c * prr - d * pvr) / det;
      const g11 = (d * pvv - c * pvr) / det;
      for (let k = 0; k < this.value.length; k += 1) {
        const value = at(this.value, k);
        const rate = at(this.rate, k);
        const dv = at(value, i + 1) - (at(value, i) + at(rate, i) * step);
        const dr = at(rate, i + 1) - at(rate, i);
        value[i] = at(value, i) + g00 * dv + g01 * dr;
        rate[i] = at(rate, i) + g10 * dv + g11 * dr;
      }
    }
    return { values: this.value, rates: this.rate };
  }
}
