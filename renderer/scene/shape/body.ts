import { at } from "../../../shared/at.ts";
import { TONES, type Tone } from "../tones.ts";

/** Numbers of one vertex: place, normal, index of the tone, light left in grooves and pockets (0–1). */
export const VERTEX_SIZE = 8;

/** Numbers of one line: both ends, centre and signed radius of a cylinder (0: plain line), weight. */
export const LINE_SIZE = 10;

/** A shape as plain numbers: a triangle mesh and the lines a draughtsman would draw on it. */
export interface Body {
  /** {@link VERTEX_SIZE} numbers each. */
  readonly vertices: number[];
  /** Three vertex numbers each, counter-clockwise seen from outside. */
  readonly triangles: number[];
  /**
   * {@link LINE_SIZE} numbers each. A line with a radius is the contour of a cylinder along z: it lies where the
   * cylinder turns away from the eye, left or right by the radius's sign, and only the z of its ends counts.
   */
  readonly lines: number[];
}

/** A body without anything in it yet. */
export const emptyBody = (): Body => ({ vertices: [], triangles: [], lines: [] });

/** Place and direction of a vertex. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
}

/** Adds a vertex and gives its number. */
export function addVertex(body: Body, corner: Corner, tone: Tone, light: number): number {
  const index = body.vertices.length / VERTEX_SIZE;
  const { x, y, z, nx, ny, nz } = corner;
  body.vertices.push(x, y, z, nx, ny, nz, TONES.indexOf(tone), light);
  return index;
}

/** Adds a straight line; weight 1 is an ordinary edge. */
export function addLine(
  body: Body,
  from: readonly [number, number, number],
  to: readonly [number, number, number],
  weight: number,
): void {
  body.lines.push(...from, ...to, 0, 0, 0, weight);
}

/** Adds both contour lines of a cylinder round the z axis. */
export function addContour(body: Body, radius: number, fromZ: number, toZ: number, weight: number): void {
  for (const side of [1, -1]) body.lines.push(0, 0, fromZ, 0, 0, toZ, 0, 0, side * radius, weight);
}

/** How a body is moved before it is joined: turned about z first, rad, then shifted. */
export interface Move {
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
  readonly turn?: number;
}

/** Adds a moved copy of one body to another. */
export function addBody(target: Body, source: Body, move: Move = {}): void {
  const { x = 0, y = 0, z = 0, turn = 0 } = move;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const first = target.vertices.length / VERTEX_SIZE;
  const v = source.vertices;
  for (let i = 0; i < v.length; i += VERTEX_SIZE) {
    const [px, py, nx, ny] = [at(v, i), at(v, i + 1), at(v, i + 3), at(v, i + 4)];
    target.vertices.push(px * c - py * s + x, px * s + py * c + y, at(v, i + 2) + z);
    target.vertices.push(nx * c - ny * s, nx * s + ny * c, at(v, i + 5), at(v, i + 6), at(v, i + 7));
  }
  for (const index of source.triangles) target.triangles.push(first + index);
  const l = source.lines;
  for (let i = 0; i < l.length; i += LINE_SIZE) {
    for (const k of [i, i + 3]) {
      target.lines.push(at(l, k) * c - at(l, k + 1) * s + x, at(l, k) * s + at(l, k + 1) * c + y);
      target.lines.push(at(l, k + 2) + z);
    }
    const [cx, cy] = [at(l, i + 6), at(l, i + 7)];
    target.lines.push(cx * c - cy * s + x, cx * s + cy * c + y, at(l, i + 8), at(l, i + 9));
  }
}

/** Several bodies in one, in place. */
export function joined(...bodies: readonly Body[]): Body {
  const all = emptyBody();
  for (const body of bodies) addBody(all, body);
  return all;
}
