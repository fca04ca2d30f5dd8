import { signal } from "@preact/signals";
import type { Measure } from "./labels.ts";

const FACE = '"Source Sans 3 Variable", "Segoe UI", "Helvetica Neue", sans-serif';

/** Counts up when the fonts have come, so that drawings measure again. */
export const fontsReady = signal(0);

let context: CanvasRenderingContext2D | null = null;
const known = new Map<string, number>();

/** Forgets all widths: the fonts have changed. */
export function measureAgain(): void {
  known.clear();
  fontsReady.value += 1;
}

/** Width of a text in the text face. */
export const measure: Measure = (text, size) => {
  const key = `${size}|${text}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  context ??= document.createElement("canvas").getContext("2d");
  if (!context) return text.length * size * 0.5;
  context.font = `${size >= 20 ? 520 : 600} ${size}px ${FACE}`;
  const width = context.measureText(text).width;
  known.set(key, width);
  return width;
};
