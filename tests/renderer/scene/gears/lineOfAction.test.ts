import { describe, expect, test } from "vitest";
import { planetSet, setOutlines } from "../../../../renderer/scene/gears/planetSet.ts";
import { shaftAngles } from "../../../../renderer/scene/gears/shaftAngles.ts";
import { at } from "../../../../shared/at.ts";
import { type Gear, NAMED_SETS, placed, sector, trio } from "./meshing.ts";

/** Contacts this near a tip circle are left out, where half the backlash could carry one of the flanks past it; modules. */
const MARGIN = 0.02;

/** Where flanks that stand square to a line cross it: distances along the line from its origin. */
function squareCrossings(
  gear: Gear,
  origin: readonly [number, number],
  along: readonly [number, number],
): number[] {
  const direction = Math.atan2(origin[1] - gear.y, origin[0] - gear.x);
  // Six modules of arc either way hold the whole path of contact.
  const near = sector(gear, direction, 6 / Math.hypot(origin[0] - gear.x, origin[1] - gear.y));
  const outline = placed(near, 0, -origin[0], -origin[1]);
  const found: number[] = [];
  for (let index = 0; index < outline.length; index += 2) {
    const next = (index + 2) % outline.length;
    const [x, y, u, v] = [
      at(outline, index),
      at(outline, index + 1),
      at(outline, next),
      at(outline, next + 1),
    ];
    const [before, after] = [along[0] * y - along[1] * x, along[0] * v - along[1] * u];
    if (before < 0 === after < 0) continue;
    const slope = (along[0] * (u - x) + along[1] * (v - y)) / Math.hypot(u - x, v - y);
    if (Math.abs(slope) > 0.01) continue;
    const share = before / (before - after);
    found.push(along[0] * (x + share * (u - x)) + along[1] * (y + share * (v - y)));
  }
  return found;
}

/** Gaps between the flanks of two gears on the line through the pitch point, within both tip circles. */
function gaps(first: Gear, second: Gear, pitch: readonly [number, number], direction: number): number[] {
  const along = [Math.cos(direction), Math.sin(direction)] as const;
  const reached = (t: number): boolean =>
    [first, second].every(({ x, y, internal }) => {
      const height =
        Math.hypot(pitch[0] + t * along[0] - x, pitch[1] + t * along[1] - y) -
        Math.hypot(pitch[0] - x, pitch[1] - y);
      // Standard tips stand one module off the pitch circle.
      return (internal ? -height : height) < 1 - MARGIN;
    });
  const others = squareCrossings(second, pitch, along);
  return squareCrossings(first, pitch, along)
    .filter(reached)
    .map((t) => Math.min(...others.map((other) => Math.abs(other - t))));
}

describe.each(NAMED_SETS)("the $name set on both lines of action of both meshes", (set) => {
  test.each([
    { backlash: 0, title: "touches" },
    { backlash: 0.04, title: "leaves half the backlash times cos α" },
  ])("with backlash $backlash $title, within 1e-6 modules", ({ backlash }) => {
    const gap = (backlash / 2) * Math.cos(Math.PI / 9);
    const places = planetSet(set);
    // A thousand points a flank keep the straight pieces within 1e-6 of the involute.
    const outlines = setOutlines(set, { backlash, flankPoints: 1000, arcPieces: 2 });
    for (let step = 0; step < 16; step += 1) {
      const place = places.planets[step % set.planets];
      if (place === undefined) throw new Error("no planet");
      const turn = (2 * Math.PI * step) / 16 / set.sunTeeth;
      const angles = shaftAngles(0.2 + turn, 0.2 - (turn * set.sunTeeth) / set.ringTeeth, set);
      const { sun, planet, ring } = trio(places, place, outlines, angles);
      const towards = place.position + angles.carrier;
      for (const [one, other, radius] of [
        [sun, planet, set.sunTeeth / 2],
        [planet, ring, set.ringTeeth / 2],
      ] as const) {
        const pitch = [radius * Math.cos(towards), radius * Math.sin(towards)] as const;
        for (const way of [-1, 1]) {
          const found = gaps(one, other, pitch, towards + way * (Math.PI / 2 + Math.PI / 9));
          // Contact ratios lie between 1 and 2 and the line meets a little less than the whole path here.
          expect(found.length).toBeGreaterThanOrEqual(1);
          for (const value of found) expect(Math.abs(value - gap)).toBeLessThan(1e-6);
        }
      }
    }
  });
});
