import { ShapeUtils, Vector2 } from "three";
import { at } from "../../../shared/at.ts";
import type { Face } from "../gears/faces.ts";
import type { Outline } from "../gears/outline.ts";
import type { Tone } from "../tones.ts";
import { addLine, addVertex, type Body, emptyBody, vertexCount } from "./body.ts";
import { creases } from "./crease.ts";

/** How thick a plate is and what it is made of. */
export interface PlateStyle {
  readonly back: number;
  readonly front: number;
  readonly tone: Tone;
  readonly light?: number;
  readonly weight?: number;
  /** The outline runs out along one side of a band and back along the other, point facing point. */
  readonly band?: boolean;
}

/** A flat plate of any outline, with holes: face (holes clockwise) drawn from back to front. */
export function plate(face: Face, style: PlateStyle): Body {
  const body = emptyBody();
  flat(body, face, style, style.front, 1);
  flat(body, face, style, style.back, -1);
  for (const line of [face.outline, ...face.holes]) rim(body, line, style);
  return body;
}

/** A flat face without thickness, seen from the front. */
export function patch(face: Face, style: Omit<PlateStyle, "back">): Body {
  const body = emptyBody();
  flat(body, face, { ...style, back: style.front }, style.front, 1);
  const { weight = 1 } = style;
  for (const line of weight > 0 ? [face.outline, ...face.holes] : []) edge(body, line, style.front, weight);
  return body;
}

const vectors = (line: Outline): Vector2[] =>
  Array.from({ length: line.length / 2 }, (_, i) => new Vector2(at(line, 2 * i), at(line, 2 * i + 1)));

function flat(body: Body, face: Face, style: PlateStyle, z: number, nz: number): void {
  const contour = vectors(face.outline);
  const holes = face.holes.map(vectors);
  const first = vertexCount(body);
  const light = style.light ?? 1;
  for (const { x, y } of [contour, ...holes].flat()) {
    addVertex(body, [x, y, z], [0, 0, nz], style.tone, light);
  }
  const split = style.band ? bandTriangles(contour.length) : ShapeUtils.triangulateShape(contour, holes);
  for (const [a = 0, b = 0, c = 0] of split) {
    const [p, q] = nz > 0 ? [b, c] : [c, b];
    body.triangles.push(first + a, first + p, first + q);
  }
}

/** Straight across a band, without the slivers that a general division of a long bow makes. */
function bandTriangles(count: number): number[][] {
  const triangles: number[][] = [];
  for (let i = 0; i + 1 < count / 2; i += 1) {
    const [a, b, c, d] = [i, i + 1, count - 1 - i, count - 2 - i];
    triangles.push([a, b, c], [b, d, c]);
  }
  return triangles;
}

/** The narrow side of the plate along one line. A clockwise line turns its directions inward by itself. */
function rim(body: Body, line: Outline, style: PlateStyle): void {
  const { normals, sharp } = creases(line);
  const { back, front, tone, light = 1, weight = 1 } = style;
  const count = sharp.length;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const corner = (point: number, z: number, normal: number): number => {
      const [nx, ny] = [at(normals, normal), at(normals, normal + 1)];
      const [x, y] = [at(line, 2 * point), at(line, 2 * point + 1)];
      return addVertex(body, [x, y, z], [nx, ny, 0], tone, light);
    };
    const [a0, a1] = [corner(i, back, 4 * i), corner(j, back, 4 * i + 2)];
    const [b0, b1] = [corner(i, front, 4 * i), corner(j, front, 4 * i + 2)];
    body.triangles.push(a0, a1, b0);
    body.triangles.push(a1, b1, b0);
    const [x, y] = [at(line, 2 * i), at(line, 2 * i + 1)];
    if (sharp[i] === true) addLine(body, [x, y, back], [x, y, front], 1);
  }
  edge(body, line, front, weight);
  edge(body, line, back, weight);
}

function edge(body: Body, line: Outline, z: number, weight: number): void {
  const count = line.length / 2;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    addLine(
      body,
      [at(line, 2 * i), at(line, 2 * i + 1), z],
      [at(line, 2 * j), at(line, 2 * j + 1), z],
      weight,
    );
  }
}
