import type { PartId } from "../contract.ts";

/** What a label points at, CSS pixels. */
export interface Anchor {
  readonly part: PartId;
  readonly anchorX: number;
  readonly anchorY: number;
}

/** A label's place: the middle of its text, CSS pixels. */
export interface LabelPlace extends Anchor {
  readonly x: number;
  readonly y: number;
}

/** The sheet labels are laid on. */
export interface LabelSheet {
  readonly width: number;
  readonly height: number;
  /** Room a label's text takes. */
  readonly boxWidth: number;
  readonly boxHeight: number;
  /** Whether a place lies over the drawing, where a label would hide something. */
  readonly covered: (x: number, y: number) => boolean;
}

/** Free pixels between labels, and between a label and the sheet's border. */
const GAP = 4;

/** Places tried across and down. */
const ACROSS = 13;

/** What a label costs: pixels of leader, and as many more for hiding the drawing or crossing another leader. */
const COVERED = 900;
const CROSSING = 420;

interface Candidate {
  readonly x: number;
  readonly y: number;
}

/**
 * Lays labels beside what they point at: never over each other, never off the sheet, if possible not over the
 * drawing and without crossed leaders. A label for which there is no room is left out.
 */
export function layLabels(anchors: readonly Anchor[], sheet: LabelSheet): LabelPlace[] {
  const candidates = candidatesOf(sheet);
  const placed: LabelPlace[] = [];
  const middle = sheet.width / 2;
  // The outermost go first: they have the fewest good places.
  const order = [...anchors].sort((a, b) => Math.abs(b.anchorX - middle) - Math.abs(a.anchorX - middle));
  for (const anchor of order) {
    let best: Candidate | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const candidate of candidates) {
      // The leader alone is a lower bound: most places are ruled out by it, before anything is compared.
      if (leaderOf(candidate, anchor) >= least) continue;
      if (placed.some((other) => overlap(candidate, other, sheet))) continue;
      if (hidesAnchor(candidate, anchors, sheet)) continue;
      const cost = costOf(candidate, anchor, placed, sheet);
      if (cost < least) [best, least] = [candidate, cost];
    }
    if (best !== null) placed.push({ ...anchor, ...best });
  }
  return uncrossed(placed);
}

function candidatesOf({ width, height, boxWidth, boxHeight }: LabelSheet): Candidate[] {
  const left = boxWidth / 2 + GAP;
  const top = boxHeight / 2 + GAP;
  if (width < 2 * left || height < 2 * top) return [];
  const rows = Math.max(1, Math.floor((height - 2 * top) / (boxHeight / 2)));
  const candidates: Candidate[] = [];
  for (let column = 0; column < ACROSS; column += 1) {
    for (let row = 0; row <= rows; row += 1) {
      candidates.push({
        x: left + ((width - 2 * left) * column) / (ACROSS - 1),
        y: top + ((height - 2 * top) * row) / rows,
      });
    }
  }
  return candidates;
}

/** Whether two labels would touch. */
export const overlap = (
  a: Candidate,
  b: Candidate,
  { boxWidth, boxHeight }: Pick<LabelSheet, "boxWidth" | "boxHeight">,
): boolean => Math.abs(a.x - b.x) < boxWidth + GAP && Math.abs(a.y - b.y) < boxHeight + GAP;

const hidesAnchor = (place: Candidate, anchors: readonly Anchor[], sheet: LabelSheet): boolean =>
  anchors.some(
    ({ anchorX, anchorY }) =>
      Math.abs(place.x - anchorX) < sheet.boxWidth / 2 + GAP &&
      Math.abs(place.y - anchorY) < sheet.boxHeight / 2 + GAP,
  );

const leaderOf = (place: Candidate, { anchorX, anchorY }: Anchor): number =>
  Math.hypot(place.x - anchorX, place.y - anchorY);

/** Corners and edge middles of a label, in shares of its size. */
const CORNERS = [-0.5, 0, 0.5].flatMap((a) => [-0.5, 0.5].map((b) => [a, b] as const));

function costOf(place: Candidate, anchor: Anchor, placed: readonly LabelPlace[], sheet: LabelSheet): number {
  const hidden = CORNERS.filter(([a, b]) =>
    sheet.covered(place.x + a * sheet.boxWidth, place.y + b * sheet.boxHeight),
  ).length;
  const own = { ...anchor, ...place };
  const crossings = placed.filter(
    (other) => crosses(own, other) || runsThrough(own, other, sheet) || runsThrough(other, own, sheet),
  ).length;
  return leaderOf(place, anchor) + (COVERED * hidden) / CORNERS.length + CROSSING * crossings;
}

/** Changes places of labels whose leaders still cross: that always shortens both. */
function uncrossed(placed: LabelPlace[]): LabelPlace[] {
  const result = [...placed];
  for (let pass = 0; pass < result.length; pass += 1) {
    let changed = false;
    for (let i = 0; i < result.length; i += 1) {
      for (let j = i + 1; j < result.length; j += 1) {
        const [a, b] = [result[i], result[j]];
        if (a === undefined || b === undefined || !crosses(a, b)) continue;
        result[i] = { ...a, x: b.x, y: b.y };
        result[j] = { ...b, x: a.x, y: a.y };
        changed = true;
      }
    }
    if (!changed) break;
  }
  return result;
}

/** Whether one label's leader runs through another label: the stretch of it inside the box is not empty. */
function runsThrough(a: LabelPlace, b: LabelPlace, sheet: LabelSheet): boolean {
  let from = 0;
  let to = 1;
  for (const [start, end, middle, half] of [
    [a.x, a.anchorX, b.x, sheet.boxWidth / 2],
    [a.y, a.anchorY, b.y, sheet.boxHeight / 2 + GAP],
  ] as const) {
    const way = end - start;
    if (Math.abs(way) < 1e-9) {
      if (Math.abs(start - middle) >= half) return false;
      continue;
    }
    const [p, q] = [(middle - half - start) / way, (middle + half - start) / way];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  return from < to;
}

/** Whether two leaders cross. */
export function crosses(a: LabelPlace, b: LabelPlace): boolean {
  const side = (p: LabelPlace, x: number, y: number): number =>
    (p.anchorX - p.x) * (y - p.y) - (p.anchorY - p.y) * (x - p.x);
  const apart = (p: LabelPlace, q: LabelPlace): boolean =>
    side(p, q.x, q.y) * side(p, q.anchorX, q.anchorY) < 0;
  return apart(a, b) && apart(b, a);
}
