import { type Basis, type Framing, projected, type Vec3 } from "./camera.ts";

/** A disc that can be grabbed: middle of its face and how far out it reaches. */
export interface Grip {
  readonly middle: Vec3;
  readonly radius: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Nearer to the axis than this share of the radius a drag has no clear direction. */
const DEAD_SHARE = 0.04;

/** Pointers this far outside the disc still hold it. */
const REACH = 1.35;

/** Below this the face is seen so much from its edge that a drag turns it as one rolls a drum. */
const EDGE_ON = 0.25;

/**
 * Turn of a disc when its face is dragged from one place of the canvas to another, rad, positive counter-clockwise
 * from the front, at most half a turn; null when the drag starts beside the disc or on its axis.
 */
export function dragTurn(
  grip: Grip,
  view: {
    readonly basis: Basis;
    readonly framing: Framing;
    readonly size: { width: number; height: number };
  },
  from: Spot,
  to: Spot,
): number | null {
  const { basis, framing, size } = view;
  const centre = projected(grip.middle, basis, framing, size);
  const scale = framing.pixelsPerUnit;
  const facing = basis.toEye[2];
  if (Math.abs(facing) < EDGE_ON) return rolled(grip, basis, scale, centre, from, to);
  const start = onFace(basis, (from.x - centre.x) / scale, (centre.y - from.y) / scale);
  const end = onFace(basis, (to.x - centre.x) / scale, (centre.y - to.y) / scale);
  const far = Math.hypot(start.x, start.y);
  if (far > REACH * grip.radius || far < DEAD_SHARE * grip.radius) return null;
  if (Math.hypot(end.x, end.y) < DEAD_SHARE * grip.radius) return null;
  return Math.atan2(start.x * end.y - start.y * end.x, start.x * end.x + start.y * end.y);
}

/** The place in the plane of the face behind a place of the picture, both from the disc's middle. */
function onFace({ right, up, toEye }: Basis, u: number, v: number): Spot {
  const depth = -(right[2] * u + up[2] * v) / toEye[2];
  return { x: right[0] * u + up[0] * v + toEye[0] * depth, y: right[1] * u + up[1] * v + toEye[1] * depth };
}

/** Seen from its edge: the visible side of the drum follows the pointer across the axis. */
function rolled(grip: Grip, basis: Basis, scale: number, centre: Spot, from: Spot, to: Spot): number | null {
  const length = Math.hypot(basis.right[2], basis.up[2]) || 1;
  // Direction across the axis on the canvas, y downward.
  const across = { x: basis.up[2] / length, y: basis.right[2] / length };
  const off = (from.x - centre.x) * across.x + (from.y - centre.y) * across.y;
  if (Math.abs(off) / scale > REACH * grip.radius) return null;
  const moved = (to.x - from.x) * across.x + (to.y - from.y) * across.y;
  return moved / scale / grip.radius;
}
