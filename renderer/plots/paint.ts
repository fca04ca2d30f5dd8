import type { Curve, Dash } from "./registry.ts";

/** Colours of the page as they are now. */
export const colour = (name: string): string =>
  getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();

const DASHES: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  long: [9, 4],
  short: [2, 3],
  grey: [4, 3],
};

export const dashOf = (dash: Dash): number[] => [...DASHES[dash]];

/** Colour of a curve's line. */
export const strokeOf = (curve: Curve): string => colour(`${curve.colour}-line`);

/** A small canvas as the pattern of a fill: conductors for electricity, dots for what is stored. */
export function fillOf(
  context: CanvasRenderingContext2D,
  curve: Curve,
  kind: "elec" | "chem",
): CanvasPattern | string {
  const tile = document.createElement("canvas");
  const size = 6;
  tile.width = size;
  tile.height = size;
  const pen = tile.getContext("2d");
  if (!pen) return colour(`${curve.colour}-tint`);
  pen.fillStyle = colour(`${curve.colour}-tint`);
  pen.fillRect(0, 0, size, size);
  pen.fillStyle = colour(`${curve.colour}-line`);
  if (kind === "elec") pen.fillRect(0, size / 2, size, 1);
  else {
    pen.beginPath();
    pen.arc(size / 4, size / 4, 0.9, 0, 7);
    pen.arc((size * 3) / 4, (size * 3) / 4, 0.9, 0, 7);
    pen.fill();
  }
  return context.createPattern(tile, "repeat") ?? colour(`${curve.colour}-tint`);
}
