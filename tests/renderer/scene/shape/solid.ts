import type { Body } from "../../../../renderer/scene/shape/body.ts";
import { VERTEX_SIZE } from "../../../../renderer/scene/shape/body.ts";
import { at } from "../../../../shared/at.ts";

type Vector = readonly [number, number, number];

/** Place of a body's vertex. */
export const placeOf = (body: Body, vertex: number): Vector => {
  const v = body.vertices.values;
  const i = VERTEX_SIZE * vertex;
  return [at(v, i), at(v, i + 1), at(v, i + 2)];
};

/** Normal of a body's vertex. */
export const normalOf = (body: Body, vertex: number): Vector => {
  const v = body.vertices.values;
  const i = VERTEX_SIZE * vertex + 3;
  return [at(v, i), at(v, i + 1), at(v, i + 2)];
};

/** Vertex numbers of all triangles. */
export function trianglesOf(body: Body): [number, number, number][] {
  const all = body.triangles.all();
  return Array.from({ length: all.length / 3 }, (_, i) => [
    at(all, 3 * i),
    at(all, 3 * i + 1),
    at(all, 3 * i + 2),
  ]);
}

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Enclosed volume by the divergence theorem: positive when all triangles face outward. */
export const volumeOf = (body: Body): number =>
  trianglesOf(body).reduce((sum, [a, b, c]) => {
    const [p, q, r] = [placeOf(body, a), placeOf(body, b), placeOf(body, c)];
    return sum + dot(p, cross(q, r)) / 6;
  }, 0);

/** Edges, by place, that are not shared by two triangles running them against each other. */
export function openEdges(body: Body): number {
  const key = (vertex: number): string =>
    placeOf(body, vertex)
      .map((x) => (Math.round(x * 1e6) + 0).toString())
      .join();
  const count = new Map<string, number>();
  for (const corners of trianglesOf(body)) {
    const keys = corners.map(key);
    for (let i = 0; i < 3; i += 1) {
      const [from, to] = [at(keys, i), at(keys, (i + 1) % 3)];
      if (from === to) continue;
      count.set(`${from}|${to}`, (count.get(`${from}|${to}`) ?? 0) + 1);
      count.set(`${to}|${from}`, (count.get(`${to}|${from}`) ?? 0) - 1);
    }
  }
  return [...count.values()].filter((n) => n !== 0).length;
}

/** Least scalar product of a triangle's own direction with the normals at its corners; slivers left out. */
export function worstFacing(body: Body): number {
  let worst = 1;
  for (const corners of trianglesOf(body)) {
    const [p, q, r] = corners.map((corner) => placeOf(body, corner));
    if (p === undefined || q === undefined || r === undefined) continue;
    const across = cross(minus(q, p), minus(r, p));
    const area = Math.hypot(...across);
    if (area < 1e-3) continue;
    for (const corner of corners) worst = Math.min(worst, dot(across, normalOf(body, corner)) / area);
  }
  return worst;
}
