import type { SetTeeth } from "../../../../renderer/scene/gears/assembly.ts";
import type { Outline } from "../../../../renderer/scene/gears/outline.ts";
import { radiusBounds } from "../../../../renderer/scene/gears/outline.ts";
import type { PlanetPlace, PlanetSet, SetOutlines } from "../../../../renderer/scene/gears/planetSet.ts";
import type { ShaftAngles } from "../../../../renderer/scene/gears/shaftAngles.ts";
import { at } from "../../../../shared/at.ts";
import { overlapArea } from "./polygonArea.ts";

/** An outline turned by `angle` and moved to (x, y). */
export function placed(outline: Outline, angle: number, x = 0, y = 0): Outline {
  const result = new Float64Array(outline.length);
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  for (let index = 0; index < outline.length; index += 2) {
    const [px, py] = [at(outline, index), at(outline, index + 1)];
    result[index] = x + px * cosine - py * sine;
    result[index + 1] = y + px * sine + py * cosine;
  }
  return result;
}

/** A gear in the plane: its outline, its turn and its axis. */
export interface Gear {
  readonly outline: Outline;
  readonly angle: number;
  readonly x: number;
  readonly y: number;
  /** Metal outside the outline. */
  readonly internal: boolean;
}

/** The part of a gear within ± `half` rad of `direction`, closed through the axis or, internal, round the outside. */
export function sector(gear: Gear, direction: number, half: number): Outline {
  const count = gear.outline.length / 2;
  const middle = ((direction - gear.angle) / (2 * Math.PI)) * count;
  const span = Math.min(count / 2 - 1, Math.ceil((half / (2 * Math.PI)) * count));
  const inner: number[] = [];
  const outer: number[] = [];
  for (let step = -span; step <= span; step += 1) {
    const index = (((Math.round(middle) + step) % count) + count) % count;
    const [x, y] = [at(gear.outline, 2 * index), at(gear.outline, 2 * index + 1)];
    inner.push(x, y);
    outer.unshift(1.2 * x, 1.2 * y);
  }
  // The metal of an internal gear lies on the other side, so its border is run the other way round.
  const border = gear.internal ? [...pairsReversed(inner), ...pairsReversed(outer)] : [...inner, 0, 0];
  return placed(Float64Array.from(border), gear.angle, gear.x, gear.y);
}

function pairsReversed(pairs: readonly number[]): number[] {
  const result: number[] = [];
  for (let index = pairs.length - 2; index >= 0; index -= 2)
    result.push(pairs[index] ?? 0, pairs[index + 1] ?? 0);
  return result;
}

/** Area in which the metal of two gears overlaps round their mesh. */
export function meshOverlap(first: Gear, second: Gear): number {
  const distance = Math.hypot(second.x - first.x, second.y - first.y);
  // From the common axis to the planet, external: from first to second; internal: the planet is `first`.
  const direction = second.internal
    ? Math.atan2(first.y - second.y, first.x - second.x)
    : Math.atan2(second.y - first.y, second.x - first.x);
  const one = radiusBounds(first.outline).greatest;
  const bounds = radiusBounds(second.outline);
  const two = second.internal ? bounds.least : bounds.greatest;
  const sense = second.internal ? -1 : 1;
  const margin = 1.1;
  const halfOne =
    margin * Math.acos((sense * (distance ** 2 + one ** 2 - two ** 2)) / (2 * distance * one)) + 3 / one;
  const halfTwo = margin * Math.acos((distance ** 2 + two ** 2 - one ** 2) / (2 * distance * two)) + 3 / two;
  const secondDirection = second.internal ? direction : direction + Math.PI;
  return overlapArea(sector(first, direction, halfOne), sector(second, secondDirection, halfTwo));
}

/** The three gears that meet at one planet. */
export interface Trio {
  readonly sun: Gear;
  readonly planet: Gear;
  readonly ring: Gear;
}

/** Sun, one planet and ring as they stand at the given shaft angles. */
export function trio(set: PlanetSet, place: PlanetPlace, outlines: SetOutlines, angles: ShaftAngles): Trio {
  const position = place.position + angles.carrier;
  return {
    sun: { outline: outlines.sun, angle: set.sunPhase + angles.sun, x: 0, y: 0, internal: false },
    planet: {
      outline: outlines.planet,
      angle: place.phase + angles.planet,
      x: set.centreDistance * Math.cos(position),
      y: set.centreDistance * Math.sin(position),
      internal: false,
    },
    ring: { outline: outlines.ring, angle: set.ringPhase + angles.ring, x: 0, y: 0, internal: true },
  };
}

/** Sets the tests walk: the demo set, the set of common practice, and one as a light van might have. */
export const NAMED_SETS: readonly (SetTeeth & { readonly name: string })[] = [
  { name: "demo", sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 4 },
  { name: "check", sunTeeth: 40, planetTeeth: 32, ringTeeth: 104, planets: 4 },
  { name: "van", sunTeeth: 30, planetTeeth: 22, ringTeeth: 74, planets: 4 },
];
