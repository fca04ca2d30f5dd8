import { type Check, compare } from "./check.ts";
import type { TipDiameters } from "./contact.ts";
import { externalDiameters, internalDiameters } from "./dimensions.ts";
import { involute, profileAngle, tangentLength } from "./involute.ts";
import { type Proportions, proportions } from "./proportions.ts";

/** Share of the planet's base tangent that a shortened ring tip leaves unused, so that it never runs on the base point itself. */
const BASE_POINT_RESERVE = 0.02;

interface Mesh {
  readonly centre: number;
  readonly working: number;
  readonly planetTip: number;
  readonly planetBase: number;
  readonly ringTip: number;
  readonly ringBase: number;
}

/** Radii of the mesh; without profile shift the working pressure angle is that of the rack. */
function mesh(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions>,
  tips: TipDiameters = {},
): Mesh {
  const { module, pressureAngle } = proportions(given);
  if (!(ringTeeth > planetTeeth)) throw new RangeError(`ring ${ringTeeth} must exceed planet ${planetTeeth}`);
  const planet = externalDiameters(planetTeeth, given);
  const ring = internalDiameters(ringTeeth, given);
  return {
    centre: (module * (ringTeeth - planetTeeth)) / 2,
    working: pressureAngle,
    planetTip: (tips.first ?? planet.tip) / 2,
    planetBase: planet.base / 2,
    ringTip: (tips.second ?? ring.tip) / 2,
    ringBase: ring.base / 2,
  };
}

/**
 * Involute interference: the ring's tip must not reach past the planet's base point. Stated as a tip diameter:
 * value = the ring's, limit = 2 √(rb₂² + (a sin α)²), the same as z₁/z₂ ≥ 1 − tan αa₂/tan αw
 * (Elements of Metric Gear Technology, section 5.2 a).
 * @param tips where not standard: first the planet (without effect here), second the ring
 */
export function involuteInterferenceCheck(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions> = {},
  tips: TipDiameters = {},
): Check {
  const m = mesh(planetTeeth, ringTeeth, given, tips);
  return compare(2 * m.ringTip, 2 * Math.hypot(m.ringBase, m.centre * Math.sin(m.working)));
}

/**
 * Trochoid interference (fouling): the planet's tip corner must have left the ring's tooth when it crosses the
 * ring's tip circle. θ₁ z₁/z₂ + inv αw − inv αa₂ ≥ θ₂, rad (same work, eq. 5-6 and 5-7). Passes with infinite
 * value where the tip circles do not cross, and fails where the ring's tip lies inside its base circle.
 */
export function trochoidInterferenceCheck(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions> = {},
  tips: TipDiameters = {},
): Check {
  const m = mesh(planetTeeth, ringTeeth, given, tips);
  if (m.ringTip < m.ringBase) return compare(Number.NEGATIVE_INFINITY, 0);
  const difference = m.ringTip ** 2 - m.planetTip ** 2;
  const atPlanet = (difference - m.centre ** 2) / (2 * m.centre * m.planetTip);
  const atRing = (difference + m.centre ** 2) / (2 * m.centre * m.ringTip);
  if (Math.abs(atPlanet) > 1 || Math.abs(atRing) > 1) return compare(Number.POSITIVE_INFINITY, 0);
  const planetTipAngle = profileAngle(m.planetTip, m.planetBase);
  const ringTipAngle = profileAngle(m.ringTip, m.ringBase);
  const theta1 = Math.acos(atPlanet) + involute(planetTipAngle) - involute(m.working);
  const value = (theta1 * planetTeeth) / ringTeeth + involute(m.working) - involute(ringTipAngle);
  return compare(value, Math.acos(atRing));
}

/**
 * Trimming (tip) interference: whether the planet can be moved radially into the ring instead of along its axis.
 * θ₁ + inv αa₁ − inv αw ≥ (z₂/z₁)(θ₂ + inv αa₂ − inv αw), rad (same work, eq. 5-9 and 5-10). Fails where the
 * ring's tip lies inside its base circle. A gear set put together axially does not need it.
 */
export function trimmingInterferenceCheck(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions> = {},
  tips: TipDiameters = {},
): Check {
  const m = mesh(planetTeeth, ringTeeth, given, tips);
  if (m.ringTip < m.ringBase) return compare(Number.NEGATIVE_INFINITY, 0);
  const planetTipAngle = profileAngle(m.planetTip, m.planetBase);
  const ringTipAngle = profileAngle(m.ringTip, m.ringBase);
  const cosines = Math.cos(planetTipAngle) / Math.cos(ringTipAngle);
  const teeth = planetTeeth / ringTeeth;
  // Below 0 or above 1 the tips part before they could meet: no bound from that side.
  const clamp = (square: number): number => Math.asin(Math.sqrt(Math.min(1, Math.max(0, square))));
  const theta1 = clamp((1 - cosines ** 2) / (1 - teeth ** 2));
  const theta2 = clamp((1 / cosines ** 2 - 1) / (1 / teeth ** 2 - 1));
  const zero = involute(m.working);
  return compare(theta1 + involute(planetTipAngle) - zero, (theta2 + involute(ringTipAngle) - zero) / teeth);
}

/**
 * Tip diameter for the ring that clears the planet's base point: the standard one where involute interference
 * leaves room, else enlarged (teeth shortened) so that the last 2 % of the planet's base tangent stay unused.
 */
export function ringTipDiameter(
  planetTeeth: number,
  ringTeeth: number,
  given: Partial<Proportions> = {},
): number {
  const m = mesh(planetTeeth, ringTeeth, given);
  const planetTangent = (externalDiameters(planetTeeth, given).pitch / 2) * Math.sin(m.working);
  const least = m.centre * Math.sin(m.working) + BASE_POINT_RESERVE * planetTangent;
  const standard = tangentLength(m.ringTip, m.ringBase);
  return standard >= least ? 2 * m.ringTip : 2 * Math.hypot(m.ringBase, least);
}
