import type { Teeth } from "../../../sim/drivetrain/gear-set.ts";

/** Free room of a post from the planets on both sides of it. */
const POST_GAP = 1;

/** Posts thinner than this are left out, thicker ones are not needed. */
const LEAST_POST = 1.2;
const MOST_POST = 3.4;

/**
 * Radius of the posts that stand midway between neighbouring planets on the circle of their pins and join the
 * carrier's plates; 0 where the planets leave no room.
 */
export function postRadius(teeth: Teeth, centreDistance: number, planetTip: number): number {
  if (teeth.planets < 2) return 0;
  const distance = 2 * centreDistance * Math.sin(Math.PI / teeth.planets / 2);
  const post = Math.min(MOST_POST, distance - planetTip - POST_GAP);
  return post < LEAST_POST ? 0 : post;
}
