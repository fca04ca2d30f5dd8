import { at } from "../../shared/at.ts";
import { REGIMES, type RegimeFamily } from "../../sim/run/regimes.ts";
import { colour } from "./paint.ts";

/** Lanes from top to foot. */
export const LANES: readonly RegimeFamily[] = ["engine", "electric", "braking", "rest"];

/** How a regime's block is drawn: whose colour, which pattern. */
interface Block {
  readonly colour: "carrier" | "sun" | "ring" | "battery" | "loss" | "fuel";
  readonly pattern: "mech" | "elec" | "chem" | "heat" | "plain" | "solid";
}

const BLOCKS: Readonly<Record<string, Block>> = {
  cranking: { colour: "sun", pattern: "solid" },
  stopping: { colour: "carrier", pattern: "plain" },
  "charging-at-rest": { colour: "fuel", pattern: "chem" },
  idling: { colour: "carrier", pattern: "plain" },
  "hill-hold": { colour: "loss", pattern: "heat" },
  "at-rest": { colour: "loss", pattern: "plain" },
  "engine-braking": { colour: "carrier", pattern: "heat" },
  "braking-engine-on": { colour: "carrier", pattern: "chem" },
  "regenerative-braking": { colour: "battery", pattern: "chem" },
  "blended-braking": { colour: "battery", pattern: "heat" },
  "friction-braking": { colour: "loss", pattern: "heat" },
  "reverse-engine": { colour: "ring", pattern: "mech" },
  "electric-reverse": { colour: "sun", pattern: "elec" },
  "electric-drive": { colour: "ring", pattern: "elec" },
  assist: { colour: "battery", pattern: "elec" },
  "charging-driving": { colour: "fuel", pattern: "chem" },
  "mechanical-point": { colour: "ring", pattern: "solid" },
  "circulating-power": { colour: "sun", pattern: "mech" },
  direct: { colour: "carrier", pattern: "solid" },
  "split-below-direct": { colour: "carrier", pattern: "mech" },
  "split-above-direct": { colour: "ring", pattern: "mech" },
  coasting: { colour: "loss", pattern: "plain" },
};

const PLAIN: Block = { colour: "loss", pattern: "plain" };

function tileOf({ colour: name, pattern }: Block, pen: CanvasRenderingContext2D): CanvasPattern | string {
  const tint = colour(`${name}-tint`) || colour("well");
  const line = colour(`${name}-line`);
  if (pattern === "solid") return line;
  if (pattern === "plain") return tint;
  const tile = document.createElement("canvas");
  tile.width = 8;
  tile.height = 8;
  const p = tile.getContext("2d");
  if (!p) return tint;
  p.fillStyle = tint;
  p.fillRect(0, 0, 8, 8);
  p.strokeStyle = line;
  p.fillStyle = line;
  p.lineWidth = 1.4;
  p.beginPath();
  if (pattern === "mech") {
    for (const shift of [-8, 0, 8]) {
      p.moveTo(shift, 8);
      p.lineTo(shift + 8, 0);
    }
    p.stroke();
  } else if (pattern === "elec") {
    p.fillRect(0, 1.5, 8, 1.3);
    p.fillRect(0, 5.5, 8, 1.3);
  } else if (pattern === "chem") {
    p.arc(2, 2, 1.2, 0, 7);
    p.arc(6, 6, 1.2, 0, 7);
    p.fill();
  } else {
    p.moveTo(0, 5);
    p.quadraticCurveTo(2, 2, 4, 5);
    p.quadraticCurveTo(6, 8, 8, 5);
    p.stroke();
  }
  return pen.createPattern(tile, "repeat") ?? tint;
}

/** What a regime is drawn with, on a canvas. */
export function blockFill(regime: string, pen: CanvasRenderingContext2D): CanvasPattern | string {
  return tileOf(BLOCKS[regime] ?? PLAIN, pen);
}

/** A stretch of one regime, in rows: from … until. */
export interface RegimeRun {
  readonly index: number;
  readonly from: number;
  readonly until: number;
}

/**
 * The regimes of a window, as stretches no narrower than a pixel: where rows are denser than pixels, what lies on a
 * pixel's first row stands for it, so that the work follows the width and not the length of the drive.
 */
export function regimeRuns(
  regime: Uint8Array,
  from: number,
  to: number,
  width: number,
): readonly RegimeRun[] {
  const step = Math.max(1, Math.floor((to - from) / Math.max(1, width)));
  const found: RegimeRun[] = [];
  let index = at(regime, from);
  let start = from;
  for (let i = from + step; i <= to; i += step) {
    const next = at(regime, i);
    if (next === index) continue;
    found.push({ index, from: start, until: i });
    index = next;
    start = i;
  }
  found.push({ index, from: start, until: to });
  return found;
}

/** Draws the lanes of a window. @param rowX px of a row */
export function drawLanes(
  pen: CanvasRenderingContext2D,
  runs: readonly RegimeRun[],
  rowX: (row: number) => number,
  lane: number,
): void {
  const fills = new Map<number, CanvasPattern | string>();
  pen.strokeStyle = colour("ink-2");
  pen.lineWidth = 0.75;
  for (const { index, from, until } of runs) {
    const rule = REGIMES[index];
    if (!rule) continue;
    const fill = fills.get(index) ?? blockFill(rule.id, pen);
    fills.set(index, fill);
    pen.fillStyle = fill;
    const y = LANES.indexOf(rule.family) * lane + 1;
    const x = rowX(from);
    const width = Math.max(0.5, rowX(until) - x);
    pen.fillRect(x, y, width, lane - 3);
    if (width > 3) pen.strokeRect(x, y, width, lane - 3);
  }
}
