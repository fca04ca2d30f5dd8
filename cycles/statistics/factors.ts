import { at } from "../../shared/at.ts";
import type { CycleTrace, Span } from "../../shared/cycle.ts";
import { type Stretch, stretches } from "./stretches.ts";

/**
 * What a cycle asks of any vehicle, without its data. The mean force at the wheels is
 * ½ ρ A cd · air + m g cr · rolling + m · inertia. All three are per metre of the whole way driven, on a level road.
 */
export interface DemandFactors {
  /** ∫ v³ dt / way, m²/s². */
  readonly air: number;
  /** ∫ v dt / way, 0–1. */
  readonly rolling: number;
  /** ∫ a v dt / way, m/s². */
  readonly inertia: number;
}

/** The factors of the parts in traction and of the whole cycle. */
export interface CycleDemand {
  /** Traction is taken as a ≥ 0 and v > 0: nothing comes back from slowing down. */
  readonly traction: DemandFactors;
  /** Over everything: all of it comes back; inertia is 0 when start and end have the same speed. */
  readonly whole: DemandFactors;
}

/**
 * Demand factors, exact for straight lines between the samples.
 * Guzzella and Sciarretta, Vehicle Propulsion Systems, chapter 2 (mean tractive energy of a cycle).
 * @param span the whole trace when left out; soaks do not count
 * @returns zeros when nothing is driven
 */
export function demandFactors(trace: CycleTrace, span?: Span): CycleDemand {
  const traction = { air: 0, rolling: 0, inertia: 0 };
  const whole = { air: 0, rolling: 0, inertia: 0 };
  for (const stretch of stretches(trace, span)) addStretch(stretch, traction, whole);
  const way = whole.rolling;
  return { traction: perWay(traction, way), whole: perWay(whole, way) };
}

interface Integrals {
  air: number;
  rolling: number;
  inertia: number;
}

function addStretch({ time, speed }: Stretch, traction: Integrals, whole: Integrals): void {
  for (let i = 1; i < time.length; i += 1) {
    const dt = at(time, i) - at(time, i - 1);
    const v0 = at(speed, i - 1);
    const v1 = at(speed, i);
    addLine(whole, dt, v0, v1);
    if (v1 >= v0) addLine(traction, dt, v0, v1);
  }
}

function addLine(sum: Integrals, dt: number, v0: number, v1: number): void {
  sum.rolling += (dt * (v0 + v1)) / 2;
  sum.air += (dt * (v0 + v1) * (v0 * v0 + v1 * v1)) / 4;
  sum.inertia += (v1 * v1 - v0 * v0) / 2;
}

function perWay(sum: Integrals, way: number): DemandFactors {
  if (way === 0) return { air: 0, rolling: 0, inertia: 0 };
  return { air: sum.air / way, rolling: sum.rolling / way, inertia: sum.inertia / way };
}
