import { InstancedMesh, Mesh } from "three";
import type { PartId } from "../contract.ts";
import type { Palette } from "../palette.ts";
import { type SceneMaterials, setUniform } from "./materials.ts";
import { type SceneNode, unculled } from "./node.ts";
import { PARTS } from "./pieces.ts";

/** Width of the outline on both sides of a part's contour, CSS pixels: half of it lies outside. */
export const OUTLINE = 4;

const COLOURS: Readonly<Record<PartId, keyof Palette["strokes"]>> = {
  sun: "sun",
  planets: "planet",
  carrier: "carrier",
  ring: "ring",
  "sun-machine": "sun",
  "output-machine": "ring",
  reduction: "ring",
  engine: "carrier",
  "final-drive": "ring",
  axle: "ring",
};

/** The outline round the chosen part: its surface masks the stencil, its lines are drawn wide round the mask. */
export class Chosen {
  private readonly materials: SceneMaterials;
  private meshes: Mesh[] = [];

  constructor(materials: SceneMaterials) {
    this.materials = materials;
  }

  /** Outlines a part, or nothing. */
  choose(part: PartId | null, nodes: readonly SceneNode[], palette: Palette): void {
    this.clear();
    if (part === null) return;
    const index = PARTS.indexOf(part);
    setUniform(this.materials.mask, "onlyPart", index);
    setUniform(this.materials.chosen, "onlyPart", index);
    setUniform(this.materials.chosen, "own", [...palette.strokes[COLOURS[part]]]);
    for (const node of nodes) if (node.parts.includes(index)) this.outline(node);
  }

  /** Takes the outline away. Its buffers belong to the part. */
  clear(): void {
    for (const mesh of this.meshes) mesh.removeFromParent();
    this.meshes = [];
  }

  private outline(node: SceneNode): void {
    const { surface } = node;
    const mask =
      surface instanceof InstancedMesh
        ? new InstancedMesh(surface.geometry, this.materials.mask, surface.count)
        : new Mesh(surface.geometry, this.materials.mask);
    if (mask instanceof InstancedMesh && surface instanceof InstancedMesh) {
      mask.instanceMatrix = surface.instanceMatrix;
    }
    mask.renderOrder = 5;
    this.add(unculled(mask), node);
    for (const line of node.lines) {
      const wide = unculled(new Mesh(line.geometry, this.materials.chosen));
      if (!line.matrixAutoUpdate) {
        wide.matrixAutoUpdate = false;
        // The same matrix, so that the outline turns with its planet.
        wide.matrix = line.matrix;
      }
      wide.renderOrder = 6;
      this.add(wide, node);
    }
  }

  private add(mesh: Mesh, node: SceneNode): void {
    node.turning.add(mesh);
    this.meshes.push(mesh);
  }
}
