import type { CameraPreset, SceneLook } from "../contract.ts";

/** Where the eye is: turned to the left of the front by yaw, raised by pitch, rad. */
export interface Eye {
  readonly yaw: number;
  readonly pitch: number;
  /** Magnification over the whole scene fitting the canvas. */
  readonly zoom: number;
}

/** A place or direction. */
export type Vec3 = readonly [number, number, number];

const RADIANS = Math.PI / 180;

/** Limits that keep the scene readable. */
export const ZOOM_LIMITS = [0.6, 8] as const;
export const PITCH_LIMIT = 88 * RADIANS;

/** Turn for a drag of one CSS pixel. */
const TURN_PER_PIXEL = 0.0065;

/** Drawing three-quarter view of the set; the drivetrain is seen from its other side, engine at the left. */
const THREE_QUARTER = {
  "gear set": { yaw: 24 * RADIANS, pitch: 17 * RADIANS },
  drivetrain: { yaw: -57 * RADIANS, pitch: 17 * RADIANS },
} as const;

/** Where a preset looks from. */
export function eyeOf(preset: CameraPreset, extent: SceneLook["extent"]): Eye {
  const side = extent === "drivetrain" ? -1 : 1;
  switch (preset) {
    case "three-quarter":
      return { ...THREE_QUARTER[extent], zoom: 1 };
    case "front":
      return { yaw: 0, pitch: 0, zoom: 1 };
    case "side":
      return { yaw: side * 90 * RADIANS, pitch: 0, zoom: 1 };
    case "top":
      return { yaw: side * 90 * RADIANS, pitch: PITCH_LIMIT, zoom: 1 };
  }
}

/** The eye after a drag and a zoom, kept within limits. Dragging to the right turns the scene to the right. */
export function orbited({ yaw, pitch, zoom }: Eye, dx: number, dy: number, factor: number): Eye {
  const clamp = (value: number, least: number, most: number): number =>
    Math.min(most, Math.max(least, value));
  const scale = Number.isFinite(factor) && factor > 0 ? factor : 1;
  return {
    yaw: yaw + dx * TURN_PER_PIXEL,
    pitch: clamp(pitch + dy * TURN_PER_PIXEL, -PITCH_LIMIT, PITCH_LIMIT),
    zoom: clamp(zoom * scale, ...ZOOM_LIMITS),
  };
}

/** Right, up and toward the eye, as seen. */
export interface Basis {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toEye: Vec3;
}

/** Directions of the picture in space. */
export function basisOf({ yaw, pitch }: Pick<Eye, "yaw" | "pitch">): Basis {
  const [cy, sy, cp, sp] = [Math.cos(yaw), Math.sin(yaw), Math.cos(pitch), Math.sin(pitch)];
  return { right: [cy, 0, sy], up: [sy * sp, cp, -cy * sp], toEye: [-sy * cp, sp, cy * cp] };
}

/** Scalar product. */
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** A cylinder along z, for finding out how much room a scene takes. */
export interface Drum {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly back: number;
  readonly front: number;
}

/** Bounds of the picture in units: along right and up. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Exact bounds of drums seen from an eye. */
export function boundsOf(drums: readonly Drum[], basis: Basis): Bounds {
  const spans = ([...drums] as readonly Drum[]).flatMap(({ x, y, radius, back, front }) =>
    [back, front].map((z) => {
      const reachRight = radius * Math.hypot(basis.right[0], basis.right[1]);
      const reachUp = radius * Math.hypot(basis.up[0], basis.up[1]);
      const [u, v] = [dot(basis.right, [x, y, z]), dot(basis.up, [x, y, z])];
      return { left: u - reachRight, right: u + reachRight, bottom: v - reachUp, top: v + reachUp };
    }),
  );
  return {
    left: Math.min(...spans.map(({ left }) => left)),
    right: Math.max(...spans.map(({ right }) => right)),
    bottom: Math.min(...spans.map(({ bottom }) => bottom)),
    top: Math.max(...spans.map(({ top }) => top)),
  };
}

/** Share of the canvas left free round the scene, on both sides together. */
const MARGIN = 0.07;

/** The picture: its middle in units along right and up, and CSS pixels a unit. */
export interface Framing {
  readonly u: number;
  readonly v: number;
  readonly pixelsPerUnit: number;
}

/** Fits bounds into a canvas. */
export function framed(bounds: Bounds, width: number, height: number, zoom: number): Framing {
  const wide = Math.max(1e-6, bounds.right - bounds.left);
  const high = Math.max(1e-6, bounds.top - bounds.bottom);
  const fit = Math.min(width / wide, height / high) * (1 - MARGIN);
  return {
    u: (bounds.left + bounds.right) / 2,
    v: (bounds.bottom + bounds.top) / 2,
    pixelsPerUnit: fit * zoom,
  };
}

/** Where a place of the scene falls on the canvas, CSS pixels from its upper left corner. */
export function projected(
  place: Vec3,
  basis: Basis,
  framing: Framing,
  size: { readonly width: number; readonly height: number },
): { readonly x: number; readonly y: number } {
  return {
    x: size.width / 2 + (dot(basis.right, place) - framing.u) * framing.pixelsPerUnit,
    y: size.height / 2 - (dot(basis.up, place) - framing.v) * framing.pixelsPerUnit,
  };
}
