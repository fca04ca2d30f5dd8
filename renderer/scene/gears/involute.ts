/** inv α = tan α − α, rad: how far an involute has turned from its start to the point with profile angle α. */
export const involute = (angle: number): number => Math.tan(angle) - angle;

/**
 * Profile angle of the involute of base radius `base` at radius `radius`, rad: cos α = base/radius.
 * @throws RangeError inside the base circle, where there is no involute
 */
export function profileAngle(radius: number, base: number): number {
  if (!(radius >= base)) throw new RangeError(`radius ${radius} lies inside the base circle ${base}`);
  return Math.acos(base / radius);
}

/** Length of the line of action from its touching point on the base circle out to `radius`; 0 inside the base circle. */
export const tangentLength = (radius: number, base: number): number =>
  Math.sqrt(Math.max(0, (radius - base) * (radius + base)));
