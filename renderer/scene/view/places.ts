import type { PartId, SceneLook } from "../contract.ts";
import type { SceneBodies } from "../graph/bodies.ts";
import { TYRE } from "../parts/driveline.ts";
import { FLYWHEEL } from "../parts/engine.ts";
import { END_TURNS } from "../parts/machine.ts";
import { APART, Z } from "../parts/stations.ts";
import type { Drum, Vec3 } from "./camera.ts";
import type { Grip } from "./drag.ts";

type Shown = Pick<SceneLook, "extent" | "explode">;

/** Parts shown in an extent that have a name on the drawing. */
export function partsShown(bodies: SceneBodies, { extent }: Pick<SceneLook, "extent">): PartId[] {
  const set: PartId[] = ["sun", "planets", "carrier", "ring"];
  if (extent === "gear set") return set;
  const geared: PartId[] = bodies.driveline.reduction === null ? [] : ["reduction"];
  return [...set, "sun-machine", "output-machine", ...geared, "engine", "final-drive", "axle"];
}

/** The room the scene takes. */
export function drumsOf(bodies: SceneBodies, { extent, explode: e }: Shown): Drum[] {
  const m = bodies.measures;
  const axis = { x: 0, y: 0 };
  // The index stands over the ring, its shade lies below.
  const front = Z.ringFront + APART.ring * e;
  const index = { ...axis, y: m.ringOuter + 5.5, radius: 4.5, back: front, front };
  const shade = { ...index, y: -m.ringOuter - 5.5 };
  const ring = {
    ...axis,
    radius: m.ringOuter,
    back: Z.bellBack + APART.ring * e,
    front: Z.ringFront + APART.ring * e,
  };
  const plate = {
    ...axis,
    radius: m.plateOuter,
    back: 0,
    front: Z.frontPlateFront + APART.frontPlate * e,
  };
  const sun = { ...axis, radius: m.sunTip, back: 0, front: Z.carrierStubEnd + APART.sun * e };
  if (extent === "gear set") return [ring, sun, plate, index, shade];
  const { final, reduction } = bodies.driveline;
  const { sunMachine, outputMachine } = bodies;
  const shift = APART.outputGears * e;
  const wheel = { x: final.x, y: final.y, radius: TYRE };
  return [
    ring,
    { ...axis, radius: FLYWHEEL, back: Z.flywheel.back, front: Z.flywheel.front + APART.engine * e },
    { ...axis, radius: 24, back: Z.flywheel.back, front: Z.crankEnd + APART.engine * e },
    {
      ...axis,
      radius: sunMachine.outer,
      back: sunMachine.back,
      front: sunMachine.front + APART.sunStator * e,
    },
    {
      x: reduction?.x ?? 0,
      y: reduction?.y ?? 0,
      radius: outputMachine.outer,
      back: outputMachine.back - END_TURNS + APART.outputRotor * e,
      front: outputMachine.front,
    },
    {
      ...wheel,
      radius: final.place.wheelPitch + 3,
      back: Z.finalPinion.back + shift,
      front: Z.finalPinion.front + shift,
    },
    { ...wheel, back: Z.axleFront - 13 + shift, front: Z.axleFront + 14 + shift },
    { ...wheel, back: Z.axleBack - 13 + shift, front: Z.axleBack + 14 + shift },
  ];
}

/** The point of a part its label points at: fixed in space, on what faces the eye. */
export function anchorOf(bodies: SceneBodies, part: PartId, { extent, explode: e }: Shown): Vec3 {
  const m = bodies.measures;
  const { final, reduction } = bodies.driveline;
  const whole = extent === "drivetrain";
  const on = (radius: number, degrees: number, z: number): Vec3 => [
    radius * Math.cos((degrees * Math.PI) / 180),
    radius * Math.sin((degrees * Math.PI) / 180),
    z,
  ];
  switch (part) {
    case "sun":
      return whole
        ? on(m.sunShaft, -25, Z.sunMachine.back - 22 + APART.sun * e)
        : on(0.72 * m.sunRoot, 200, Z.sunFront + APART.sun * e);
    case "planets":
      return whole
        ? on(m.centreDistance, 48, Z.planetFront + APART.planets * e)
        : on(m.centreDistance + 0.55 * m.planetTip, 28, Z.planetFront + APART.planets * e);
    case "carrier":
      return whole
        ? on(m.plateOuter, 70, Z.frontPlateFront + APART.frontPlate * e)
        : on(m.centreDistance, 205, Z.frontPlateFront + APART.frontPlate * e);
    case "ring":
      return whole
        ? on(m.ringOuter, 100, 10 + APART.ring * e)
        : on(m.ringOuter - 1.5, 122, Z.ringFront + APART.ring * e);
    case "sun-machine":
      return on(
        bodies.sunMachine.outer,
        100,
        (Z.sunMachine.back + Z.sunMachine.front) / 2 + APART.sunStator * e,
      );
    case "output-machine":
      return shifted(reduction, on(bodies.outputMachine.outer, 96, -112 + APART.outputStator * e));
    case "reduction":
      return on(reduction?.place.wheelPitch ?? 0, 78, Z.reduction.front + APART.outputGears * e);
    case "engine":
      return on(FLYWHEEL, 112, Z.flywheel.front + APART.engine * e);
    case "final-drive":
      return shifted(
        final,
        on(final.place.wheelPitch * 0.9, -40, Z.finalPinion.front + APART.outputGears * e),
      );
    case "axle":
      return shifted(final, on(TYRE - 8, -62, Z.axleFront + 13 + APART.outputGears * e));
  }
}

const shifted = (axis: { readonly x: number; readonly y: number } | null, [x, y, z]: Vec3): Vec3 => [
  x + (axis?.x ?? 0),
  y + (axis?.y ?? 0),
  z,
];

/** The disc one grabs to turn a part about its axis. */
export function gripOf(bodies: SceneBodies, part: PartId, look: Shown): Grip {
  const m = bodies.measures;
  const e = look.explode;
  const { final, reduction } = bodies.driveline;
  const main = (radius: number, z: number): Grip => ({ middle: [0, 0, z], radius });
  switch (part) {
    case "sun":
      return main(m.sunTip, Z.sunFront + APART.sun * e);
    case "planets":
    case "carrier":
      return main(m.plateOuter + 6, Z.frontPlateFront + APART.frontPlate * e);
    case "ring":
      return main(m.ringOuter, Z.ringFront + APART.ring * e);
    case "sun-machine":
      return main(bodies.sunMachine.outer, Z.sunMachine.front + APART.sunRotor * e);
    case "output-machine":
      return {
        middle: [reduction?.x ?? 0, reduction?.y ?? 0, Z.outputMachine.front + APART.outputRotor * e],
        radius: bodies.outputMachine.outer,
      };
    case "reduction":
      return main(reduction?.place.wheelPitch ?? 1, Z.reduction.front + APART.outputGears * e);
    case "engine":
      return main(FLYWHEEL, Z.flywheel.front + APART.engine * e);
    case "final-drive":
      return {
        middle: [final.x, final.y, Z.finalPinion.front + APART.outputGears * e],
        radius: final.place.wheelPitch,
      };
    case "axle":
      return { middle: [final.x, final.y, Z.axleFront + 13 + APART.outputGears * e], radius: TYRE };
  }
}
