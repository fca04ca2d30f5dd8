type Point = readonly [number, number];

/** A point that a ribbon's middle runs through, with the way it runs. */
export interface Knot {
  readonly x: number;
  readonly y: number;
  /** +1 to the right, −1 to the left */
  readonly way: 1 | -1;
}

function curve(a: Knot, b: Knot, share: number): Point {
  const turn = a.way !== b.way;
  const reach = turn ? (Math.abs(b.y - a.y) / 2) * 1.34 : Math.abs(b.x - a.x) / 2;
  const back = turn ? -1 : 1;
  const c1 = a.x + a.way * reach;
  const c2 = b.x - back * a.way * reach;
  const s = 1 - share;
  const mix = (p: number, q: number, r: number, e: number): number =>
    s * s * s * p + 3 * s * s * share * q + 3 * s * share * share * r + share * share * share * e;
  return [mix(a.x, c1, c2, b.x), mix(a.y, a.y, b.y, b.y)];
}

const SAMPLES = 24;

/** Points of the middle line through its knots. */
export function middleOf(knots: readonly Knot[]): Point[] {
  const points: Point[] = [];
  for (let i = 1; i < knots.length; i += 1) {
    const [a, b] = [knots[i - 1], knots[i]];
    if (!a || !b) continue;
    const straight = a.way === b.way && a.y === b.y;
    for (let j = i > 1 ? 1 : 0; j <= SAMPLES; j += 1) {
      const share = j / SAMPLES;
      points.push(straight ? [a.x + (b.x - a.x) * share, a.y] : curve(a, b, share));
    }
  }
  return points;
}

/** Outline of a ribbon of a width about its middle line. */
export function outlineOf(middle: readonly Point[], width: number) {
  const side = (sign: 1 | -1): Point[] =>
    middle.map(([x, y], i) => {
      const [ax, ay] = middle[Math.max(0, i - 1)] ?? [x, y];
      const [bx, by] = middle[Math.min(middle.length - 1, i + 1)] ?? [x, y];
      const flat = i === 0 || i === middle.length - 1;
      const dx = flat ? Math.sign(bx - ax) : bx - ax;
      const dy = flat ? 0 : by - ay;
      const length = Math.hypot(dx, dy) || 1;
      return [x - (sign * dy * width) / 2 / length, y + (sign * dx * width) / 2 / length] as const;
    });
  return [...side(1), ...side(-1).reverse()];
}

/** Middle of a ribbon, and in degrees the way its power runs there. */
export function markOf(middle: readonly Point[], backward: boolean) {
  const i = Math.floor(middle.length / 2);
  const [x, y] = middle[i] ?? [0, 0];
  const [ax, ay] = middle[i - 1] ?? [x - 1, y];
  const [bx, by] = middle[i + 1] ?? [x + 1, y];
  const along = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return { x, y, angle: backward ? along + 180 : along };
}
