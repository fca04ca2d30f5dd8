import { polar, reversed } from "../gears/outline.ts";
import { addBody, type Body, emptyBody, joined } from "../shape/body.ts";
import { circle, polarOutline, shaped } from "../shape/loop.ts";
import { patch, plate } from "../shape/plate.ts";
import { tube } from "../shape/round.ts";
import { sweep } from "../shape/sweep.ts";
import { radialMark } from "./marks.ts";
import type { SetMeasures } from "./measures.ts";
import { Z } from "./stations.ts";

/** Directions of the planets' pins when the carrier stands at zero; the last one is the planet left open. */
export type PinDirections = readonly number[];

/** Half the angle that is left open over one planet, rad: its teeth just clear the plate's ends. */
export const openHalfAngle = (m: SetMeasures): number =>
  Math.min(0.9, Math.asin(Math.min(0.85, (1.04 * m.planetTip) / m.centreDistance)) * 0.94 + 0.06);

/** Back plate with arms, the pins on it, and the posts that carry the front plate. */
export function carrierBackBody(m: SetMeasures, pins: PinDirections): Body {
  const body = joined(
    spider(m, pins),
    tube(
      { inner: 0, outer: m.sunBore * 1.3, back: Z.carrierPlateBack - 1.6, front: Z.carrierPlateFront + 0.9 },
      "carrier",
    ),
  );
  const pin = tube(
    { inner: 0, outer: m.pin, back: Z.carrierPlateFront, front: Z.planetFront + 2.6, chamfer: 0.5 },
    "carrier",
  );
  for (const direction of pins) addBody(body, pin, polar(m.centreDistance, direction));
  if (m.post > 0) {
    const post = tube(
      { inner: 0, outer: m.post, back: Z.carrierPlateFront, front: Z.frontPlateBack, light: 0.8 },
      "carrier",
    );
    for (const at of betweenPins(pins)) addBody(body, post, polar(m.centreDistance, at));
  }
  return body;
}

/** Directions midway between neighbouring pins. */
export const betweenPins = (pins: PinDirections): number[] =>
  pins.map((direction) => direction + Math.PI / pins.length);

function spider(m: SetMeasures, pins: PinDirections): Body {
  const first = pins[0] ?? 0;
  const count = pins.length;
  const waist = Math.max(m.sunBore * 1.7, m.plateInner - 1);
  const reach = m.plateOuter + 1;
  const outline = polarOutline(Math.max(144, 24 * count), (angle) => {
    const near = 0.5 + 0.5 * Math.cos(count * (angle - first));
    const arm = near * near * (3 - 2 * near);
    return waist + (reach - waist) * arm;
  });
  const edge = shaped(outline);
  const light = { ...edge, light: [0.6] };
  return sweep(
    [
      { loop: light, z: Z.carrierPlateBack },
      { loop: light, z: Z.carrierPlateFront },
      { loop: circle(m.sunBore * 1.3, 0.5), z: Z.carrierPlateFront, weight: 0.6 },
      { loop: circle(m.sunBore, 0.5), z: Z.carrierPlateFront, weight: 0 },
      { loop: circle(m.sunBore, 0.5), z: Z.carrierPlateBack, weight: 0 },
    ],
    { tone: "carrier" },
  );
}

/** Front plate: an annulus over the pins, left open over the last planet, with the ends of pins and posts. */
export function frontPlateBody(m: SetMeasures, pins: PinDirections): Body {
  const open = pins.at(-1) ?? 0;
  const half = openHalfAngle(m);
  const body = plate(
    { outline: openAnnulus(m.plateInner, m.plateOuter, open + half, open + 2 * Math.PI - half), holes: [] },
    { back: Z.frontPlateBack, front: Z.frontPlateFront, tone: "carrier", weight: 1.2, band: true },
  );
  for (const direction of pins.slice(0, -1)) addBody(body, head(m.pin), polar(m.centreDistance, direction));
  const inside = betweenPins(pins).filter((at) => clearOfOpening(at, open, half, m) && !underMark(at));
  if (m.post > 0) {
    for (const at of inside) addBody(body, screw(0.52 * m.post), polar(m.centreDistance, at));
  }
  return body;
}

/** The mark stands at 12 o'clock. */
const underMark = (at: number): boolean => Math.sin(at) > 0.99;

function clearOfOpening(at: number, open: number, half: number, m: SetMeasures): boolean {
  const apart = Math.abs(Math.atan2(Math.sin(at - open), Math.cos(at - open)));
  return apart > half + (m.post + 0.6) / m.centreDistance;
}

/** Annulus from one angle on to another, counter-clockwise, with softened corners. */
export function openAnnulus(inner: number, outer: number, from: number, to: number): Float64Array {
  const pieces = Math.max(12, Math.round((to - from) * 22));
  const points: number[] = [];
  const soft = Math.min(1.6, (outer - inner) / 6);
  const arc = (radius: number, start: number, end: number): void => {
    for (let i = 0; i <= pieces; i += 1) {
      const { x, y } = polar(radius, start + ((end - start) * i) / pieces);
      points.push(x, y);
    }
  };
  const corner = (radius: number, angle: number): void => {
    const { x, y } = polar(radius, angle);
    points.push(x, y);
  };
  corner(outer - soft, from);
  corner(outer - 0.29 * soft, from + (0.29 * soft) / outer);
  arc(outer, from + soft / outer, to - soft / outer);
  corner(outer - 0.29 * soft, to - (0.29 * soft) / outer);
  corner(outer - soft, to);
  corner(inner + soft, to);
  corner(inner + 0.29 * soft, to - (0.29 * soft) / inner);
  arc(inner, to - soft / inner, from + soft / inner);
  corner(inner + 0.29 * soft, from + (0.29 * soft) / inner);
  corner(inner + soft, from);
  return Float64Array.from(points);
}

/** End of a pin in the plate: a shallow head. */
const head = (radius: number): Body =>
  tube({ inner: 0, outer: radius, back: Z.frontPlateFront, front: Z.frontPlateFront + 0.5 }, "carrier");

/** Screw in a post: a ring on the plate. */
function screw(radius: number): Body {
  const circleLine = polarOutline(20, () => radius);
  const socket = polarOutline(6, () => 0.5 * radius);
  return joined(
    patch(
      { outline: circleLine, holes: [reversed(socket)] },
      { front: Z.frontPlateFront + 0.1, tone: "carrier", light: 0.95, weight: 0.7 },
    ),
    patch({ outline: socket, holes: [] }, { front: Z.frontPlateFront + 0.1, tone: "key", weight: 0 }),
  );
}

/** The carrier's mark, across the front plate. */
export const carrierMark = (m: SetMeasures): Body =>
  radialMark(m.plateInner + 0.9, m.plateOuter - 0.9, Z.frontPlateFront);

/** The carrier's shaft inside the sun's: a keyed stub, or all the way to the engine. */
export function carrierShaftBody(m: SetMeasures, long: boolean): Body {
  const front = long ? Z.flywheel.back + 2 : Z.carrierStubEnd;
  const shaft = tube(
    { inner: 0, outer: m.carrierShaft, back: Z.carrierPlateFront, front, chamfer: 0.7 },
    "carrier",
  );
  if (long) return shaft;
  const [half, deep] = [0.2 * m.carrierShaft, 0.45 * m.carrierShaft];
  const top = m.carrierShaft - 0.7;
  const slot = Float64Array.from([-half, top - deep, half, top - deep, half, top, -half, top]);
  return joined(
    shaft,
    patch({ outline: slot, holes: [] }, { front: front + 0.1, tone: "key", weight: 1 }),
    emptyBody(),
  );
}
