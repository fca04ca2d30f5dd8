import {
  type Box,
  labelBox,
  type Measure,
  overlap,
  type Place,
  type PlacedLabel,
  placeLabels,
  type Segment,
} from "../../ui/labels.ts";
import type { Spot } from "./draw.ts";

/** A label that belongs to a line: on it with a halo, or beside it. */
export interface LineLabel {
  readonly id: string;
  readonly text: string;
  readonly weight: number;
  /** places it may take, px */
  readonly line: readonly Spot[];
  readonly beside?: boolean;
}

interface Around {
  readonly bounds: Box;
  /** lines that no label may lie on, its own aside */
  readonly lines: readonly Segment[];
  /** other drawn things */
  readonly boxes?: readonly Box[];
  readonly text: number;
}

/** Most places tried for one label. */
const TRIED = 40;

function placesOf({ line, beside = false }: LineLabel, text: number): Place[] {
  const every = Math.max(1, Math.ceil(line.length / TRIED));
  // Rightmost first: there the lines of a map lie farthest apart.
  const some = line.filter((_, i) => i % every === 0).sort((a, b) => b[0] - a[0]);
  if (!beside) return some.map(([x, y]) => ({ x, y: y + text * 0.34, anchor: "middle" }));
  return some.flatMap(([x, y]): Place[] => [
    { x, y: y - text * 0.5, anchor: "start" },
    { x, y: y - text * 0.5, anchor: "end" },
    { x, y: y + text * 1.15, anchor: "end" },
    { x, y: y + text * 1.15, anchor: "start" },
  ]);
}

const grown = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});

/** Places of labels along their lines, the weightiest first; one that finds none is left out. */
export function labelLines(
  wishes: readonly LineLabel[],
  { bounds, lines, boxes = [], text }: Around,
  measure: Measure,
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const wish of [...wishes].sort((a, b) => b.weight - a.weight)) {
    const taken = [...boxes, ...placed.map((label) => grown(label.box, text * 0.3))];
    const free = placesOf(wish, text).filter((place) => {
      const box = labelBox(wish.text, text, place, measure);
      return taken.every((other) => overlap(box, other) === 0);
    });
    const [found] = placeLabels(
      [{ id: wish.id, text: wish.text, size: text, weight: wish.weight, droppable: true, places: free }],
      { boxes: taken, lines, bounds },
      measure,
    );
    if (found) placed.push(found);
  }
  return placed;
}
