import { type Fillet, type FilletStart, fillet } from "./fillet.ts";
import { type Point, polar } from "./outline.ts";

/** The flank of half a tooth from its deepest to its outermost involute point, and how the rest joins it. */
export interface HalfTooth {
  readonly teeth: number;
  /** Radius and half angle of involute points, root side first, tip last. */
  readonly flank: readonly { readonly radius: number; readonly halfAngle: number }[];
  /** Where the fillet should begin; further points between it and the flank are a straight line. */
  readonly start: FilletStart;
  readonly rootRadius: number;
  readonly arcPieces: number;
}

/**
 * Points of half a tooth, from the middle of the space to the middle of the tip: root arc, fillet, line (when the
 * fillet begins apart from the involute), involute, tip arc.
 * @throws RangeError when the tooth comes to a point before its tip circle or the fillets overlap
 */
export function halfTooth(half: HalfTooth): Point[] {
  const tip = half.flank[half.flank.length - 1];
  const foot = half.flank[0];
  if (tip === undefined || foot === undefined) throw new RangeError("a flank needs points");
  if (!(tip.halfAngle > 0)) throw new RangeError(`tooth is pointed at radius ${tip.radius}`);
  const root = fillet(half.start, half.rootRadius, half.arcPieces);
  const space = Math.PI / half.teeth;
  if (!(root.rootHalfAngle < space)) {
    throw new RangeError(`fillets of ${half.teeth} teeth overlap: ${root.rootHalfAngle} of ${space} rad`);
  }
  const apart = half.start.radius !== foot.radius;
  return [
    ...rootArc(half, root, space),
    ...root.points.slice(0, apart ? undefined : -1),
    ...half.flank.map((point) => polar(point.radius, -point.halfAngle)),
    ...tipArc(tip.radius, tip.halfAngle, half.arcPieces / 2),
  ];
}

/** From the middle of the space up to, not including, the fillet. */
function rootArc(half: HalfTooth, root: Fillet, space: number): Point[] {
  const pieces = half.arcPieces / 2;
  return Array.from({ length: pieces }, (_, index) =>
    polar(half.rootRadius, -space + ((space - root.rootHalfAngle) * index) / pieces),
  );
}

/** From the flank, not included, to the middle of the tip, exactly on the x axis. */
function tipArc(radius: number, halfAngle: number, pieces: number): Point[] {
  return Array.from({ length: pieces }, (_, index) => {
    const left = pieces - 1 - index;
    return left === 0 ? { x: radius, y: 0 } : polar(radius, (-halfAngle * left) / pieces);
  });
}
