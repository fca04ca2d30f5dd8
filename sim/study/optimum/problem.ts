import type { Source } from "./battery.ts";

/**
 * A problem of energy over stages as the solver takes it: in each stage the engine rests, or runs at one of a list of
 * points, and the battery gives or takes what is left. State: charge × engine on or off.
 */
export interface Problem {
  readonly stages: number;
  /** length of a stage, s */
  readonly stage: number;
  /** place of a stage's first point in the lists, and how many it has */
  readonly first: Int32Array;
  readonly count: Int32Array;
  /** battery power of the points, W, rising within a stage */
  readonly power: Float64Array;
  /** fuel power of the points, W */
  readonly fuel: Float64Array;
  /** battery power with the engine at rest, W; not a number where it must run */
  readonly restPower: Float64Array;
  /** charging power that can be thrown away in a stage (friction brakes), W, ≥ 0 */
  readonly shed: Float64Array;
  /** power beyond the battery's limit that a stage may ask and not get, W, ≥ 0: it is taken at its limit */
  readonly overdraw: Float64Array;
  /** cost of a start: fuel, J, and energy from the battery, J */
  readonly startFuel: number;
  readonly startEnergy: number;
  readonly source: Source;
  /** charge at the start and least charge at the end */
  readonly startSoc: number;
  readonly endSoc: number;
  /** engine on at the start */
  readonly startOn: boolean;
}

/** Charges between which the grid lies. */
export interface Window {
  readonly low: number;
  readonly high: number;
}
