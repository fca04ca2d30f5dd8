import { type Proportions, proportions } from "./proportions.ts";

/** Diameters of one gear, in the unit of the module. */
export interface Diameters {
  /** d = m z */
  readonly pitch: number;
  /** db = d cos α */
  readonly base: number;
  /** External da = d + 2 m (ha + x), internal da = d − 2 m (ha − x). */
  readonly tip: number;
  /** External df = d − 2 m (hf − x), internal df = d + 2 m (hf + x). */
  readonly root: number;
}

/**
 * Diameters of an external gear (ISO 21771 with reference to the basic rack).
 * @param teeth z; not checked for a whole number, so that limits can be computed with fractions
 * @param shift profile shift x, modules; outward is positive
 */
export function externalDiameters(teeth: number, given: Partial<Proportions> = {}, shift = 0): Diameters {
  const { module, pressureAngle, addendum, dedendum } = proportions(given);
  const pitch = module * teeth;
  return {
    pitch,
    base: pitch * Math.cos(pressureAngle),
    tip: pitch + 2 * module * (addendum + shift),
    root: pitch - 2 * module * (dedendum - shift),
  };
}

/**
 * Diameters of an internal gear, teeth pointing inward (Elements of Metric Gear Technology, section 5.1).
 * @param shift profile shift x, modules; outward is positive, as for the external gear that would fill the space
 */
export function internalDiameters(teeth: number, given: Partial<Proportions> = {}, shift = 0): Diameters {
  const { module, pressureAngle, addendum, dedendum } = proportions(given);
  const pitch = module * teeth;
  return {
    pitch,
    base: pitch * Math.cos(pressureAngle),
    tip: pitch - 2 * module * (addendum - shift),
    root: pitch + 2 * module * (dedendum + shift),
  };
}

/** Distance of neighbouring flanks along the line of action: pb = π m cos α. */
export function basePitch(given: Partial<Proportions> = {}): number {
  const { module, pressureAngle } = proportions(given);
  return Math.PI * module * Math.cos(pressureAngle);
}

/**
 * Arc thickness of a tooth on the pitch circle: external m (π/2 + 2 x tan α), internal m (π/2 − 2 x tan α), less
 * half the backlash (ISO 21771; Elements of Metric Gear Technology, section 10.1).
 */
export function toothThickness(
  kind: "external" | "internal",
  given: Partial<Proportions> = {},
  shift = 0,
): number {
  const { module, pressureAngle, backlash } = proportions(given);
  const outward = kind === "external" ? shift : -shift;
  return module * (Math.PI / 2 + 2 * outward * Math.tan(pressureAngle) - backlash / 2);
}

/** What a tooth caliper measures on an external gear, lengths in the unit of the module. */
export interface ChordalThickness {
  /** Half the angle the tooth takes on the pitch circle, rad: ψ = s/d. */
  readonly halfAngle: number;
  /** Straight width at the pitch circle: d sin ψ. */
  readonly chord: number;
  /** Height of the tip over that chord: d (1 − cos ψ)/2 + m (ha + x). */
  readonly height: number;
}

/** Chordal thickness (Elements of Metric Gear Technology, Table 10-1). */
export function chordalThickness(
  teeth: number,
  given: Partial<Proportions> = {},
  shift = 0,
): ChordalThickness {
  const { pitch, tip } = externalDiameters(teeth, given, shift);
  const halfAngle = toothThickness("external", given, shift) / pitch;
  return {
    halfAngle,
    chord: pitch * Math.sin(halfAngle),
    height: (pitch / 2) * (1 - Math.cos(halfAngle)) + (tip - pitch) / 2,
  };
}
