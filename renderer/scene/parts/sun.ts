import type { Outline } from "../gears/outline.ts";
import { type Body, joined } from "../shape/body.ts";
import { tube } from "../shape/round.ts";
import { radialMark } from "./marks.ts";
import type { SetMeasures } from "./measures.ts";
import { Z } from "./stations.ts";
import { gearBody } from "./toothed.ts";

/** The sun gear, its outline already turned into the zero position. */
export const sunBody = (outline: Outline, m: SetMeasures): Body =>
  gearBody({
    outline,
    module: m.module,
    root: m.sunRoot,
    bore: m.sunBore,
    boss: m.sunShaft + 0.8,
    back: Z.planetBack - 0.4,
    front: Z.sunFront,
    tone: "sun",
  });

/** The sun's mark, from the boss to the rim. */
export const sunMark = (m: SetMeasures): Body =>
  radialMark(m.sunShaft + 1.6, m.sunRoot - 0.4 * m.module, Z.sunFront);

/** The sun's hollow shaft: a stub, or all the way to its machine. */
export const sunShaftBody = (m: SetMeasures, long: boolean): Body =>
  joined(
    tube(
      {
        inner: m.sunBore,
        outer: m.sunShaft,
        back: Z.sunFront - 2,
        front: long ? Z.sunMachine.front + 8 : Z.sunStubEnd,
        chamfer: 0.8,
      },
      "sun",
    ),
  );
