import type { Tone } from "../tones.ts";
import type { Body } from "./body.ts";
import { circle } from "./loop.ts";
import { type Station, type SweepStyle, sweep } from "./sweep.ts";

/** A hollow cylinder. */
export interface Tube {
  readonly inner: number;
  readonly outer: number;
  readonly back: number;
  readonly front: number;
  /** Cut off the front corner, 0 for none. */
  readonly chamfer?: number;
  readonly light?: number;
}

/** Smallest bore: a full shaft is a tube round almost nothing, closed to the eye. */
const FULL = 0.02;

/** A tube, or a shaft where the inner radius is 0. */
export function tube(given: Tube, tone: Tone, style: Omit<SweepStyle, "tone"> = {}): Body {
  const { outer, back, front, chamfer = 0, light = 1 } = given;
  const inner = Math.max(FULL, given.inner);
  const full = given.inner === 0;
  const bore = full ? { weight: 0 } : {};
  const stations: Station[] = [
    { loop: circle(outer, light), z: back },
    ...(chamfer > 0
      ? [
          { loop: circle(outer, light), z: front - chamfer, weight: 0.6 },
          { loop: circle(outer - chamfer, light), z: front },
        ]
      : [{ loop: circle(outer, light), z: front }]),
    { loop: circle(inner, full ? light : 0.55 * light), z: front, ...bore },
    { loop: circle(inner, 0.4 * light), z: back, ...bore },
  ];
  return sweep(stations, { tone, ...style });
}

/** A body of revolution from points (radius, z, light, weight of the edge) round its section, in the order of {@link sweep}. */
export const revolved = (
  section: readonly (readonly [radius: number, z: number, light?: number, weight?: number])[],
  style: SweepStyle,
): Body =>
  sweep(
    section.map(([radius, z, light, weight]) => ({
      loop: circle(Math.max(FULL, radius), light ?? 1),
      z,
      ...(weight === undefined ? {} : { weight }),
    })),
    style,
  );
