import { at } from "../../shared/at.ts";
import type { CycleTrace, Span } from "../../shared/cycle.ts";
import { mpsToKmh } from "../../shared/units.ts";
import { percentile } from "./percentile.ts";
import { type Stretch, speedAt, stretches } from "./stretches.ts";

/** How briskly a trip was driven, in the measures of Regulation (EU) 2016/646 for tests on the road. */
export interface DrivingDynamics {
  /** m/s². Smaller than the figure in `statistics`: central differences, and gentle rises left out. */
  readonly relativePositiveAcceleration: number;
  /** m²/s³ (W/kg); 95th percentile of speed times acceleration where it rises. 0 when it never does. */
  readonly brisk95: number;
}

/** The two lines a trip must stay between at its mean speed. */
export interface DynamicsLimits {
  /** m/s²; not less than this. */
  readonly minRelativePositiveAcceleration: number;
  /** m²/s³; not more than this. */
  readonly maxBrisk95: number;
}

/** m/s²; gentler rises do not count. */
const LEAST_ACCELERATION = 0.1;

/** s; the regulation's sampling. */
const STEP = 1;

/**
 * Driving dynamics from one sample a second with central differences.
 * The regulation does so for town, country and motorway apart; this is the formula for one span.
 * @param span the whole trace when left out; soaks do not count
 */
export function drivingDynamics(trace: CycleTrace, span?: Span): DrivingDynamics {
  let way = 0;
  const products: number[] = [];
  for (const stretch of stretches(trace, span)) way += addStretch(stretch, products);
  const gain = products.reduce((total, product) => total + product * STEP, 0);
  return {
    relativePositiveAcceleration: way === 0 ? 0 : gain / way,
    brisk95: products.length === 0 ? 0 : percentile(products, 0.95),
  };
}

/** Adds speed × acceleration of the rising seconds. @returns the way, m */
function addStretch(stretch: Stretch, products: number[]): number {
  const { time } = stretch;
  const start = at(time, 0);
  const steps = Math.floor((at(time, time.length - 1) - start) / STEP);
  const speeds = Float64Array.from({ length: steps + 1 }, (_, k) => speedAt(stretch, start + k * STEP));
  let way = at(speeds, 0) * STEP;
  for (let k = 1; k <= steps; k += 1) {
    const speed = at(speeds, k);
    way += speed * STEP;
    if (k === steps) break;
    const acceleration = (at(speeds, k + 1) - at(speeds, k - 1)) / (2 * STEP);
    if (acceleration > LEAST_ACCELERATION) products.push(speed * acceleration);
  }
  return way;
}

/**
 * The limits at a mean speed, Regulation (EU) 2016/646: 0.1755 − 0.0016 v̄ up to 94.05 km/h and 0.025 above, and
 * 14.44 + 0.136 v̄ up to 74.6 km/h and 18.966 + 0.0742 v̄ above, v̄ in km/h.
 * @param meanSpeed m/s, 0 or more
 */
export function dynamicsLimits(meanSpeed: number): DynamicsLimits {
  const kmh = mpsToKmh(meanSpeed);
  return {
    minRelativePositiveAcceleration: kmh <= 94.05 ? 0.1755 - 0.0016 * kmh : 0.025,
    maxBrisk95: kmh <= 74.6 ? 14.44 + 0.136 * kmh : 18.966 + 0.0742 * kmh,
  };
}
