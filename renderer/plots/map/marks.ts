import type { RegimeFamily } from "../../../sim/run/regimes.ts";

/** Families in the order in which they are drawn: the rarer over the commoner. */
export const FAMILIES: readonly RegimeFamily[] = ["rest", "engine", "electric", "braking"];

/** Colour of a family's marks: a property of the style sheet. */
export const FAMILY_COLOUR: Readonly<Record<RegimeFamily, string>> = {
  engine: "--carrier-line",
  electric: "--ring-line",
  braking: "--battery-line",
  rest: "--loss-line",
};

/** What canvas paths and SVG paths have in common. */
export interface Pen {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
}

/** A mark's outline about a place: diamond, bar, triangle, cross, so that no family is told by colour alone. */
export function markPath(pen: Pen, family: RegimeFamily, x: number, y: number, r: number): void {
  const line = (...points: readonly (readonly [number, number])[]): void => {
    points.forEach(([dx, dy], i) => {
      if (i === 0) pen.moveTo(x + dx * r, y + dy * r);
      else pen.lineTo(x + dx * r, y + dy * r);
    });
  };
  if (family === "engine") line([0, -1.25], [1.25, 0], [0, 1.25], [-1.25, 0], [0, -1.25]);
  else if (family === "electric") line([-1.4, -0.5], [1.4, -0.5], [1.4, 0.5], [-1.4, 0.5], [-1.4, -0.5]);
  else if (family === "braking") line([-1.25, -1], [1.25, -1], [0, 1.2], [-1.25, -1]);
  else {
    line([-1.2, -0.3], [-0.3, -0.3], [-0.3, -1.2], [0.3, -1.2], [0.3, -0.3], [1.2, -0.3], [1.2, 0.3]);
    pen.lineTo(x + 0.3 * r, y + 0.3 * r);
    pen.lineTo(x + 0.3 * r, y + 1.2 * r);
    pen.lineTo(x - 0.3 * r, y + 1.2 * r);
    pen.lineTo(x - 0.3 * r, y + 0.3 * r);
    pen.lineTo(x - 1.2 * r, y + 0.3 * r);
    pen.lineTo(x - 1.2 * r, y - 0.3 * r);
  }
}

/** The same as an SVG path, for the key. */
export function markSvg(family: RegimeFamily, x: number, y: number, r: number): string {
  let d = "";
  const pen: Pen = {
    moveTo: (px, py) => {
      d += `M${px.toFixed(1)} ${py.toFixed(1)}`;
    },
    lineTo: (px, py) => {
      d += `L${px.toFixed(1)} ${py.toFixed(1)}`;
    },
  };
  markPath(pen, family, x, y, r);
  return `${d}Z`;
}
