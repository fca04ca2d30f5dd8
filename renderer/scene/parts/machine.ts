import { polar } from "../gears/outline.ts";
import { type Body, joined } from "../shape/body.ts";
import { circle, polarOutline, shaped } from "../shape/loop.ts";
import { patch } from "../shape/plate.ts";
import { revolved } from "../shape/round.ts";
import { sweep } from "../shape/sweep.ts";
import type { Tone } from "../tones.ts";
import { around, radialMark } from "./marks.ts";

/** An electric machine round its own axis, seen as a section would show it. */
export interface Machine {
  readonly back: number;
  readonly front: number;
  readonly bore: number;
  readonly outer: number;
  readonly slots: number;
  readonly poles: number;
  /** Radius of the shaft the rotor sits on. */
  readonly shaft: number;
  readonly tone: "sun" | "ring";
}

/** Air gap as drawn: wider than a real one, so that it can be seen. */
const GAP = 0.9;

/** How far the windings stand out of the core. */
export const END_TURNS = 8;

/** Share of the core's wall taken by the slots. */
const SLOT_DEPTH = 0.5;

/** Radii of the windings: they fill the slots and stand out at both ends. */
export const windingRadii = ({ bore, outer }: Machine): readonly [number, number] => [
  bore + 0.8,
  bore + SLOT_DEPTH * (outer - bore),
];

const windingTone = (machine: Machine): Tone => (machine.tone === "sun" ? "sun winding" : "ring winding");

/** Stator core with open slots, and its windings. */
export function statorBody(machine: Machine): Body {
  const { back, front, bore, outer, slots, tone } = machine;
  const [inner, deep] = windingRadii(machine);
  const inside = shaped(slotted(bore, deep, slots), true, 0.7);
  const core = sweep(
    [
      { loop: circle(outer - 0.8), z: back },
      { loop: circle(outer), z: back + 0.8, weight: 0.5 },
      ...packets(back, front, 5).map((z) => ({ loop: circle(outer), z, weight: 0.4 })),
      { loop: circle(outer), z: front - 0.8, weight: 0.5 },
      { loop: circle(outer - 0.8), z: front, weight: 1.5 },
      { loop: inside, z: front, weight: 0.8 },
      { loop: { ...inside, light: [0.6] }, z: back, weight: 0.8 },
    ],
    { tone, contour: 1.5 },
  );
  return joined(core, windings(machine, inner, deep - 0.1));
}

/** Heights of the hairlines between packets of sheets, inside a core. */
const packets = (back: number, front: number, count: number): number[] =>
  Array.from({ length: count - 1 }, (_, i) => back + ((front - back) * (i + 1)) / count);

/** Inner line of the core: narrow teeth between slots, flat at the bottom. */
function slotted(bore: number, deep: number, slots: number): Float64Array {
  const points: number[] = [];
  const pitch = (2 * Math.PI) / slots;
  for (let i = 0; i < slots; i += 1) {
    const start = i * pitch;
    for (const [radius, share] of [
      [bore, -0.28],
      [bore, 0],
      [bore, 0.28],
      [deep, 0.29],
      [deep, 0.5],
      [deep, 0.71],
    ] as const) {
      const { x, y } = polar(radius, start + share * pitch);
      points.push(x, y);
    }
  }
  return Float64Array.from(points);
}

/** Windings: one ring of wire with its coils bulging at the ends. */
function windings(machine: Machine, inner: number, outer: number): Body {
  const { back, front, slots } = machine;
  const bulge = (radius: number, depth: number) =>
    shaped(
      polarOutline(slots * 6, (angle) => radius + depth * Math.abs(Math.cos((slots / 2) * angle)) - depth),
      false,
      0.55,
    );
  const [full, narrow] = [bulge(outer, 1), bulge(outer - 2, 1)];
  return sweep(
    [
      { loop: narrow, z: back - END_TURNS, weight: 0.6 },
      { loop: full, z: back - END_TURNS + 2, weight: 0 },
      { loop: full, z: front + END_TURNS - 2, weight: 0 },
      { loop: narrow, z: front + END_TURNS, weight: 0.6 },
      { loop: circle(inner + 1.2, 0.8), z: front + END_TURNS, weight: 0.7 },
      { loop: circle(inner, 0.6), z: front + END_TURNS - 1.2, weight: 0 },
      { loop: circle(inner, 0.5), z: back - END_TURNS + 1.2, weight: 0 },
      { loop: circle(inner + 1.2, 0.8), z: back - END_TURNS, weight: 0.7 },
    ],
    { tone: windingTone(machine) },
  );
}

/** Rotor: laminated core with magnets and a dished web. */
export function rotorBody(machine: Machine): Body {
  const { back, front, bore, shaft, poles, tone } = machine;
  const outer = bore - GAP;
  const rim = 0.58 * outer;
  const middle = (back + front) / 2;
  const core = revolved(
    [
      [outer - 0.5, back],
      [outer, back + 0.5],
      ...packets(back, front, 4).map((z) => [outer, z, 1, 0.4] as const),
      [outer, front - 0.5],
      [outer - 0.5, front],
      [rim, front, 0.95],
      [rim - 0.6, middle + 7, 0.6],
      [shaft + 5, middle + 5, 0.62],
      [shaft + 4, front + 2, 0.9],
      [shaft, front + 2, 0.8],
      [shaft, back - 2, 0.4],
      [shaft + 4, back - 2, 0.9],
      [shaft + 5, middle - 5, 0.6],
      [rim - 0.6, middle - 7, 0.6],
      [rim, back, 0.95],
    ],
    { tone },
  );
  return joined(
    core,
    around(poles, (direction) => magnets(direction, rim, outer, front, poles)),
  );
}

/** The rotor's mark, between two poles. */
export function rotorMark({ bore, front, poles }: Machine): Body {
  const outer = bore - GAP;
  return radialMark(
    0.58 * outer + 1,
    outer - 1,
    front + 0.05,
    Math.PI / 2 + (poles % 4 === 0 ? Math.PI / poles : 0),
  );
}

/** A pair of magnets in a shallow V, as their ends show on the core's face. */
function magnets(direction: number, rim: number, outer: number, z: number, poles: number): Body {
  const half = (0.8 * Math.PI) / poles;
  const low = rim + 0.28 * (outer - rim);
  const high = rim + 0.72 * (outer - rim);
  const thick = 0.17 * (outer - rim);
  const one = (side: number): Body => {
    const a = polar(low, direction + side * 0.14 * half);
    const b = polar(high, direction + side * 0.86 * half);
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.y - a.y) / length, -(b.x - a.x) / length];
    const corners = [a, b, { x: b.x + side * -ux * thick, y: b.y + side * -uy * thick }];
    corners.push({ x: a.x + side * -ux * thick, y: a.y + side * -uy * thick });
    const ordered = area(corners) > 0 ? corners : corners.reverse();
    const outline = Float64Array.from(ordered.flatMap(({ x, y }) => [x, y]));
    return patch({ outline, holes: [] }, { front: z + 0.08, tone: "magnet", weight: 0.7 });
  };
  return joined(one(1), one(-1));
}

function area(corners: readonly { x: number; y: number }[]): number {
  return corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
}
