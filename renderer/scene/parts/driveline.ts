import { hasReduction, zeroTurn } from "../angles.ts";
import type { SceneModel } from "../contract.ts";
import { polar } from "../gears/outline.ts";
import { addBody, type Body, emptyBody, joined } from "../shape/body.ts";
import { revolved, tube } from "../shape/round.ts";
import { around, radialMark, spot } from "./marks.ts";
import type { SetMeasures } from "./measures.ts";
import { meshPhase, type PairPlace, placePair, type TeethPair, teethForRatio } from "./pair.ts";
import { Z } from "./stations.ts";
import { wheelBody } from "./toothed.ts";

/** Directions of the other two axes from the main axis, rad: machine up toward the eye, axle down and behind. */
const MACHINE_DIRECTION = (24 * Math.PI) / 180;
const AXLE_DIRECTION = (218 * Math.PI) / 180;

/** Pitch radii of the larger gears. */
const REDUCTION_WHEEL = 42;
const FINAL_WHEEL = 60;

/** A gear pair in its place: which axis the second gear turns about. */
interface Placed {
  readonly teeth: TeethPair;
  readonly place: PairPlace;
  readonly x: number;
  readonly y: number;
}

/** The gear pairs after the ring, and where the other axes lie. */
export interface Driveline {
  readonly final: Placed;
  /** null: the machine sits on the ring's shaft. */
  readonly reduction: Placed | null;
  readonly shaft: number;
}

/** Sizes and places both gear pairs. */
export function drivelineOf(model: SceneModel, m: SetMeasures): Driveline {
  const shaft = Math.min(9, m.ringShaft - 2);
  const finalTeeth = teethForRatio(model.finalDrive);
  const finalPlace = placePair(finalTeeth, FINAL_WHEEL, shaft + 4);
  const final = put(finalTeeth, finalPlace, AXLE_DIRECTION);
  if (!hasReduction(model)) return { final, reduction: null, shaft };
  const teeth = teethForRatio(model.outputReduction);
  return { final, reduction: put(teeth, placePair(teeth, REDUCTION_WHEEL, 5), MACHINE_DIRECTION), shaft };
}

const put = (teeth: TeethPair, place: PairPlace, direction: number): Placed => ({
  teeth,
  place,
  ...polar(place.centreDistance, direction),
});

/** What turns with the ring behind its bell: shaft, reduction wheel, final pinion. */
export function outputShaftBody(model: SceneModel, line: Driveline, m: SetMeasures): Body {
  const zero = zeroTurn(model.teeth);
  const { final, reduction, shaft } = line;
  const end = reduction === null ? Z.outputMachine.back - 16 : Z.ringShaftEnd;
  const body = tube({ inner: 0, outer: shaft, back: end, front: Z.bellBack - 2 }, "ring", { contour: 1.2 });
  const pinion = { module: final.place.module, bore: shaft, ...Z.finalPinion, tone: "ring" as const };
  addBody(body, wheelBody(final.teeth.pinion, pinion), { turn: zero });
  addBody(
    body,
    tube({ inner: shaft, outer: m.ringShaft, back: Z.bellBack - 15, front: Z.bellBack - 8 }, "ring"),
  );
  return body;
}

/** The reduction's wheel on the ring's shaft; empty without one. */
export function reductionWheelBody(model: SceneModel, line: Driveline): Body {
  if (line.reduction === null) return emptyBody();
  const { teeth, place } = line.reduction;
  const wheel = wheelBody(teeth.wheel, {
    module: place.module,
    bore: line.shaft,
    ...Z.reduction,
    tone: "ring",
  });
  const body = emptyBody();
  addBody(body, wheel, { turn: zeroTurn(model.teeth) });
  return body;
}

/** The reduction's pinion with the machine's shaft, round the machine's own axis. */
export function reductionPinionBody(model: SceneModel, line: Driveline, machineShaft: number): Body {
  if (line.reduction === null) return emptyBody();
  const { teeth, place } = line.reduction;
  const root = (place.module * (teeth.pinion - 2.5)) / 2;
  const shaft = Math.min(machineShaft, root - 0.6);
  const turn = meshPhase(teeth.wheel, teeth.pinion, MACHINE_DIRECTION, zeroTurn(model.teeth));
  const body = tube(
    { inner: 0, outer: shaft, back: Z.outputMachine.back - 16, front: Z.reduction.front + 8, chamfer: 0.6 },
    "ring",
  );
  const gear = wheelBody(teeth.pinion, { module: place.module, bore: shaft, ...Z.reduction, tone: "ring" });
  addBody(body, gear, { turn });
  return body;
}

/** Final drive wheel round the axle. */
export function finalWheelBody(model: SceneModel, line: Driveline): Body {
  const { teeth, place } = line.final;
  const turn = meshPhase(teeth.pinion, teeth.wheel, AXLE_DIRECTION, zeroTurn(model.teeth));
  const body = emptyBody();
  const wheel = wheelBody(teeth.wheel, {
    module: place.module,
    bore: AXLE_SHAFT,
    ...Z.finalPinion,
    tone: "ring",
  });
  addBody(body, wheel, { turn });
  const openings = Math.min(5.4, place.wheelPitch * 0.1);
  const circle = place.wheelPitch * 0.56;
  addBody(
    body,
    around(6, (a) =>
      spot(circle * Math.cos(a), circle * Math.sin(a), openings, Z.finalPinion.front - 1.1, "magnet"),
    ),
    { turn },
  );
  return body;
}

const AXLE_SHAFT = 6.5;
/** Outside of the wheels, which are not to scale. */
export const TYRE = 61;
const RIM = 42;

/** Axle shaft with a wheel at each end, the front one facing the eye. */
export function axleBody(): Body {
  const body = tube({ inner: 0, outer: AXLE_SHAFT, back: Z.axleBack, front: Z.axleFront }, "ring", {
    contour: 1.2,
  });
  addBody(body, tube({ inner: AXLE_SHAFT, outer: 13, back: -67, front: -41, chamfer: 0.8 }, "ring"));
  addBody(body, wheel(), { z: Z.axleFront });
  addBody(body, wheel(), { z: Z.axleBack });
  return body;
}

/** The front wheel's mark, on its tyre. */
export const axleMark = (): Body => radialMark(RIM + 2, TYRE - 8, Z.axleFront + 13.2);

/** A wheel that is not to scale: tyre, disc with openings, hub and studs. */
function wheel(): Body {
  const tyre = revolved(
    [
      [TYRE - 6, -13],
      [TYRE - 1, -9],
      [TYRE, -5],
      [TYRE, 5],
      [TYRE - 1, 9],
      [TYRE - 6, 13],
      [RIM, 12, 0.8],
      [RIM, -12, 0.5],
    ],
    { tone: "tyre", contour: 1.5 },
  );
  const disc = revolved(
    [
      [RIM, -11],
      [RIM, 11],
      [RIM - 2.5, 11],
      [RIM - 5, 3, 0.7],
      [25, 7],
      [20, 4, 0.8],
      [9, 4],
      [9, 10],
      [AXLE_SHAFT, 10],
      [AXLE_SHAFT, -8, 0.4],
      [RIM - 5, -6, 0.5],
      [RIM - 2.5, -11, 0.8],
    ],
    { tone: "planet", contour: 1 },
  );
  return joined(
    tyre,
    disc,
    around(5, (a) => stud(14.5 * Math.cos(a), 14.5 * Math.sin(a))),
    around(10, (a) => spot(31 * Math.cos(a), 31 * Math.sin(a), 3.2, 5.6, "magnet")),
  );
}

function stud(x: number, y: number): Body {
  const body = emptyBody();
  addBody(body, tube({ inner: 0, outer: 1.9, back: 3, front: 7, chamfer: 0.5 }, "bearing"), { x, y });
  return body;
}
