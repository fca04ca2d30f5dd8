import { Vector2, Vector3 } from "three";
import { metalTable, type Palette, type Rgb } from "../palette.ts";
import { TONES } from "../tones.ts";
import type { Sector } from "../view/cut.ts";

/** Classes of cut, class 0 included. */
export const CUTS = 4;

/** Colours a line can have. Edges of paint marks go when the marks go. */
export const LINE_COLOURS = ["edge", "faint", "ink", "mark", "sun", "carrier", "ring"] as const;

/** One of {@link LINE_COLOURS}. */
export type LineColour = (typeof LINE_COLOURS)[number];

/** Numbers of a class of cut, as the shaders want them. */
const CUT_NUMBERS = 8;

/** No cut: a cosine above 1 is met by no direction. */
const NO_CUT = 2;

/**
 * Values that all materials of a scene share: one object, so that a change reaches every one of them. Lists are flat, as
 * they are given to the graphics library anew for each material and frame.
 */
export function sharedUniforms() {
  return {
    metals: { value: new Float32Array(3 * 3 * TONES.length) },
    /** In the order of {@link LINE_COLOURS}. */
    lineColours: { value: new Float32Array(3 * LINE_COLOURS.length) },
    /** Of each class: axis x, y, direction of the middle x, y; then cosine of half its angle, floor, nothing, nothing. */
    cuts: { value: noCuts() },
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

/** Writes the sector of a class of cut. */
export function setCut({ cuts }: SharedUniforms, cutClass: number, sector: Sector): void {
  const { x, y, middle, half, floor } = sector;
  const cosine = half > 0 ? Math.cos(half) : NO_CUT;
  cuts.value.set([x, y, Math.cos(middle), Math.sin(middle), cosine, floor, 0, 0], CUT_NUMBERS * cutClass);
}

function noCuts(): Float32Array {
  const cuts = new Float32Array(CUT_NUMBERS * CUTS);
  for (let i = 0; i < CUTS; i += 1) cuts.set([0, 0, 1, 0, NO_CUT, 0, 0, 0], CUT_NUMBERS * i);
  return cuts;
}

/** Writes a palette's values. */
export function applyPalette(uniforms: SharedUniforms, palette: Palette): void {
  metalTable(palette).forEach((colour, i) => {
    uniforms.metals.value.set(colour, 3 * i);
  });
  LINE_COLOURS.forEach((name, i) => {
    uniforms.lineColours.value.set(lineColour(palette, name), 3 * i);
  });
  uniforms.hatchPitch.value = palette.hatchPitch;
  uniforms.hatchWidth.value = palette.hatchWidth;
}

function lineColour(palette: Palette, name: LineColour): Rgb {
  if (name === "sun" || name === "carrier" || name === "ring") return palette.strokes[name];
  return name === "mark" ? palette.edge : palette[name];
}
