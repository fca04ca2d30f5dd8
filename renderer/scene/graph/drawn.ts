import { BufferAttribute, BufferGeometry, Mesh } from "three";
import { at } from "../../../shared/at.ts";
import type { SceneLook } from "../contract.ts";
import type { Palette, Rgb } from "../palette.ts";
import type { SetMeasures } from "../parts/measures.ts";
import { APART, Z } from "../parts/stations.ts";
import { ARROW_CORNERS, ARROW_LINES, arrowShape, arrowSweep } from "../shape/arrow.ts";
import { type FreeLine, lineGeometry, writeLines } from "./buffers.ts";
import type { SceneMaterials } from "./materials.ts";
import { lineMesh, unculled } from "./node.ts";

/** Lines the axes' dashes, the index and three arrows take at most. */
const LINES = 3 * ARROW_LINES + 3 + 200;
const CORNERS = 3 * ARROW_CORNERS + 3;

/** An axis to be drawn chain-dotted. */
export interface Axis {
  readonly x: number;
  readonly y: number;
  readonly back: number;
  readonly front: number;
}

/** What is drawn rather than built: torque arrows, the fixed index at 12 o'clock, and the axes. */
export class Drawn {
  readonly mesh: Mesh;
  readonly lines: Mesh;
  private readonly geometry = new BufferGeometry();
  private readonly lineBuffer = lineGeometry(LINES);

  constructor(materials: SceneMaterials) {
    this.geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * CORNERS), 3));
    this.geometry.setAttribute("colour", new BufferAttribute(new Float32Array(3 * CORNERS), 3));
    this.mesh = unculled(new Mesh(this.geometry, materials.flat));
    this.lines = lineMesh(this.lineBuffer, materials.lines);
  }

  /** Writes everything anew for a look. */
  write(look: SceneLook, palette: Palette, m: SetMeasures, axes: readonly Axis[]): void {
    const corners: number[] = [];
    const colours: number[] = [];
    const lines: FreeLine[] = [];
    const add = (xy: ArrayLike<number>, z: number, colour: Rgb): void => {
      for (let i = 0; i < xy.length; i += 2) {
        corners.push(at(xy, i), at(xy, i + 1), z);
        colours.push(...colour);
      }
    };
    add(indexTriangle(m.ringOuter), Z.ringFront + APART.ring * look.explode, palette.ink);
    for (const { place, z, torque, colour } of arrowPlaces(look, m)) {
      const sweep = arrowSweep(torque);
      if (sweep === 0) continue;
      const arrow = arrowShape({ ...place, sweep });
      add(arrow.triangles, z, palette.fills[colour]);
      lines.push(...closed(arrow.outline, z, palette.arrowLine === "shaft" ? colour : "edge"));
    }
    for (const axis of axes) lines.push(...chain(axis));
    writeAll(this.geometry, corners, colours);
    writeLines(this.lineBuffer, lines);
  }
}

function writeAll(geometry: BufferGeometry, corners: readonly number[], colours: readonly number[]): void {
  const position = geometry.getAttribute("position");
  const colour = geometry.getAttribute("colour");
  (position.array as Float32Array).set(corners);
  (colour.array as Float32Array).set(colours);
  position.needsUpdate = true;
  colour.needsUpdate = true;
  geometry.setDrawRange(0, corners.length / 3);
}

/** The index: a triangle that points at the ring from outside. */
const indexTriangle = (outer: number): number[] => [0, outer + 0.9, 4.3, outer + 9.4, -4.3, outer + 9.4];

interface PlacedArrow {
  readonly place: { readonly radius: number; readonly width: number; readonly middle: number };
  readonly z: number;
  readonly torque: number;
  readonly colour: "sun" | "carrier" | "ring";
}

/** Where the arrows lie: on the gears' own faces, or round what the shafts carry in the drivetrain. */
function arrowPlaces({ torques, extent, explode }: SceneLook, m: SetMeasures): PlacedArrow[] {
  if (torques === null) return [];
  const left = Math.PI * 0.89;
  const whole = extent === "drivetrain";
  const free = m.sunRoot - m.sunShaft;
  const sunRadius = free > 5 ? (m.sunRoot + m.sunShaft) / 2 + 0.3 : m.sunTip;
  return [
    {
      place: whole
        ? { radius: 64, width: 3.4, middle: left }
        : { radius: sunRadius, width: Math.min(2.3, 0.3 * free + 0.6), middle: left },
      z: whole ? Z.sunMachine.front + 2 + APART.sunStator * explode : Z.sunFront + 1.4 + APART.sun * explode,
      torque: torques.sun,
      colour: "sun",
    },
    {
      place: whole
        ? { radius: 64, width: 3.4, middle: left }
        : { radius: m.centreDistance, width: 2.8, middle: left },
      z: whole
        ? Z.flywheel.front + APART.engine * explode
        : Z.frontPlateFront + 1.4 + APART.frontPlate * explode,
      torque: torques.carrier,
      colour: "carrier",
    },
    {
      place: { radius: m.ringOuter + 5, width: 3.2, middle: left },
      z: Z.ringFront + APART.ring * explode,
      torque: torques.ring,
      colour: "ring",
    },
  ];
}

function closed(outline: Float64Array, z: number, colour: FreeLine["colour"]): FreeLine[] {
  const count = outline.length / 2;
  return Array.from({ length: count }, (_, i) => {
    const j = (i + 1) % count;
    return {
      from: [at(outline, 2 * i), at(outline, 2 * i + 1), z],
      to: [at(outline, 2 * j), at(outline, 2 * j + 1), z],
      weight: 1.9,
      colour,
    };
  });
}

/** Lengths of a chain-dotted line's dash, gap, dot, gap. */
const CHAIN = [13, 2.5, 2, 2.5] as const;

function chain({ x, y, back, front }: Axis): FreeLine[] {
  const lines: FreeLine[] = [];
  const [dash, gap, dot] = CHAIN;
  const draw = (from: number, length: number): void => {
    const to = Math.min(front, from + length);
    if (to > from) lines.push({ from: [x, y, from], to: [x, y, to], weight: 0.9, colour: "faint" });
  };
  for (let z = back; z < front; z += CHAIN.reduce((sum, part) => sum + part, 0)) {
    draw(z, dash);
    draw(z + dash + gap, dot);
  }
  return lines;
}
