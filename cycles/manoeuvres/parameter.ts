import type { Dimension } from "../quantities.ts";
import type { Profile } from "./profile.ts";

/** One setting of a manoeuvre; range and default are in `unit`. */
export interface Parameter {
  /** One sentence: what it sets. */
  readonly meaning: string;
  readonly dimension: Dimension;
  /** The unit of the three numbers below, and the one shown first. Empty for a count. */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly default: number;
}

/** A speed-against-time figure of our own, drawn from a few parameters. */
export interface Manoeuvre {
  /** Lower case letters and hyphens; the name in front of the colon. */
  readonly id: string;
  readonly title: string;
  /** What it is good for, one or two sentences. */
  readonly summary: string;
  /** By key, in the order they are written. */
  readonly parameters: Readonly<Record<string, Parameter>>;
  /** @param value gives a parameter in SI by its key; all are within their ranges */
  readonly draw: (value: (key: string) => number) => Profile;
}

/** As `Manoeuvre`, with the keys known, so that asking for a parameter that is not declared does not compile. */
export interface ManoeuvreOf<K extends string> extends Manoeuvre {
  readonly parameters: Readonly<Record<K, Parameter>>;
  readonly draw: (value: (key: K) => number) => Profile;
}

/** Checks at compile time that a manoeuvre draws from declared parameters only. */
export function defineManoeuvre<K extends string>(definition: ManoeuvreOf<K>): Manoeuvre {
  return definition;
}

/** Speed to drive at. */
export function speedParameter(meaning: string, kmh: number, min: number, max: number): Parameter {
  return { meaning, dimension: "speed", unit: "km/h", min, max, default: kmh };
}

/** Grade, up and down, level unless told. */
export function gradeParameter(meaning: string): Parameter {
  return { meaning, dimension: "grade", unit: "%", min: -30, max: 30, default: 0 };
}

/** A time, s. */
export function timeParameter(meaning: string, seconds: number, min: number, max: number): Parameter {
  return { meaning, dimension: "time", unit: "s", min, max, default: seconds };
}

/** A change of speed, m/s², always as a positive number. */
export function rateParameter(meaning: string, rate: number, min: number, max: number): Parameter {
  return { meaning, dimension: "acceleration", unit: "m/s2", min, max, default: rate };
}
