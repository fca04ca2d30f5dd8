import type { Outline } from "../gears/outline.ts";
import type { Body } from "../shape/body.ts";
import { circle, evenly, type Loop, offset, shaped } from "../shape/loop.ts";
import { sweep } from "../shape/sweep.ts";
import { radialMark } from "./marks.ts";
import type { SetMeasures } from "./measures.ts";
import { Z } from "./stations.ts";
import { GROOVE } from "./toothed.ts";

/** Corner cut off outside and at the teeth. */
export const RING_CHAMFER = 0.9;
const toothChamfer = (m: SetMeasures): number => 0.22 * m.module;

const teethLoop = (outline: Outline): Loop => shaped(outline, true, GROOVE);

/** The ring with its bell: rim, inner teeth, back wall and hollow hub, one turned part. */
export function ringBody(outline: Outline, m: SetMeasures): Body {
  const teeth = teethLoop(outline);
  const [outer, hub] = [m.ringOuter, m.ringShaft];
  const cut = toothChamfer(m);
  const dim = { ...teeth, light: teeth.light.map((light) => 0.62 * light) };
  return sweep(
    [
      { loop: circle(outer - 2), z: Z.bellBack, weight: 1.2 },
      { loop: circle(outer), z: Z.bellBack + 2, weight: 0.7 },
      { loop: circle(outer), z: Z.ringFront - RING_CHAMFER, weight: 0.7 },
      { loop: circle(outer - RING_CHAMFER), z: Z.ringFront, weight: 1.5 },
      { loop: circle(m.ringRoot + 2.1), z: Z.ringFront, weight: 0.5 },
      { loop: evenly(offset(teeth, cut), 1), z: Z.ringFront, weight: 1 },
      { loop: teeth, z: Z.ringFront - cut, weight: 0 },
      { loop: dim, z: Z.ringBack, weight: 1, onward: evenly(teeth, 0.5) },
      { loop: circle(0.8 * m.ringRoot, 0.5), z: Z.ringBack, weight: 0 },
      { loop: circle(hub + 4, 0.42), z: Z.ringBack, weight: 0.6 },
      { loop: circle(hub + 3, 0.42), z: Z.ringBack + 1, weight: 0.6 },
      { loop: circle(hub - 2.6, 0.4), z: Z.ringBack + 1 },
      { loop: circle(hub - 2.6, 0.3), z: Z.bellBack - 9 },
      { loop: circle(hub, 0.9), z: Z.bellBack - 9 },
      { loop: circle(hub, 0.8), z: Z.bellBack },
    ],
    { tone: "ring", contour: 1.5 },
  );
}

/** The ring's mark, on the rim. */
export const ringMark = (m: SetMeasures): Body =>
  radialMark(m.ringRoot + 0.5, m.ringOuter - RING_CHAMFER - 0.4, Z.ringFront);

/** The floor of a sector cut out of the ring: from the teeth to the outside, to be laid at the depth of the cut. */
export const ringFloor = (outline: Outline, m: SetMeasures): readonly [outer: Loop, inner: Loop] => [
  circle(m.ringOuter),
  teethLoop(outline),
];
