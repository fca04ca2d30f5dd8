import { type Box, overlap } from "../../ui/labels.ts";

/** What a panel explains, and what it had better leave free. */
export interface NearScene {
  readonly bounds: Box;
  readonly point: { readonly x: number; readonly y: number; readonly r: number };
  /** never covered while there is another place */
  readonly keep: readonly Box[];
  /** texts and numbers: covering one costs as much as some distance */
  readonly spare: readonly Box[];
}

/** Cost of a px² of covered text: a number of usual size counts as some 50 px of distance. */
const PER_COVERED = 0.08;
const KEPT = 1e6;
const STEP = 10;

/** From a point to the nearest place of a box, px. */
const distance = (box: Box, x: number, y: number): number =>
  Math.hypot(Math.max(box.x - x, 0, x - box.x - box.width), Math.max(box.y - y, 0, y - box.y - box.height));

/** Corner of a panel near a point, clear of it, with as little text under it as may be. */
export function dockNear(width: number, height: number, scene: NearScene): { x: number; y: number } {
  const { bounds, point, keep, spare } = scene;
  const ring = { x: point.x - point.r, y: point.y - point.r, width: 2 * point.r, height: 2 * point.r };
  let best = { x: bounds.x, y: bounds.y, cost: Number.POSITIVE_INFINITY };
  for (let y = bounds.y; y + height <= bounds.y + bounds.height; y += STEP) {
    for (let x = bounds.x; x + width <= bounds.x + bounds.width; x += STEP) {
      const box = { x, y, width, height };
      let cost = distance(box, point.x, point.y);
      if (cost >= best.cost) continue;
      if (overlap(ring, box) > 0) cost += KEPT;
      for (const one of keep) if (overlap(one, box) > 0) cost += KEPT;
      for (const one of spare) cost += overlap(one, box) * PER_COVERED;
      if (cost < best.cost) best = { x, y, cost };
    }
  }
  return { x: best.x, y: best.y };
}
