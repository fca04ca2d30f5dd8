import type { Prepared } from "../drivetrain/prepared.ts";

/** What a strategy sees, ten times a second. SI units. One object is reused: copy what must be kept. */
export class StrategyInput {
  /** s since the start */
  time = 0;
  /** m/s, negative backward */
  speed = 0;
  /** power asked at the wheels, W; negative when braking */
  wheelPower = 0;
  /** power asked of engine and battery together, W, ≥ 0: wheels with their losses, and auxiliaries */
  demand = 0;
  soc = 0;
  /** 1 while the engine runs */
  engineOn = 0;
  /** s since the engine was last started or stopped */
  engineTime = 0;
  /** rad/s */
  engineSpeed = 0;
  /** K */
  coolant = 0;
  /** power the battery can give and take at its terminals now, W, both ≥ 0 */
  batteryOut = 0;
  batteryIn = 0;
  /** bits of sim/limits.ts since the last decision */
  limits = 0;
}

/** What a strategy answers. One object is reused; it comes reset to "engine off". */
export class StrategyAnswer {
  engineOn = false;
  /** W at the crankshaft; below zero asks for engine braking */
  enginePower = 0;
  /** rad/s; 0 leaves the speed to the best-efficiency line */
  engineSpeed = 0;
}

/** A strategy at work on one run; it may keep memory of its own. */
export interface Strategy {
  decide(now: StrategyInput, answer: StrategyAnswer): void;
}

/** A strategy as it stands in the registry. */
export interface StrategyDefinition {
  readonly id: string;
  readonly title: string;
  /** One or two sentences for a person choosing. */
  readonly about: string;
  /** False for the baseline that brakes with friction alone. */
  readonly regeneration: boolean;
  /**
   * The same at another price of battery energy (fuel for battery energy, 1), where one price for the whole drive is
   * what decides: its charge is balanced by that price and not by the charge at the start.
   */
  readonly withFactor?: (factor: number) => StrategyDefinition;
  create(p: Prepared): Strategy;
}
