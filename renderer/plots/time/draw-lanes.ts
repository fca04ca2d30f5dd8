import { fillFor, type Palette } from "./inks.ts";
import { LANES, type LaneMark } from "./lanes.ts";
import { regimeLook } from "./regime-look.ts";

/** Marks narrower than this, px, are drawn in their line colour: a pattern would not be seen. */
const NARROW = 4;

/** px left free over and under a mark in its lane. */
const ABOVE = 1;
const BELOW = 2;

/** Draws the lanes' lines and marks onto a canvas that counts in CSS px. */
export function drawLanes(
  pen: CanvasRenderingContext2D,
  palette: Palette,
  marks: readonly LaneMark[],
  width: number,
  lane: number,
): void {
  const scale = window.devicePixelRatio || 1;
  const fills = new Map<number, string | CanvasPattern>();
  pen.lineWidth = 1;
  pen.fillStyle = palette("grid");
  for (let i = 1; i <= LANES.length; i += 1) pen.fillRect(0, i * lane - 1, width, 1);
  const height = lane - ABOVE - BELOW;
  for (const { lane: place, regime, from, to } of marks) {
    const { fill, ink } = regimeLook(regime);
    const y = place * lane + ABOVE;
    const line = palette(`${ink}-line`);
    const wide = Math.max(1, to - from);
    if (wide < NARROW) {
      pen.fillStyle = line;
      pen.fillRect(from, y, wide, height);
      continue;
    }
    const style = fills.get(regime) ?? fillFor(pen, palette, fill, ink, scale);
    fills.set(regime, style);
    const [left, right] = [Math.round(from), Math.round(to)];
    // A pattern counts in dots of the screen, so it is filled in those.
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.fillStyle = style;
    pen.fillRect(left * scale, y * scale, (right - left) * scale, height * scale);
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    pen.strokeStyle = line;
    pen.strokeRect(left + 0.5, y + 0.5, Math.max(1, right - left - 1), height - 1);
  }
}

/** Draws a small triangle under the lanes for each moment. @param places px, @param top px of their tips */
export function drawMoments(
  pen: CanvasRenderingContext2D,
  palette: Palette,
  places: readonly number[],
  top: number,
): void {
  pen.fillStyle = palette("ink-2");
  for (const x of places) {
    pen.beginPath();
    pen.moveTo(x, top + 1);
    pen.lineTo(x + 4, top + 8);
    pen.lineTo(x - 4, top + 8);
    pen.fill();
  }
}
