import { Mesh, PlaneGeometry } from "three";
import type { SceneMaterials } from "./materials.ts";
import { setUniform } from "./materials.ts";
import { unculled } from "./node.ts";

/** A spot of shade on the ground: an ellipse by centre and half axes, and how soft its edge is as a share of them. */
export interface ShadeBox {
  readonly x: number;
  readonly z: number;
  readonly width: number;
  readonly depth: number;
  readonly soft: number;
}

/** Largest extent of the ground that shade can fall on. */
const GROUND = 1400;

/** The ground under the scene, seen only where shade falls on it. */
export function shadeMesh(materials: SceneMaterials): Mesh {
  const geometry = new PlaneGeometry(GROUND, GROUND);
  geometry.rotateX(-Math.PI / 2);
  const mesh = unculled(new Mesh(geometry, materials.shadow));
  mesh.renderOrder = -1;
  return mesh;
}

/** Lays the shade of up to three boxes at a height. */
export function layShade(mesh: Mesh, materials: SceneMaterials, y: number, boxes: readonly ShadeBox[]): void {
  mesh.position.y = y;
  const numbers = [0, 1, 2].flatMap((i) => {
    const box = boxes[i];
    return box === undefined ? [0, 0, 0, 0] : [box.x, box.z, box.width, box.depth];
  });
  setUniform(materials.shadow, "boxes", numbers);
  setUniform(
    materials.shadow,
    "softness",
    [0, 1, 2].map((i) => boxes[i]?.soft ?? 1),
  );
}
