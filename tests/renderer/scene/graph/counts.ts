import { InstancedBufferGeometry, InstancedMesh, Mesh, type Object3D } from "three";

/** What a scene would cost to draw. */
export interface Cost {
  readonly draws: number;
  readonly triangles: number;
}

/** Draw calls and triangles of everything visible below an object, as a renderer would count them. */
export function costOf(object: Object3D): Cost {
  if (!object.visible) return { draws: 0, triangles: 0 };
  const own =
    object instanceof Mesh ? { draws: 1, triangles: trianglesOf(object) } : { draws: 0, triangles: 0 };
  return object.children
    .map(costOf)
    .reduce(
      (sum, cost) => ({ draws: sum.draws + cost.draws, triangles: sum.triangles + cost.triangles }),
      own,
    );
}

function trianglesOf(mesh: Mesh): number {
  const { geometry } = mesh;
  const corners = geometry.index?.count ?? geometry.getAttribute("position").count;
  const drawn = Math.min(corners, geometry.drawRange.count) / 3;
  if (geometry instanceof InstancedBufferGeometry) return drawn * geometry.instanceCount;
  return drawn * (mesh instanceof InstancedMesh ? mesh.count : 1);
}
