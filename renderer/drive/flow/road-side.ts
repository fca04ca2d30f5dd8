import type { Knot } from "../../flow/ribbon.ts";
import { bandThrough, fanBand, headAt, headLength } from "./shapes.ts";
import { left, right, type Sheet, THINNEST } from "./sheet.ts";

/** Gap between a ribbon that turns round the wheels' bar and the bar, px. */
const GAP = 7;

/** One end on the road side: where its head or tail is. */
export interface RoadEnd<F extends string> {
  readonly flow: F;
  readonly y: number;
  readonly width: number;
  /** right of its head */
  readonly x: number;
}

/** Ends from the top down, with their undisturbed heights over the lower lane's foot and their room, text sizes. */
export type RoadPlan<F extends string> = readonly (readonly [F, number, number])[];

/** Where the ends on the road side stand: at their places, pushed apart where they are wide. */
function endsOf<F extends string>(sheet: Sheet<F>, plan: RoadPlan<F>): RoadEnd<F>[] {
  const { places } = sheet;
  const { text } = places;
  const ends = plan
    .map(([flow, over, lines]) => {
      const px = sheet.whole(flow);
      return { flow, px, y: places.lower + over * text, room: Math.max(px + 8, lines * text) };
    })
    .filter(({ px }) => px > 0);
  ends.forEach((end, i) => {
    const before = ends[i - 1];
    if (before) end.y = Math.max(end.y, before.y + (before.room + end.room) / 2);
  });
  let most = places.foot - text * 0.2;
  for (const end of [...ends].reverse()) {
    end.y = Math.min(end.y, most - end.room / 2);
    most = end.y - end.room / 2;
  }
  return ends.map(({ flow, px, y }) => {
    const width = Math.max(THINNEST, px);
    return { flow, y, width, x: places.road + (sheet.backward(flow) ? 3 : headLength(width)) };
  });
}

/**
 * Draws the wheels' bar and what the road takes and gives. What gives and feeds something else on the road side turns
 * round the bar first.
 * @param inPx, inY height and middle of what comes along the lane
 */
export function roadSide<F extends string>(sheet: Sheet<F>, plan: RoadPlan<F>, inPx: number, inY: number) {
  const { places } = sheet;
  const x = sheet.at("wheels");
  const ids = plan.map(([id]) => id);
  const givers = ids.filter((id) => sheet.backward(id));
  const takers = ids.filter((id) => !sheet.backward(id));
  const hooked = givers.map((id) => [id, sheet.free(id, "left")] as const);
  const onRight = [...givers, ...takers].map((id) => [id, sheet.free(id, "right")] as const);
  const bar = sheet.bar("wheels", x, inY + inPx / 2, [...hooked, ["in", inPx]], onRight);
  const ends = endsOf(sheet, plan);
  const endOf = (id: F): RoadEnd<F> | undefined => ends.find(({ flow }) => flow === id);
  let over = bar.top - GAP;
  // The last that turns round has the least way to go: it lies innermost.
  for (const id of [...givers].reverse()) {
    const px = sheet.free(id, "left");
    const end = endOf(id);
    if (!end || px <= 0 || (px < THINNEST && sheet.free(id, "right") > px)) continue;
    const y = over - px / 2;
    over -= px + 3;
    const tail = end.y - end.width / 2 + px / 2;
    const knots: readonly Knot[] = [left(places.road, tail), left(x, y), right(x, bar.left(id))];
    const width = Math.max(THINNEST, px);
    const band = bandThrough(knots, width);
    // The knots run from the road inward as the power does; the flow's own direction is outward.
    const legs = band.legs.map(({ d, way }) => ({ d, way: way === 1 ? (-1 as const) : (1 as const) }));
    sheet.put(`${id}Round`, id, width, { ...band, legs, middle: [...band.middle].reverse() }, null, 0.75);
  }
  for (const id of ids) {
    const px = sheet.free(id, "right");
    const end = endOf(id);
    if (!end || px <= 0 || (px < THINNEST && sheet.free(id, "left") > px)) continue;
    const width = Math.max(THINNEST, px);
    const gives = sheet.backward(id);
    const y = gives ? end.y + end.width / 2 - width / 2 : end.y;
    const head = gives ? null : headAt(places.road, y, width, [1, 0]);
    sheet.put(id, id, width, fanBand(x, bar.right(id), places.road, y, width), head);
  }
  return ends;
}
