import { BufferAttribute, BufferGeometry, InstancedBufferAttribute, InstancedBufferGeometry } from "three";
import { at, realAt } from "../../../shared/at.ts";
import { LINE_COLOURS, type LineColour } from "../material/uniforms.ts";
import { LINE_SIZE, VERTEX_SIZE } from "../shape/body.ts";
import { CUT, PARTS, type Piece } from "./pieces.ts";

/** One mesh from all pieces, with tone, light, part and cut class at every corner. */
export function surfaceGeometry(pieces: readonly Piece[]): BufferGeometry {
  const count = pieces.reduce((sum, { body }) => sum + body.vertices.length / VERTEX_SIZE, 0);
  const corners = pieces.reduce((sum, { body }) => sum + body.triangles.length, 0);
  const position = new Float32Array(3 * count);
  const normal = new Float32Array(3 * count);
  const kind = new Float32Array(4 * count);
  const index = new Uint32Array(corners);
  let vertex = 0;
  let corner = 0;
  for (const { body, part, cut = CUT.none } of pieces) {
    const first = vertex;
    const v = body.vertices.values;
    for (let i = 0; i < body.vertices.length; i += VERTEX_SIZE) {
      for (let k = 0; k < 3; k += 1) {
        position[3 * vertex + k] = realAt(v, i + k);
        normal[3 * vertex + k] = realAt(v, i + 3 + k);
      }
      kind[4 * vertex] = realAt(v, i + 6);
      kind[4 * vertex + 1] = realAt(v, i + 7);
      kind[4 * vertex + 2] = PARTS.indexOf(part);
      kind[4 * vertex + 3] = cut;
      vertex += 1;
    }
    for (const own of body.triangles.all()) {
      index[corner] = first + own;
      corner += 1;
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(position, 3));
  geometry.setAttribute("normal", new BufferAttribute(normal, 3));
  geometry.setAttribute("kind", new BufferAttribute(kind, 4));
  geometry.setIndex(new BufferAttribute(index, 1));
  return geometry;
}

/** A line as a strip: four corners, spread on the screen by the shader. */
function strip(): InstancedBufferGeometry {
  const geometry = new InstancedBufferGeometry();
  const corners = Float32Array.from([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]);
  geometry.setAttribute("position", new BufferAttribute(corners, 3));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  return geometry;
}

/** Room for a number of lines; all of it shown until `instanceCount` says otherwise. */
export function lineGeometry(count: number): InstancedBufferGeometry {
  const geometry = strip();
  for (const [name, size] of [
    ["lineFrom", 3],
    ["lineTo", 3],
    ["lineRound", 3],
    ["lineStyle", 4],
  ] as const) {
    geometry.setAttribute(name, new InstancedBufferAttribute(new Float32Array(size * count), size));
  }
  geometry.instanceCount = count;
  return geometry;
}

/** All lines of the pieces in one buffer. */
export function edgeGeometry(pieces: readonly Piece[]): InstancedBufferGeometry {
  const count = pieces.reduce((sum, { body }) => sum + body.lines.length / LINE_SIZE, 0);
  const geometry = lineGeometry(count);
  const [from, to, round, style] = lineArrays(geometry);
  let line = 0;
  for (const { body, part, cut = CUT.none, mark = false } of pieces) {
    const colour = LINE_COLOURS.indexOf(mark ? "mark" : "edge");
    const l = body.lines.values;
    for (let i = 0; i < body.lines.length; i += LINE_SIZE) {
      for (let k = 0; k < 3; k += 1) {
        from[3 * line + k] = realAt(l, i + k);
        to[3 * line + k] = realAt(l, i + 3 + k);
        round[3 * line + k] = realAt(l, i + 6 + k);
      }
      style[4 * line] = realAt(l, i + 9);
      style[4 * line + 1] = PARTS.indexOf(part);
      style[4 * line + 2] = cut;
      style[4 * line + 3] = colour;
      line += 1;
    }
  }
  return geometry;
}

/** The arrays behind {@link lineGeometry}. */
export function lineArrays(
  geometry: InstancedBufferGeometry,
): readonly [from: Float32Array, to: Float32Array, round: Float32Array, style: Float32Array] {
  const array = (name: string): Float32Array => geometry.getAttribute(name).array as Float32Array;
  return [array("lineFrom"), array("lineTo"), array("lineRound"), array("lineStyle")];
}

/** A straight line to be written over an old one. */
export interface FreeLine {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  readonly weight: number;
  readonly colour: LineColour;
}

/** Replaces the lines of a buffer; those beyond its room are dropped. */
export function writeLines(geometry: InstancedBufferGeometry, lines: readonly FreeLine[]): void {
  const [from, to, , style] = lineArrays(geometry);
  const count = Math.min(lines.length, style.length / 4);
  for (let i = 0; i < count; i += 1) {
    const line = at(lines, i);
    from.set(line.from, 3 * i);
    to.set(line.to, 3 * i);
    style.set([line.weight, -1, CUT.none, LINE_COLOURS.indexOf(line.colour)], 4 * i);
  }
  geometry.instanceCount = count;
  for (const name of ["lineFrom", "lineTo", "lineStyle"]) geometry.getAttribute(name).needsUpdate = true;
}
