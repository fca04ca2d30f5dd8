import { type Check, compare } from "./check.ts";
import { type Proportions, proportions } from "./proportions.ts";

/** Teeth and planets of a simple planetary gear set. */
export interface SetTeeth {
  readonly sunTeeth: number;
  readonly planetTeeth: number;
  readonly ringTeeth: number;
  /** Number of planets, equally spaced, ≥ 1. */
  readonly planets: number;
}

/** A condition that two numbers are equal, or one is whole. */
export interface ExactCheck {
  readonly pass: boolean;
  readonly value: number;
  /** The number that would pass; for a quotient the nearest whole one. */
  readonly wanted: number;
}

/**
 * Both meshes at one centre distance: Nr = Ns + 2 Np (Elements of Metric Gear Technology, eq. 13-5). Sets made to
 * fit by profile shift are not covered and fail.
 */
export function centreCheck(set: SetTeeth): ExactCheck {
  const wanted = set.sunTeeth + 2 * set.planetTeeth;
  return { pass: set.ringTeeth === wanted, value: set.ringTeeth, wanted };
}

/** Equally spaced planets find both meshes: (Ns + Nr)/n whole (same work, eq. 13-7). */
export const spacingCheck = (set: SetTeeth): ExactCheck =>
  whole((set.sunTeeth + set.ringTeeth) / set.planets, 0);

/**
 * A planet fits at this angle from another: (Ns + Nr) angle/2π whole, which is eq. 13-8 of the same work with the
 * whole angle in rad for half of it in degrees.
 * @param angle rad, any
 */
export const angleCheck = (set: Omit<SetTeeth, "planets">, angle: number): ExactCheck =>
  whole(((set.sunTeeth + set.ringTeeth) * angle) / (2 * Math.PI), 1e-9);

function whole(value: number, tolerance: number): ExactCheck {
  const wanted = Math.round(value);
  return { pass: Math.abs(value - wanted) <= tolerance, value, wanted };
}

/**
 * Neighbouring planets pass each other: (Ns + Np) sin(π/n) > Np + 2 ha, in modules (same work, eq. 13-9). With
 * one planet there is no neighbour: passes.
 */
export function neighbourCheck(set: SetTeeth, given: Partial<Proportions> = {}): Check {
  const limit = set.planetTeeth + 2 * proportions(given).addendum;
  if (set.planets < 2) return compare(Number.POSITIVE_INFINITY, limit, true);
  return compare((set.sunTeeth + set.planetTeeth) * Math.sin(Math.PI / set.planets), limit, true);
}

/** Free distance between the tip circles of neighbouring planets, in the unit of the module; negative: they collide. */
export function planetClearance(set: SetTeeth, given: Partial<Proportions> = {}): number {
  const { value, limit } = neighbourCheck(set, given);
  return proportions(given).module * (value - limit);
}
