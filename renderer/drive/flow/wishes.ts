import {
  type Anchor,
  type Box,
  type LabelWish,
  type Measure,
  type Place,
  type PlacedLabel,
  placeLabels,
  type Segment,
} from "../../ui/labels.ts";
import type { BarId } from "./bars.ts";
import type { Places } from "./places.ts";
import type { Bar, Ribbon, TurnOff } from "./sheet.ts";

/** A drawn sheet, of powers or of energies. */
export interface Picture<F extends string> {
  readonly places: Places;
  readonly ribbons: readonly Ribbon<F>[];
  readonly turns: readonly TurnOff<F>[];
  readonly bars: readonly Bar[];
  readonly ways: readonly string[];
}

/** A place of a label: its baseline point and the way it runs from there. */
export const at = (x: number, y: number, anchor: Anchor = "middle"): Place => ({ x, y, anchor });

/** Labels below this weight go when they find no free place. */
const STAYS = 50;

/** Gathers the labels that a sheet wants, all in its text size. */
export class Wishes<F extends string> {
  readonly list: LabelWish[] = [];
  readonly text: number;
  /** short names */
  readonly compact: boolean;

  constructor(readonly picture: Picture<F>) {
    const { text, width } = picture.places;
    this.text = text;
    this.compact = width < text * 56;
  }

  add(id: string, text: string, weight: number, places: readonly Place[]): void {
    if (this.list.some((wish) => wish.id === id)) return;
    this.list.push({ id, text, size: this.text, weight, places, droppable: weight < STAYS });
  }

  /** A bar's top and height; none stands on the lower lane's foot. */
  bar(id: BarId): Pick<Bar, "x" | "y" | "height"> {
    const { bars, places } = this.picture;
    return bars.find((bar) => bar.id === id) ?? { x: places.at(id), y: places.lower, height: 0 };
  }

  ribbon(id: string): Ribbon<F> | undefined {
    return this.picture.ribbons.find((ribbon) => ribbon.id === id);
  }

  /** Height of a point on a ribbon's middle. @param share 0–1 along it */
  heightOn({ middle }: Ribbon<F>, share: number): number {
    const [, y] = middle[Math.round(share * (middle.length - 1))] ?? [0, 0];
    return y;
  }

  /** Beside what turns away: on its outer side, at its tip, on its inner side; upward ones have theirs within. */
  besideTurn({ tip, dir, side, width, x }: TurnOff<F>): Place[] {
    const { text } = this;
    const aside = width / 2 + text * 0.5;
    const y = tip[1] + (dir > 0 ? -text * 0.05 : text * 0.5);
    const outer = at(x + side * aside, y, side > 0 ? "start" : "end");
    const inner = at(x - side * aside, y, side > 0 ? "end" : "start");
    const over = at(x, tip[1] + (dir > 0 ? text * 0.95 : -text * 0.3));
    const low = at(x, tip[1] + text * 1.7);
    if (dir < 0) return [inner, outer, over];
    return side > 0 ? [outer, over, inner, low] : [inner, over, outer, low];
  }

  /** Gives every label its place. */
  placed(measure: Measure): readonly PlacedLabel[] {
    const { width, foot, text } = this.picture.places;
    const bounds = { x: 0, y: -text * 0.4, width: width + text * 0.6, height: foot + text * 0.6 };
    return placeLabels(this.list, { ...obstaclesOf(this.picture), bounds }, measure);
  }
}

/** Boxes about level ribbons, bars and what turns away; both edges of curved ribbons. */
function obstaclesOf<F extends string>(picture: Picture<F>): { boxes: Box[]; lines: Segment[] } {
  const boxes: Box[] = [];
  const lines: Segment[] = [];
  for (const { x, y, height } of picture.bars)
    boxes.push({ x: x - 2, y: y - 2, width: 4, height: height + 4 });
  for (const { box } of picture.turns) boxes.push(box);
  for (const { middle, width } of picture.ribbons) {
    const [first] = middle;
    const last = middle[middle.length - 1];
    if (!first || !last) continue;
    if (middle.length === 2) {
      boxes.push({ x: first[0], y: first[1] - width / 2, width: last[0] - first[0], height: width });
      continue;
    }
    const step = middle.length > 8 ? 6 : 1;
    const half = width / 2;
    for (let i = step; i < middle.length; i += step) {
      const [x1, y1] = middle[i - step] ?? first;
      const [x2, y2] = middle[i] ?? last;
      const length = Math.hypot(x2 - x1, y2 - y1) || 1;
      const [nx, ny] = [((y1 - y2) / length) * half, ((x2 - x1) / length) * half];
      lines.push({ x1: x1 + nx, y1: y1 + ny, x2: x2 + nx, y2: y2 + ny });
      if (width > 3) lines.push({ x1: x1 - nx, y1: y1 - ny, x2: x2 - nx, y2: y2 - ny });
    }
  }
  return { boxes, lines };
}
