import type { Measure, PlacedLabel } from "../ui/labels.ts";

/** Heights to try for a frame, in text sizes from its handle: near ones first, below before above. */
const TRIED = [2, -2, 3.2, -3.2, 4.4, -4.4, 5.6, -5.6];

/** Half of the frame, and the room round it, in text sizes. */
const HALF = 1.05;

/**
 * A height at which a frame beside a handle covers no label.
 * @param x of the frame's middle, px
 * @param handle y of the handle, px
 * @param text size, px
 * @returns y of the frame's middle; the first one tried when none is free
 */
export function clearOfLabels(
  x: number,
  handle: number,
  text: number,
  labels: readonly Pick<PlacedLabel, "x" | "y" | "anchor" | "text" | "size">[],
  measure: Measure,
): number {
  const half = HALF * text;
  const covers = (y: number): boolean =>
    labels.some((label) => {
      const width = measure(label.text, label.size);
      const left = label.x - (label.anchor === "end" ? width : label.anchor === "middle" ? width / 2 : 0);
      const across = left < x + half && left + width > x - half;
      return width > 0 && across && label.y - label.size < y + half && label.y + 0.25 * label.size > y - half;
    });
  const tried = TRIED.map((times) => handle + times * text);
  return tried.find((y) => !covers(y)) ?? handle + 2 * text;
}
