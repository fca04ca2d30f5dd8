import { Group, type InstancedBufferGeometry, InstancedMesh, type Material, Matrix4, Mesh } from "three";
import { type BodyAngles, wrapped } from "../angles.ts";
import { APART } from "../parts/stations.ts";
import type { BodySpec } from "./bodies.ts";
import { edgeGeometry, surfaceGeometry } from "./buffers.ts";
import type { SceneMaterials } from "./materials.ts";
import { PARTS, type Piece } from "./pieces.ts";

/** A rigid body in the scene graph. */
export interface SceneNode {
  readonly name: string;
  readonly turns: BodySpec["turns"];
  readonly apart: keyof typeof APART;
  readonly shown: BodySpec["shown"];
  /** Stands on the axis and moves along it. */
  readonly group: Group;
  /** Turns. */
  readonly turning: Group;
  readonly surface: Mesh;
  readonly lines: readonly Mesh[];
  /** Numbers of the parts its pieces belong to. */
  readonly parts: readonly number[];
}

/** Meshes are never culled: the whole scene is always in view. */
export function unculled<T extends Mesh>(mesh: T): T {
  mesh.frustumCulled = false;
  return mesh;
}

/** A mesh of lines. They leave no depth, so they come after everything solid. */
export function lineMesh(geometry: InstancedBufferGeometry, material: Material): Mesh {
  const mesh = unculled(new Mesh(geometry, material));
  mesh.renderOrder = 2;
  return mesh;
}

const partsOf = (pieces: readonly Piece[]): number[] => [
  ...new Set(pieces.filter(({ body }) => body.triangles.length > 0).map(({ part }) => PARTS.indexOf(part))),
];

function frame(spec: Pick<BodySpec, "name" | "x" | "y">): readonly [Group, Group] {
  const group = new Group();
  group.position.set(spec.x, spec.y, 0);
  const turning = new Group();
  turning.name = spec.name;
  group.add(turning);
  return [group, turning];
}

/** A single body. */
export function bodyNode(spec: BodySpec, materials: SceneMaterials): SceneNode {
  const [group, turning] = frame(spec);
  const surface = unculled(new Mesh(surfaceGeometry(spec.pieces), materials.surface));
  const lines = [lineMesh(edgeGeometry(spec.pieces), materials.lines)];
  turning.add(surface, ...lines);
  return { ...spec, group, turning, surface, lines, parts: partsOf(spec.pieces) };
}

/** All planets as one node: a group that turns with the carrier and holds one body many times. */
export class PlanetNode implements SceneNode {
  readonly name = "planets";
  readonly turns = "carrier";
  readonly apart = "planets";
  readonly shown = "both";
  readonly group: Group;
  readonly turning: Group;
  readonly surface: InstancedMesh;
  readonly lines: readonly Mesh[];
  readonly parts: readonly number[];
  /** The paint mark, on the last planet. */
  private readonly mark: Group;
  private readonly places: readonly { readonly position: number; readonly phase: number }[];
  private readonly distance: number;
  private readonly matrix = new Matrix4();

  constructor(
    pieces: readonly Piece[],
    mark: Piece,
    places: readonly { readonly position: number; readonly phase: number }[],
    distance: number,
    materials: SceneMaterials,
  ) {
    [this.group, this.turning] = frame({ name: this.name, x: 0, y: 0 });
    this.places = places;
    this.distance = distance;
    this.parts = partsOf(pieces);
    this.surface = unculled(new InstancedMesh(surfaceGeometry(pieces), materials.surface, places.length));
    const edges = edgeGeometry(pieces);
    this.lines = places.map(() => {
      const mesh = lineMesh(edges, materials.lines);
      mesh.matrixAutoUpdate = false;
      return mesh;
    });
    this.mark = new Group();
    this.mark.matrixAutoUpdate = false;
    this.mark.add(
      unculled(new Mesh(surfaceGeometry([mark]), materials.surface)),
      lineMesh(edgeGeometry([mark]), materials.lines),
    );
    this.turning.add(this.surface, ...this.lines, this.mark);
    this.turnPlanets(0);
  }

  /** Turns every planet about its pin, seen from the carrier. */
  turnPlanets(onCarrier: number): void {
    this.places.forEach(({ position, phase }, i) => {
      const { matrix } = this;
      matrix.makeRotationZ(wrapped(phase + onCarrier));
      matrix.setPosition(this.distance * Math.cos(position), this.distance * Math.sin(position), 0);
      this.surface.setMatrixAt(i, matrix);
      const own = this.lines[i];
      if (own !== undefined) {
        own.matrix.copy(matrix);
        own.matrixWorldNeedsUpdate = true;
      }
      if (i === this.places.length - 1) {
        this.mark.matrix.copy(matrix);
        this.mark.matrixWorldNeedsUpdate = true;
      }
    });
    this.surface.instanceMatrix.needsUpdate = true;
  }
}

/** Turns a node by the shafts' angles. */
export function turnNode(node: SceneNode, angles: BodyAngles): void {
  if (node.turns === null) return;
  node.turning.rotation.z = wrapped(angles[node.turns]);
  if (node instanceof PlanetNode) node.turnPlanets(angles.planetOnCarrier);
}

/** Where a node stands along the axis when drawn apart by a share. */
export const shiftOf = (node: Pick<SceneNode, "apart">, explode: number): number =>
  APART[node.apart] * explode;
