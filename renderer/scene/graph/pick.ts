import type { Raycaster } from "three";
import { at } from "../../../shared/at.ts";
import type { PartId } from "../contract.ts";
import { isCutAway } from "../view/cut.ts";
import { PARTS } from "./pieces.ts";
import type { SceneGraph } from "./scene-graph.ts";

/** The part a ray meets first, counting out what is cut away; null beside everything. */
export function pickPart(graph: SceneGraph, ray: Raycaster): PartId | null {
  const surfaces = graph.visibleNodes().map(({ surface }) => surface);
  for (const hit of ray.intersectObjects(surfaces, false)) {
    const kind = surfaces.find((surface) => surface === hit.object)?.geometry.getAttribute("kind");
    if (kind === undefined || hit.face == null) continue;
    const sector = graph.sectors[kind.getW(hit.face.a)];
    if (sector !== undefined && isCutAway(sector, hit.point.x, hit.point.y, hit.point.z)) continue;
    return at(PARTS, kind.getZ(hit.face.a));
  }
  return null;
}
