import type { Outline } from "../gears/outline.ts";
import { type Body, emptyBody, joined } from "../shape/body.ts";
import { tube } from "../shape/round.ts";
import { around, radialMark, spot } from "./marks.ts";
import type { SetMeasures } from "./measures.ts";
import { Z } from "./stations.ts";
import { gearBody } from "./toothed.ts";

/** One planet round its own axis, with the bearing it turns on. */
export function planetBody(outline: Outline, m: SetMeasures): Body {
  const gear = gearBody({
    outline,
    module: m.module,
    root: m.planetRoot,
    bore: m.bearing,
    boss: Math.min(m.bearing + 1.4, 0.8 * m.planetRoot),
    back: Z.planetBack,
    front: Z.planetFront,
    tone: "planet",
  });
  return joined(gear, bearing(m));
}

/** Needle bearing between pin and planet: a ring set back a little, with the ends of its needles. */
function bearing(m: SetMeasures): Body {
  const inner = m.pin * 1.04;
  const front = Z.planetFront - 0.5;
  const ring = tube({ inner, outer: m.bearing, back: Z.planetBack + 0.5, front, light: 0.9 }, "bearing");
  const middle = (inner + m.bearing) / 2;
  const needle = 0.3 * (m.bearing - inner);
  const count = Math.max(8, Math.floor((Math.PI * middle) / (1.35 * needle)));
  const needles =
    needle < 0.35
      ? emptyBody()
      : around(Math.min(14, count), (a) =>
          spot(middle * Math.cos(a), middle * Math.sin(a), needle, front, "magnet"),
        );
  return joined(ring, needles);
}

/** The mark of the one planet that carries one. */
export const planetMark = (m: SetMeasures, direction: number): Body =>
  radialMark(Math.min(m.bearing + 1.2, 0.78 * m.planetRoot), m.planetRoot, Z.planetFront, direction);
