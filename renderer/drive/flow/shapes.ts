import { type Knot, middleOf } from "../../flow/ribbon.ts";

/** A point, px. */
export type Point = readonly [number, number];

/** A tenth of a px is as fine as can be seen. */
const r = (value: number): number => Math.round(value * 10) / 10;

const line = (points: readonly Point[]): string => points.map(([x, y]) => `${r(x)} ${r(y)}`).join("L");

/** A closed path through points. */
export const closed = (points: readonly Point[]): string => `M${line(points)}Z`;

/** A path through points from the first to the last. */
export const open = (points: readonly Point[]): string => `M${line(points)}`;

/** Both sides of a band of a width about a middle line; ends that are `flat` are cut upright. */
function sidesOf(middle: readonly Point[], width: number, flat: readonly [boolean, boolean]) {
  const side = (sign: 1 | -1): Point[] =>
    middle.map(([x, y], i) => {
      const [ax, ay] = middle[Math.max(0, i - 1)] ?? [x, y];
      const [bx, by] = middle[Math.min(middle.length - 1, i + 1)] ?? [x, y];
      const level = (i === 0 && flat[0]) || (i === middle.length - 1 && flat[1]);
      const dx = level ? Math.sign(bx - ax) : bx - ax;
      const dy = level ? 0 : by - ay;
      const half = (sign * width) / 2 / (Math.hypot(dx, dy) || 1);
      return [x - half * dy, y + half * dx] as const;
    });
  return { near: side(1), far: side(-1) };
}

/** A band with its outline, its legs (each runs to one side) and its middle line. */
export interface Band {
  readonly outline: string;
  /** way: +1 where it runs to the right, −1 to the left, along its knots */
  readonly legs: readonly { readonly d: string; readonly way: 1 | -1 }[];
  readonly middle: readonly Point[];
}

/** A band of a width through knots: where it turns round it is parted into legs. */
export function bandThrough(knots: readonly Knot[], width: number): Band {
  const straight = knots.length === 2 && knots[0]?.y === knots[1]?.y;
  const middle: readonly Point[] = straight ? knots.map(({ x, y }) => [x, y] as const) : middleOf(knots);
  const { near, far } = sidesOf(middle, width, [true, true]);
  const outline = closed([...near, ...[...far].reverse()]);
  const first = knots[0]?.way ?? 1;
  const turn = knots.findIndex(({ way }) => way !== first);
  if (turn < 0) return { outline, legs: [{ d: outline, way: first }], middle };
  const apex = Math.round(((turn - 0.5) * (middle.length - 1)) / (knots.length - 1));
  const leg = (from: number, to: number): string =>
    closed([...near.slice(from, to + 1), ...far.slice(from, to + 1).reverse()]);
  return {
    outline,
    legs: [
      { d: leg(0, apex), way: first },
      { d: leg(apex, middle.length - 1), way: first === 1 ? -1 : 1 },
    ],
    middle,
  };
}

/** A band between two upright ends whose height stays the same: for short and steep ones. */
export function fanBand(x0: number, y0: number, x1: number, y1: number, width: number): Band {
  const half = width / 2;
  const mid = r((x0 + x1) / 2);
  const [a, b, c, d] = [r(y0 - half), r(y1 - half), r(y1 + half), r(y0 + half)];
  const path = `M${r(x0)} ${a}C${mid} ${a} ${mid} ${b} ${r(x1)} ${b}L${r(x1)} ${c}C${mid} ${c} ${mid} ${d} ${r(x0)} ${d}Z`;
  return {
    outline: path,
    legs: [{ d: path, way: 1 }],
    middle: [
      [x0, y0],
      [(x0 + x1) / 2, (y0 + y1) / 2],
      [x1, y1],
    ],
  };
}

/** Point and direction in degrees half way along a middle line. */
export function markAt(middle: readonly Point[], backward: boolean, share = 0.5) {
  const place = share * (middle.length - 1);
  const i = Math.min(middle.length - 2, Math.floor(place));
  const [ax, ay] = middle[i] ?? [0, 0];
  const [bx, by] = middle[i + 1] ?? [ax + 1, ay];
  const rest = place - i;
  const along = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return {
    x: r(ax + (bx - ax) * rest),
    y: r(ay + (by - ay) * rest),
    angle: Math.round(backward ? along + 180 : along),
  };
}

/** A pointed head of a width, standing on (x, y) and pointing the way given by its unit vector. */
export function headAt(x: number, y: number, width: number, [ux, uy]: Point): string {
  const half = width / 2 + Math.max(3, width * 0.1);
  const long = headLength(width);
  return closed([
    [x - uy * half, y + ux * half],
    [x + ux * long, y + uy * long],
    [x + uy * half, y - ux * half],
  ]);
}

/** Length of that head, px. */
export const headLength = (width: number): number => Math.max(7, Math.min(width * 0.45, 20));

/** A flow that turns away from a bar, or in to it, through a quarter turn. */
export interface Turn {
  readonly body: string;
  readonly head: string;
  /** outermost point of its head, and the middle of its upright part */
  readonly tip: Point;
  readonly mark: { readonly x: number; readonly y: number; readonly angle: number };
  readonly inward: boolean;
  readonly x: number;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

interface TurnInput {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** +1 leaves the bar on its right, −1 on its left */
  readonly side: 1 | -1;
  /** +1 turns down, −1 up */
  readonly dir: 1 | -1;
  /** height of the far end over or under the bar's point, px */
  readonly reach: number;
  /** distance of its upright part from the bar, px */
  readonly off: number;
  /** comes in instead of going out */
  readonly inward: boolean;
}

/** The shape of a flow that turns away. */
export function turnAway({ x, y, width, side, dir, reach, off, inward }: TurnInput): Turn {
  const half = width / 2;
  const round = Math.max(3 + half, Math.min(off, 9 + half));
  const mid = x + side * off;
  const start = x + side * (off - round);
  const inner = round - half;
  const outer = round + half;
  const long = headLength(width);
  const end = y + dir * Math.max(reach, round + (inward ? long + 6 : 4));
  const clock = side * dir > 0 ? 1 : 0;
  const far = y - dir * half;
  const near = y + dir * half;
  const at = (px: number, py: number): string => `${r(px)} ${r(py)}`;
  const body = [
    `M${at(x, far)}L${at(start, far)}`,
    `A${r(outer)} ${r(outer)} 0 0 ${clock} ${at(mid + side * half, y + dir * round)}`,
    `L${at(mid + side * half, end)}L${at(mid - side * half, end)}L${at(mid - side * half, y + dir * round)}`,
    `A${r(inner)} ${r(inner)} 0 0 ${1 - clock} ${at(start, near)}L${at(x, near)}Z`,
  ].join("");
  // What comes in has its head within, pointing back along the upright part.
  const head = inward
    ? headAt(mid, y + dir * (round + long), width, [0, -dir])
    : headAt(mid, end, width, [0, dir]);
  const tip = inward ? end : end + dir * long;
  const wide = half + Math.max(3, width * 0.1);
  const top = Math.min(y + dir * round * 0.3, tip);
  return {
    body,
    head,
    tip: [mid, tip],
    mark: { x: r(mid), y: r((y + dir * round + end) / 2), angle: (inward ? -dir : dir) * 90 },
    inward,
    x: mid,
    box: { x: mid - wide, y: top, width: 2 * wide, height: Math.abs(tip - y - dir * round * 0.3) },
  };
}
