import type { SceneLook } from "../contract.ts";
import { TYRE } from "../parts/driveline.ts";
import { APART, Z } from "../parts/stations.ts";
import type { SceneBodies } from "./bodies.ts";
import type { ShadeBox } from "./shade.ts";

/** Where the sheet lies under the scene, and what shades it. */
export interface Ground {
  readonly y: number;
  readonly boxes: readonly ShadeBox[];
}

/** Ground of a look: under the ring, or under the wheels. */
export function groundOf(bodies: SceneBodies, { extent, explode }: SceneLook): Ground {
  const { measures, driveline } = bodies;
  if (extent === "gear set") {
    const back = Z.bellBack + APART.ring * explode;
    const front = Z.ringFront + APART.sun * explode * 0.8;
    const depth = (front - back) / 2;
    const box = {
      x: 0,
      z: (front + back) / 2,
      width: 0.84 * measures.ringOuter,
      depth: depth + 10,
      soft: 0.55,
    };
    return { y: -measures.ringOuter - 5, boxes: [box] };
  }
  const { x, y } = driveline.final;
  const shift = APART.outputGears * explode;
  const wheels = [Z.axleFront, Z.axleBack].map((z) => ({ x, z: z + shift, width: 42, depth: 20, soft: 0.7 }));
  const back = Z.outputMachine.back + APART.outputRotor * explode;
  const front = Z.flywheel.front + APART.engine * explode;
  const main = { x: 0, z: (front + back) / 2, width: 62, depth: (front - back) / 2 + 20, soft: 0.8 };
  return { y: y - TYRE - 1, boxes: [...wheels, main] };
}
