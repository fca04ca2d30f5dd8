import { at } from "../../../shared/at.ts";
import type { Tone } from "../tones.ts";
import {
  addContour,
  addLine,
  addVertex,
  type Body,
  emptyBody,
  LINE_SIZE,
  VERTEX_SIZE,
  vertexCount,
} from "./body.ts";
import { creases, EDGE_TURN } from "./crease.ts";
import { type Loop, risingAngles } from "./loop.ts";

/** A loop at a height along the axis. */
export interface Station {
  readonly loop: Loop;
  readonly z: number;
  /** Weight of the edge drawn here; left out: 1 where the surface turns sharply, 0 where it does not. */
  readonly weight?: number;
  /** The same line in another light, for the strip from here on: a floor is not as dark as the groove beside it. */
  readonly onward?: Loop;
  /** Tone of the strip from here to the next station, if not that of the whole. */
  readonly tone?: Tone;
}

/** What a sweep looks like. */
export interface SweepStyle {
  readonly tone: Tone;
  /** Weight of a cylinder's contour lines. */
  readonly contour?: number;
}

/**
 * A ring-shaped body from its section: stations in order round the section, counter-clockwise with the radius to the
 * right and the axis upward; the last joins the first. So the outside goes up, the front inward, a bore down.
 */
export function sweep(stations: readonly Station[], style: SweepStyle): Body {
  const body = emptyBody();
  const count = stations.length;
  makeRoom(body, stations);
  for (let i = 0; i < count; i += 1) {
    const from = at(stations, i);
    const to = at(stations, (i + 1) % count);
    const before = at(stations, (i + count - 1) % count);
    strip(body, from.onward === undefined ? from : { ...from, loop: from.onward }, to, style);
    const weight = from.weight ?? (turns(before, from, to) ? 1 : 0);
    if (weight > 0) edgeLoop(body, from, weight);
  }
  return body;
}

/** Room for the most that the strips can need, so that the lists are not widened again and again. */
function makeRoom(body: Body, stations: readonly Station[]): void {
  const points = stations.reduce((sum, { loop }) => sum + loop.points.length / 2, 0);
  const walls = stations.reduce((sum, { loop }) => sum + (loop.radius === null ? loop.points.length : 0), 0);
  body.vertices.reserve(VERTEX_SIZE * (2 * points + walls));
  body.triangles.reserve(6 * points);
  body.lines.reserve(LINE_SIZE * (points + walls / 8));
}

const slope = (a: Station, b: Station): number => Math.atan2(b.z - a.z, b.loop.mean - a.loop.mean);

function turns(a: Station, b: Station, c: Station): boolean {
  const turn = Math.abs(slope(b, c) - slope(a, b)) % (2 * Math.PI);
  return Math.min(turn, 2 * Math.PI - turn) > EDGE_TURN;
}

function strip(body: Body, from: Station, to: Station, style: SweepStyle): void {
  const tone = from.tone ?? style.tone;
  const shapedBoth = from.loop.radius === null && to.loop.radius === null;
  if (shapedBoth && from.loop.points.length === to.loop.points.length && from.z !== to.z) {
    wall(body, from, to, tone);
    return;
  }
  stitch(body, from, to, tone);
  if (from.loop.radius === to.loop.radius && from.loop.radius !== null && to.z > from.z) {
    addContour(body, from.loop.radius, from.z, to.z, style.contour ?? 1);
  }
}

/** Between circles, or in one plane: the points are joined in the order of their angles. */
function stitch(body: Body, a: Station, b: Station, tone: Tone): void {
  const dz = b.z - a.z;
  const dr = b.loop.mean - a.loop.mean;
  const length = Math.hypot(dz, dr) || 1;
  const first = addRound(body, a, dz / length, -dr / length, tone);
  const second = addRound(body, b, dz / length, -dr / length, tone);
  const angleA = risingAngles(a.loop.points);
  const countA = angleA.length - 1;
  const countB = b.loop.points.length / 2;
  const { start, angles: angleB } = startingNear(risingAngles(b.loop.points), at(angleA, 0));
  let i = 0;
  let j = 0;
  while (i < countA || j < countB) {
    const advanceA = j >= countB || (i < countA && at(angleA, i + 1) <= at(angleB, j + 1));
    const onA = first + (i % countA);
    const onB = second + ((start + j) % countB);
    if (advanceA) {
      i += 1;
      body.triangles.push(onA, first + (i % countA), onB);
    } else {
      j += 1;
      body.triangles.push(onA, second + ((start + j) % countB), onB);
    }
  }
}

/** The same angles, begun at the point next to a given angle, so that two loops are walked round side by side. */
function startingNear(
  angles: readonly number[],
  near: number,
): { readonly start: number; readonly angles: readonly number[] } {
  const turn = 2 * Math.PI;
  const count = angles.length - 1;
  const apart = (angle: number): number => angle - near - turn * Math.round((angle - near) / turn);
  let start = 0;
  for (let i = 1; i < count; i += 1) {
    if (Math.abs(apart(at(angles, i))) < Math.abs(apart(at(angles, start)))) start = i;
  }
  const first = at(angles, start);
  const base = near + apart(first);
  const walked = angles.slice(0, count).map((_, i) => {
    const from = at(angles, (start + i) % count) - first;
    return base + (start + i >= count ? from + turn : from);
  });
  return { start, angles: [...walked, base + turn] };
}

function addRound(body: Body, station: Station, radial: number, axial: number, tone: Tone): number {
  const { points, light } = station.loop;
  const first = vertexCount(body);
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = [at(points, i), at(points, i + 1)];
    const radius = Math.hypot(x, y);
    const [nx, ny] = [(x / radius) * radial, (y / radius) * radial];
    addVertex(body, [x, y, station.z], [nx, ny, axial], tone, at(light, (i / 2) % light.length));
  }
  return first;
}

/** Between two equal shaped loops: every piece has its own corners, so that sharp edges stay sharp. */
function wall(body: Body, a: Station, b: Station, tone: Tone): void {
  const { normals, sharp } = creases(a.loop.points);
  const count = sharp.length;
  const dz = b.z - a.z;
  const dr = b.loop.mean - a.loop.mean;
  const length = Math.hypot(dz, dr) || 1;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const corner = (station: Station, point: number, normal: number): number => {
      const { light } = station.loop;
      return addVertex(
        body,
        place(station, point),
        [(at(normals, normal) * dz) / length, (at(normals, normal + 1) * dz) / length, -dr / length],
        tone,
        at(light, point % light.length),
      );
    };
    const [a0, a1] = [corner(a, i, 4 * i), corner(a, j, 4 * i + 2)];
    const [b0, b1] = [corner(b, i, 4 * i), corner(b, j, 4 * i + 2)];
    body.triangles.push(a0, a1, b0);
    body.triangles.push(a1, b1, b0);
    if (sharp[i] === true && Math.abs(dz) > Math.abs(dr)) addLine(body, place(a, i), place(b, i), 1);
  }
}

const place = ({ loop, z }: Station, i: number): [number, number, number] => [
  at(loop.points, 2 * i),
  at(loop.points, 2 * i + 1),
  z,
];

function edgeLoop(body: Body, station: Station, weight: number): void {
  const count = station.loop.points.length / 2;
  for (let i = 0; i < count; i += 1) {
    addLine(body, place(station, i), place(station, (i + 1) % count), weight);
  }
}
