import { type Box, crosses, overlap, type Segment } from "../ui/labels.ts";

/** What a panel must leave free, and what it had better. */
export interface DockScene {
  readonly bounds: Box;
  readonly zero: number;
  readonly handles: readonly Box[];
  readonly arrows: readonly Box[];
  readonly labels: readonly Box[];
  readonly line: Segment;
  /** had better not be crossed */
  readonly axes: readonly Segment[];
  /** the point that it explains */
  readonly point: { readonly x: number; readonly y: number };
}

/**
 * Place of a panel's corner: under the zero line first, near its point; never over a handle or the line unless there
 * is no room at all.
 */
export function dockPanel(width: number, height: number, scene: DockScene): { x: number; y: number } {
  const { bounds, zero, handles, arrows, labels, line, axes, point } = scene;
  let best = { x: bounds.x, y: bounds.y, cost: Number.POSITIVE_INFINITY };
  for (let y = bounds.y; y + height <= bounds.y + bounds.height; y += 7) {
    for (let x = bounds.x; x + width <= bounds.x + bounds.width; x += 9) {
      const box = { x, y, width, height };
      const wide = { x: x - 8, y: y - 8, width: width + 16, height: height + 16 };
      let cost = Math.hypot(x - point.x, y - point.y) * 0.3;
      if (y < zero) cost += 1500;
      if (crosses(line, wide)) cost += 1e6;
      for (const handle of handles) if (overlap(handle, wide) > 0) cost += 1e6;
      for (const axis of axes) if (crosses(axis, wide)) cost += 60;
      for (const arrow of arrows) if (overlap(arrow, box) > 0) cost += 2e4;
      for (const label of labels) cost += overlap(label, box) * 1.5;
      if (cost < best.cost) best = { x, y, cost };
    }
  }
  return { x: best.x, y: best.y };
}
