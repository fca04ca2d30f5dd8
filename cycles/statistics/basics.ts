import { at } from "../../shared/at.ts";
import type { CycleTrace, Phase, Span } from "../../shared/cycle.ts";
import { wholeSpan } from "../cut.ts";
import { type CycleDemand, demandFactors } from "./factors.ts";
import { type Stretch, speedAt, stretches } from "./stretches.ts";

/** Figures of a cycle or a part of it. All speeds are magnitudes; backing up counts like driving forward. */
export interface CycleStatistics {
  /** s, soaks included. */
  readonly duration: number;
  /** s, soaks left out; the means and shares below refer to it. */
  readonly drivingTime: number;
  /** m. */
  readonly distance: number;
  /** m/s, standing included. */
  readonly meanSpeed: number;
  /** m/s, standing left out. */
  readonly meanMovingSpeed: number;
  /** m/s. */
  readonly maxSpeed: number;
  /** m/s²; the largest change of speed over one second (over the whole piece when it is shorter), 0 or more. */
  readonly maxAcceleration: number;
  /** m/s²; as maxAcceleration for slowing down, as a positive number. */
  readonly maxDeceleration: number;
  /** s standing: both ends of a line at rest. */
  readonly restTime: number;
  /** restTime over drivingTime, 0–1. */
  readonly restShare: number;
  /** Share of the samples at rest, 0–1. Published idle shares count so; both ends of a stop are in it. */
  readonly restSampleShare: number;
  /** How often the vehicle comes to rest. A start at rest is not a stop. */
  readonly stops: number;
  /** m/s²; kinetic energy gained for a kilogram and a metre. Equals demand.traction.inertia. */
  readonly relativePositiveAcceleration: number;
  readonly demand: CycleDemand;
}

/**
 * Statistics of a trace.
 * @param span s, within the trace; the whole trace when left out
 * @param restSpeed m/s, 0 or more; at or below it the vehicle counts as standing. Recorded drives need some 0.3
 */
export function statistics(trace: CycleTrace, span: Span = wholeSpan(trace), restSpeed = 0): CycleStatistics {
  const pieces = stretches(trace, span);
  const sum = (of: (piece: Stretch) => number): number =>
    pieces.reduce((total, piece) => total + of(piece), 0);
  const max = (of: (piece: Stretch) => number): number => Math.max(0, ...pieces.map(of));
  const samples = sum((piece) => piece.time.length);
  const samplesAtRest = sum((piece) => piece.speed.filter((v) => v <= restSpeed).length);
  const drivingTime = sum(lengthOf);
  const distance = sum(wayOf);
  const restTime = sum((piece) => restTimeOf(piece, restSpeed));
  const demand = demandFactors(trace, span);
  return {
    duration: span.end - span.start,
    drivingTime,
    distance,
    meanSpeed: ratio(distance, drivingTime),
    meanMovingSpeed: ratio(distance, drivingTime - restTime),
    maxSpeed: max((piece) => piece.speed.reduce((top, v) => Math.max(top, v), 0)),
    maxAcceleration: max((piece) => largestChange(piece, 1)),
    maxDeceleration: max((piece) => largestChange(piece, -1)),
    restTime,
    restShare: ratio(restTime, drivingTime),
    restSampleShare: ratio(samplesAtRest, samples),
    stops: sum((piece) => stopsOf(piece, restSpeed)),
    relativePositiveAcceleration: demand.traction.inertia,
    demand,
  };
}

/** Statistics of each phase of a trace, in order; empty when it has none. @param restSpeed as in `statistics` */
export function phaseStatistics(
  trace: CycleTrace,
  restSpeed = 0,
): { readonly phase: Phase; readonly statistics: CycleStatistics }[] {
  return trace.phases.map((phase) => ({ phase, statistics: statistics(trace, phase, restSpeed) }));
}

function ratio(part: number, whole: number): number {
  return whole === 0 ? 0 : part / whole;
}

function lengthOf({ time }: Stretch): number {
  return at(time, time.length - 1) - at(time, 0);
}

function sumOverLines({ time, speed }: Stretch, of: (dt: number, v0: number, v1: number) => number): number {
  let total = 0;
  for (let i = 1; i < time.length; i += 1) {
    total += of(at(time, i) - at(time, i - 1), at(speed, i - 1), at(speed, i));
  }
  return total;
}

function wayOf(piece: Stretch): number {
  return sumOverLines(piece, (dt, v0, v1) => (dt * (v0 + v1)) / 2);
}

function restTimeOf(piece: Stretch, restSpeed: number): number {
  return sumOverLines(piece, (dt, v0, v1) => (v0 <= restSpeed && v1 <= restSpeed ? dt : 0));
}

function stopsOf(piece: Stretch, restSpeed: number): number {
  return sumOverLines(piece, (_, v0, v1) => (v0 > restSpeed && v1 <= restSpeed ? 1 : 0));
}

/**
 * Largest rise (sign 1) or fall (sign −1) of speed over a window of one second, m/s². The speed is made of straight
 * lines, so the largest is found with one end of the window on a sample.
 */
function largestChange(piece: Stretch, sign: 1 | -1): number {
  const { time } = piece;
  const first = at(time, 0);
  const last = at(time, time.length - 1);
  const width = Math.min(1, last - first);
  let largest = 0;
  const look = (start: number): void => {
    if (start < first || start + width > last) return;
    const change = (sign * (speedAt(piece, start + width) - speedAt(piece, start))) / width;
    largest = Math.max(largest, change);
  };
  for (const t of time) {
    look(t);
    look(t - width);
  }
  return largest;
}
