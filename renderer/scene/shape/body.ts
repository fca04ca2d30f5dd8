import { realAt } from "../../../shared/at.ts";
import { TONES, type Tone } from "../tones.ts";
import { Numbers } from "./numbers.ts";

/** Numbers of one vertex: place, normal, index of the tone, light left in grooves and pockets (0–1). */
export const VERTEX_SIZE = 8;

/** Numbers of one line: both ends, centre and signed radius of a cylinder (0: plain line), weight. */
export const LINE_SIZE = 10;

/** A shape as plain numbers: a triangle mesh and the lines a draughtsman would draw on it. */
export interface Body {
  /** {@link VERTEX_SIZE} numbers each. */
  readonly vertices: Numbers;
  /** Three vertex numbers each, counter-clockwise seen from outside. */
  readonly triangles: Numbers;
  /**
   * {@link LINE_SIZE} numbers each. A line with a radius is the contour of a cylinder along z: it lies where the
   * cylinder turns away from the eye, left or right by the radius's sign, and only the z of its ends counts.
   */
  readonly lines: Numbers;
}

/** A body without anything in it yet. */
export const emptyBody = (): Body => ({
  vertices: new Numbers(),
  triangles: new Numbers(),
  lines: new Numbers(),
});

/** How many vertices a body has. */
export const vertexCount = (body: Body): number => body.vertices.length / VERTEX_SIZE;

/** Adds a vertex by place and normal, and gives its number. */
export function addVertex(
  body: Body,
  [x, y, z]: readonly [number, number, number],
  [nx, ny, nz]: readonly [number, number, number],
  tone: Tone,
  light: number,
): number {
  const i = body.vertices.grow(VERTEX_SIZE);
  const { values } = body.vertices;
  values[i] = x;
  values[i + 1] = y;
  values[i + 2] = z;
  values[i + 3] = nx;
  values[i + 4] = ny;
  values[i + 5] = nz;
  values[i + 6] = TONES.indexOf(tone);
  values[i + 7] = light;
  return i / VERTEX_SIZE;
}

/** Adds a straight line; weight 1 is an ordinary edge. */
export function addLine(
  body: Body,
  [ax, ay, az]: readonly [number, number, number],
  [bx, by, bz]: readonly [number, number, number],
  weight: number,
): void {
  const i = body.lines.grow(LINE_SIZE);
  const { values } = body.lines;
  values[i] = ax;
  values[i + 1] = ay;
  values[i + 2] = az;
  values[i + 3] = bx;
  values[i + 4] = by;
  values[i + 5] = bz;
  values[i + 9] = weight;
}

/** Adds both contour lines of a cylinder round the z axis. */
export function addContour(body: Body, radius: number, fromZ: number, toZ: number, weight: number): void {
  for (const side of [1, -1]) {
    addLine(body, [0, 0, fromZ], [0, 0, toZ], weight);
    body.lines.values[body.lines.length - 2] = side * radius;
  }
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
  const first = vertexCount(target);
  const turning = [Math.cos(turn), Math.sin(turn)] as const;
  const shift = [x, y, z] as const;
  const vertex = append(target.vertices, source.vertices);
  for (let i = vertex; i < target.vertices.length; i += VERTEX_SIZE) {
    movePoint(target.vertices.values, i, turning, shift);
    movePoint(target.vertices.values, i + 3, turning, STILL);
  }
  const triangle = append(target.triangles, source.triangles);
  const triangles = target.triangles.values;
  for (let i = triangle; i < target.triangles.length; i += 1) triangles[i] = realAt(triangles, i) + first;
  const line = append(target.lines, source.lines);
  for (let i = line; i < target.lines.length; i += LINE_SIZE) {
    for (const k of [0, 3]) movePoint(target.lines.values, i + k, turning, shift);
    // Of a contour's centre only x and y are places; its third number is a radius.
    movePoint(target.lines.values, i + 6, turning, [x, y, 0]);
  }
}

const STILL = [0, 0, 0] as const;

function append(target: Numbers, source: Numbers): number {
  const start = target.grow(source.length);
  target.values.set(source.all(), start);
  return start;
}

function movePoint(
  values: Float64Array,
  i: number,
  [c, s]: readonly [number, number],
  [dx, dy, dz]: readonly [number, number, number],
): void {
  const [x, y] = [realAt(values, i), realAt(values, i + 1)];
  values[i] = x * c - y * s + dx;
  values[i + 1] = x * s + y * c + dy;
  values[i + 2] = realAt(values, i + 2) + dz;
}

/** Several bodies in one, in place. */
export function joined(...bodies: readonly Body[]): Body {
  const all = emptyBody();
  for (const list of ["vertices", "triangles", "lines"] as const) {
    all[list].reserve(bodies.reduce((sum, body) => sum + body[list].length, 0));
  }
  for (const body of bodies) addBody(all, body);
  return all;
}
