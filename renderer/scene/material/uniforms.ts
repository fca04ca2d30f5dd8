import { Vector2, Vector3 } from "three";
import { metalTable, type Palette, type Rgb } from "../palette.ts";
import { TONES } from "../tones.ts";

/** Classes of cut, class 0 included. */
export const CUTS = 4;

/** Colours a line can have. Edges of paint marks go when the marks go. */
export const LINE_COLOURS = ["edge", "faint", "ink", "mark", "sun", "carrier", "ring"] as const;

/** One of {@link LINE_COLOURS}. */
export type LineColour = (typeof LINE_COLOURS)[number];

const vectors = (count: number): Vector3[] => Array.from({ length: count }, () => new Vector3());

/** Values that all materials of a scene share: one object, so that a change reaches every one of them. */
export function sharedUniforms() {
  return {
    metals: { value: vectors(3 * TONES.length) },
    /** In the order of {@link LINE_COLOURS}. */
    lineColours: { value: vectors(LINE_COLOURS.length) },
    cutAxis: { value: Array.from({ length: CUTS }, () => new Vector2()) },
    cutMiddle: { value: Array.from({ length: CUTS }, () => new Vector2(1, 0)) },
    cutCosine: { value: [2, 2, 2, 2] },
    cutFloor: { value: [0, 0, 0, 0] },
    /** Part under the pointer, −1 for none. */
    hovered: { value: -1 },
    /** 1 while paint marks are shown. */
    marks: { value: 1 },
    /** Device pixels of the canvas. */
    viewport: { value: new Vector2(1, 1) },
    /** Device pixels a CSS pixel, times the palette's weight. */
    lineScale: { value: 1 },
    /** Device pixels a unit of length. */
    pixelsPerUnit: { value: 1 },
    /** Half the height of what is drawn, units: the light is as far away as fits the scene. */
    reach: { value: 60 },
    /** Middle of what is drawn, seen from the camera. */
    middle: { value: new Vector3() },
    hatchPitch: { value: 6 },
    hatchWidth: { value: 1.1 },
  };
}

/** The object of {@link sharedUniforms}. */
export type SharedUniforms = ReturnType<typeof sharedUniforms>;

const setRgb = (target: Vector3, [r, g, b]: Rgb): void => {
  target.set(r, g, b);
};

/** Writes a palette's values. */
export function applyPalette(uniforms: SharedUniforms, palette: Palette): void {
  metalTable(palette).forEach((colour, i) => {
    const target = uniforms.metals.value[i];
    if (target !== undefined) setRgb(target, colour);
  });
  LINE_COLOURS.forEach((name, i) => {
    const target = uniforms.lineColours.value[i];
    if (target !== undefined) setRgb(target, lineColour(palette, name));
  });
  uniforms.hatchPitch.value = palette.hatchPitch;
  uniforms.hatchWidth.value = palette.hatchWidth;
}

function lineColour(palette: Palette, name: LineColour): Rgb {
  if (name === "sun" || name === "carrier" || name === "ring") return palette.strokes[name];
  return name === "mark" ? palette.edge : palette[name];
}
