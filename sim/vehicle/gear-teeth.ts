/** Limits of standard involute gears: 20° pressure angle, addendum of one module, no profile shift. */

const PRESSURE_ANGLE = (20 * Math.PI) / 180;

/**
 * Fewest teeth, not rounded, that a rack cuts without undercut: 2 ha/sin² α, 17.097 (Bevan, The Theory of Machines,
 * ch. 10 Ex. 4, prints 18 for the next whole number).
 */
export const teethWithoutUndercut = (): number => 2 / Math.sin(PRESSURE_ANGLE) ** 2;

/** Fewest teeth accepted: the undercut of 17 teeth is far below any tolerance (common practice). */
export const LEAST_TEETH = Math.floor(teethWithoutUndercut());

/**
 * Left side of the condition that neighbouring planets clear each other, (Ns + Np) sin(180°/n), in teeth: it must
 * exceed Np + 2 (Elements of Metric Gear Technology, eq. 13-9).
 */
export const neighbourRoom = (set: {
  readonly sunTeeth: number;
  readonly planetTeeth: number;
  readonly planets: number;
}): number => (set.sunTeeth + set.planetTeeth) * Math.sin(Math.PI / set.planets);

/**
 * Fewest planet teeth, not rounded, that a ring's tips do not interfere with (involute interference of the internal
 * mesh): Np/Nr ≥ 1 − tan αa/tan α, cos αa = Nr cos α/(Nr − 2) (Elements of Metric Gear Technology, section 5.2 a).
 * The other kind, fouling of the tip corners, needs a ring with fewer than some ten teeth more than the planet: here
 * the difference is sun plus planet, so it cannot happen.
 * @param ringTeeth above 33, where the tips lie outside the base circle
 */
export function leastPlanetTeethInRing(ringTeeth: number): number {
  const tip = Math.acos(Math.min(1, (ringTeeth * Math.cos(PRESSURE_ANGLE)) / (ringTeeth - 2)));
  return ringTeeth * (1 - Math.tan(tip) / Math.tan(PRESSURE_ANGLE));
}
