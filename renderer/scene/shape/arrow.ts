/** An arc arrow in a plane square to the axis, as a strip of corner pairs and the line round it. */
export interface Arrow {
  /** x, y pairs; triangles join them three by three. */
  readonly triangles: Float64Array;
  /** x, y pairs of the closed line round it. */
  readonly outline: Float64Array;
}

/** Where an arrow runs. */
export interface ArrowPlace {
  readonly radius: number;
  /** Width of the shaft; the head is {@link HEAD} times as wide. */
  readonly width: number;
  /** Middle of the arc, rad. */
  readonly middle: number;
  /** Angle from tail to tip, rad, positive counter-clockwise. */
  readonly sweep: number;
}

const HEAD = 2.4;
const PIECES = 40;

/** Turn of an arrow a newton metre, least and greatest turn, rad. */
const PER_NEWTON_METRE = (1.25 * Math.PI) / 180;
const LEAST = (20 * Math.PI) / 180;
const MOST = (290 * Math.PI) / 180;

/** Torques below this are no torque on a drawing. */
const NOTHING = 0.05;

/** Signed turn of the arrow for a torque, N·m: in proportion, within what can be seen and told apart. 0: no arrow. */
export function arrowSweep(torque: number): number {
  const size = Math.abs(torque);
  if (!(size > NOTHING)) return 0;
  return Math.sign(torque) * Math.min(MOST, Math.max(LEAST, PER_NEWTON_METRE * size));
}

/** The arrow's shape; the head takes at most half of it. */
export function arrowShape({ radius, width, middle, sweep }: ArrowPlace): Arrow {
  const way = Math.sign(sweep);
  const head = Math.min(Math.abs(sweep) / 2, (1.15 * HEAD * width) / radius);
  const tail = middle - sweep / 2;
  const neck = middle + sweep / 2 - way * head;
  const point = (r: number, angle: number): readonly [number, number] => [
    r * Math.cos(angle),
    r * Math.sin(angle),
  ];
  const outer: (readonly [number, number])[] = [];
  const inner: (readonly [number, number])[] = [];
  for (let i = 0; i <= PIECES; i += 1) {
    const angle = tail + ((neck - tail) * i) / PIECES;
    outer.push(point(radius + width / 2, angle));
    inner.push(point(radius - width / 2, angle));
  }
  const tip = point(radius, middle + sweep / 2);
  const wings = [point(radius + (HEAD * width) / 2, neck), point(radius - (HEAD * width) / 2, neck)] as const;
  const triangles: number[] = [];
  for (let i = 0; i < PIECES; i += 1) {
    const [a, b, c, d] = [outer[i], inner[i], outer[i + 1], inner[i + 1]];
    if (a && b && c && d) triangles.push(...a, ...b, ...c, ...b, ...d, ...c);
  }
  triangles.push(...wings[0], ...wings[1], ...tip);
  const outline = [...outer, wings[0], tip, wings[1], ...inner.reverse()].flat();
  return { triangles: Float64Array.from(triangles), outline: Float64Array.from(outline) };
}

/** Corners and line pieces an arrow takes at most. */
export const ARROW_CORNERS = 6 * PIECES + 3;
export const ARROW_LINES = 2 * PIECES + 5;
