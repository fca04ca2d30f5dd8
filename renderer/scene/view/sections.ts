import { END_TURNS, type Machine, windingRadii } from "../parts/machine.ts";
import type { SetMeasures } from "../parts/measures.ts";
import { RING_CHAMFER } from "../parts/ring.ts";
import { Z } from "../parts/stations.ts";
import type { Sector } from "./cut.ts";

/** A flat cut face in a plane through an axis: a convex line of radius and z. */
export interface CutFace {
  readonly colour: "sun" | "ring";
  readonly pattern: "section" | "winding";
  readonly x: number;
  readonly y: number;
  /** Direction of the plane from the axis, rad. */
  readonly direction: number;
  readonly line: readonly (readonly [radius: number, z: number])[];
}

/** Directions of a sector's two faces. */
const faces = ({ middle, half }: Sector): readonly number[] => [middle + half, middle - half];

/**
 * Cut faces of the ring.
 * @param toothRadius radius of the toothed line in a direction in space, with the ring as it stands now
 */
export function ringFaces(
  sector: Sector,
  m: SetMeasures,
  shift: number,
  toothRadius: (direction: number) => number,
): CutFace[] {
  if (sector.half <= 0) return [];
  const front = Z.ringFront + shift;
  const outer = m.ringOuter;
  const chamfer = Math.min(RING_CHAMFER, front - sector.floor);
  return faces(sector).map((direction) => {
    const inner = toothRadius(direction);
    return {
      colour: "ring",
      pattern: "section",
      x: 0,
      y: 0,
      direction,
      line: [
        [inner, sector.floor],
        [outer, sector.floor],
        [outer, front - chamfer],
        [outer - chamfer, front],
        [inner + 0.22 * m.module, front],
        [inner, front - Math.min(0.22 * m.module, chamfer)],
      ],
    };
  });
}

/** Cut faces of a stator: the core in section, the ends of the windings with lines along the current. */
export function statorFaces(sector: Sector, machine: Machine, shift: number): CutFace[] {
  if (sector.half <= 0) return [];
  const [inner, deep] = windingRadii(machine);
  const [back, front] = [machine.back + shift, machine.front + shift];
  const { bore, outer, tone } = machine;
  const box = (
    direction: number,
    pattern: CutFace["pattern"],
    [r0, r1, z0, z1]: readonly [number, number, number, number],
  ): CutFace => ({
    colour: tone,
    pattern,
    x: sector.x,
    y: sector.y,
    direction,
    line: [
      [r0, z0],
      [r1, z0],
      [r1, z1],
      [r0, z1],
    ],
  });
  return faces(sector).flatMap((direction) => [
    box(direction, "section", [bore, outer, back, front]),
    box(direction, "winding", [inner, deep - 1, back - END_TURNS, back]),
    box(direction, "winding", [inner, deep - 1, front, front + END_TURNS]),
  ]);
}
