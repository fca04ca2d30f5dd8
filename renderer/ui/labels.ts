/** A box in px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A straight line in px. */
export interface Segment {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export type Anchor = "start" | "middle" | "end";

/** A place a label may take: its baseline point and which way it runs from there. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
}

/** A label that wants a place. Greater weight comes first; one that may be dropped goes when it would collide. */
export interface LabelWish {
  readonly id: string;
  readonly text: string;
  readonly size: number;
  readonly weight: number;
  readonly droppable: boolean;
  readonly places: readonly Place[];
}

export interface PlacedLabel extends Place {
  readonly id: string;
  readonly text: string;
  readonly size: number;
  readonly box: Box;
}

/** Width of a text in px at a size and font weight. */
export type Measure = (text: string, size: number) => number;

/** A measure for where there is no page: tabular figures and letters of the text face, on the wide side. */
export const roughMeasure: Measure = (text, size) => text.length * size * 0.5;

export const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

/** The box of a text on its baseline point. */
export function labelBox(text: string, size: number, place: Place, measure: Measure): Box {
  const width = measure(text, size);
  const left = place.anchor === "start" ? 0 : place.anchor === "end" ? width : width / 2;
  return { x: place.x - left, y: place.y - size * 0.78, width, height: size * 1.02 };
}

/** Whether a line passes through a box (by clipping the line to it). */
export function crosses({ x1, y1, x2, y2 }: Segment, box: Box): boolean {
  // Most lines are far away: that is seen at once.
  if (x1 < box.x && x2 < box.x) return false;
  if (y1 < box.y && y2 < box.y) return false;
  if (x1 > box.x + box.width && x2 > box.x + box.width) return false;
  if (y1 > box.y + box.height && y2 > box.y + box.height) return false;
  const dx = x2 - x1;
  const dy = y2 - y1;
  let from = 0;
  let to = 1;
  const edges: readonly (readonly [number, number])[] = [
    [-dx, x1 - box.x],
    [dx, box.x + box.width - x1],
    [-dy, y1 - box.y],
    [dy, box.y + box.height - y1],
  ];
  for (const [p, q] of edges) {
    if (p === 0 && q < 0) return false;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  return from < to;
}

/** What labels keep clear of: other drawn things, lines, and the edges of the view. */
export interface Obstacles {
  readonly boxes: readonly Box[];
  readonly lines: readonly Segment[];
  readonly bounds: Box;
}

const OUTSIDE = 1e5;
const ON_LINE = 400;

function cost(box: Box, taken: readonly Box[], { boxes, lines, bounds }: Obstacles): number {
  let sum = 0;
  for (const other of taken) sum += 50 * overlap(box, other);
  for (const other of boxes) sum += overlap(box, other);
  for (const line of lines) if (crosses(line, box)) sum += ON_LINE;
  const inside = overlap(box, bounds);
  if (inside < box.width * box.height - 0.5) sum += OUTSIDE;
  return sum;
}

/** Gives every label its first free place, the weightiest first; a lesser one that finds none is left out. */
export function placeLabels(
  wishes: readonly LabelWish[],
  obstacles: Obstacles,
  measure: Measure,
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  const taken: Box[] = [];
  for (const wish of [...wishes].sort((a, b) => b.weight - a.weight)) {
    let best: { place: Place; box: Box; cost: number } | null = null;
    for (const place of wish.places) {
      const box = labelBox(wish.text, wish.size, place, measure);
      const price = cost(box, taken, obstacles);
      if (best === null || price < best.cost) best = { place, box, cost: price };
      if (price === 0) break;
    }
    if (best === null) continue;
    const { box } = best;
    const collides =
      taken.some((other) => overlap(box, other) > 0) || obstacles.lines.some((line) => crosses(line, box));
    if (wish.droppable && (collides || best.cost >= OUTSIDE)) continue;
    placed.push({ id: wish.id, text: wish.text, size: wish.size, ...best.place, box: best.box });
    taken.push(best.box);
  }
  return placed;
}
