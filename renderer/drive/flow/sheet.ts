import type { Knot } from "../../flow/ribbon.ts";
import { type Balance, NOTHING } from "./balance.ts";
import type { BarId } from "./bars.ts";
import type { Drawn } from "./kinds.ts";
import type { Places } from "./places.ts";
import { type Band, bandThrough, markAt, open, type Turn, turnAway } from "./shapes.ts";

/** A ribbon is never thinner than this, px. */
export const THINNEST = 1.2;

/** Width of a ribbon that may not be told, px. */
const UNTOLD = 12;

/** Where a ribbon runs and how it is drawn. */
export interface Ribbon<F extends string> extends Drawn, Band {
  readonly id: string;
  readonly flow: F;
  readonly backward: boolean;
  readonly width: number;
  readonly mark: { readonly x: number; readonly y: number; readonly angle: number };
  /** the head of a ribbon that ends on the sheet */
  readonly head: string | null;
  /** part of power that goes round */
  readonly loop: boolean;
  readonly asked: boolean;
}

/** A loss or a store that turns away from its bar, or comes in to it. */
export interface TurnOff<F extends string> extends Drawn, Turn {
  readonly id: string;
  readonly flow: F;
  readonly width: number;
  readonly dir: 1 | -1;
  readonly side: 1 | -1;
  readonly asked: boolean;
}

/** A node: a plain bar, as tall as all that goes through; `left` and `right` are the heights of both sides. */
export interface Bar {
  readonly id: BarId | "tip";
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
}

/** What is under each other on one side of a bar: names with heights, from the top. */
export type Parts = readonly (readonly [string, number])[];

/** What a sheet is made from. */
export interface SheetSource<F extends string> {
  readonly places: Places;
  readonly split: Balance<F>;
  readonly asked: ReadonlySet<F>;
  /** px a watt or a joule */
  readonly perUnit: number;
  readonly power: (flow: F) => number;
  readonly drawn: (flow: F) => Drawn;
  /** ids of the ribbons that power goes round in */
  readonly loop: ReadonlySet<string>;
}

/** Knots of a ribbon that runs to the right, or to the left, at a point. */
export const right = (x: number, y: number): Knot => ({ x, y, way: 1 });
export const left = (x: number, y: number): Knot => ({ x, y, way: -1 });

/** Gathers ribbons, bars and what turns away, all to one scale. */
export class Sheet<F extends string> {
  readonly ribbons: Ribbon<F>[] = [];
  readonly turns: TurnOff<F>[] = [];
  readonly bars: Bar[] = [];
  /** middles of ribbons that stand empty, so that the places can be seen at rest too */
  readonly ways: string[] = [];

  constructor(readonly source: SheetSource<F>) {}

  get places(): Places {
    return this.source.places;
  }

  at(id: BarId): number {
    return this.source.places.at(id);
  }

  asked(flow: F): boolean {
    return this.source.asked.has(flow);
  }

  backward(flow: F): boolean {
    return this.source.power(flow) < 0 && !this.asked(flow);
  }

  /** Height of an amount, px: true to scale, so that bars add up. */
  px(amount: number): number {
    return Math.abs(amount) > NOTHING ? Math.abs(amount) * this.source.perUnit : 0;
  }

  /** Height of a whole flow. */
  whole(flow: F): number {
    return this.asked(flow) ? UNTOLD : this.px(this.source.power(flow));
  }

  /** What of it turns round, and what goes the direct way. */
  over(flow: F): number {
    return this.px(this.source.split.turned.get(flow) ?? 0);
  }

  direct(flow: F): number {
    return Math.max(0, this.whole(flow) - this.over(flow));
  }

  /** What of a free flow stands on a side. */
  free(flow: F, side: "left" | "right"): number {
    if (this.asked(flow)) return side === "right" ? UNTOLD : 0;
    return this.px(this.source.split.free.get(flow)?.[side] ?? 0);
  }

  /** Draws a bar standing on a foot and tells where the middle of each part on its sides is. */
  bar(id: Bar["id"], x: number, foot: number, onLeft: Parts, onRight: Parts) {
    const sum = (parts: Parts): number => parts.reduce((total, [, px]) => total + px, 0);
    const [l, r] = [sum(onLeft), sum(onRight)];
    const height = Math.max(l, r);
    this.bars.push({ id, x, y: foot - height, height, left: l, right: r });
    const place = (parts: Parts, total: number) => {
      let y = foot - total;
      const middles = new Map<string, number>();
      for (const [name, px] of parts) {
        middles.set(name, y + px / 2);
        y += px;
      }
      return (name: string): number => middles.get(name) ?? foot;
    };
    return { top: foot - height, left: place(onLeft, l), right: place(onRight, r) };
  }

  /**
   * Draws a ribbon through knots. A part of a flow that could not be told from its outline is left out when the rest of
   * the flow is drawn elsewhere.
   * @param share where along its middle the chevron stands
   */
  ribbon(id: string, flow: F, px: number, knots: readonly Knot[], share = 0.5): void {
    const whole = this.whole(flow);
    if (whole === 0 && id === flow) this.ways.push(open(bandThrough(knots, 0).middle));
    const rest = whole - px;
    if (px <= 0 || (px < THINNEST && rest >= px)) return;
    const width = Math.max(THINNEST, px);
    this.put(id, flow, width, bandThrough(knots, width), null, share);
  }

  /** Draws a band. @param share where along its middle the chevron stands */
  put(id: string, flow: F, width: number, band: Band, head: string | null = null, share = 0.5): void {
    const backward = this.backward(flow);
    this.ribbons.push({
      ...this.source.drawn(flow),
      ...band,
      id,
      flow,
      backward,
      width,
      mark: markAt(band.middle, backward, share),
      head,
      loop: this.source.loop.has(id),
      asked: this.asked(flow),
    });
  }

  /** Turns free flows away on both sides of a bar, the outermost of the stack first. @param dir +1 down, −1 up */
  turnOff(
    flows: readonly F[],
    dir: 1 | -1,
    x: number,
    sides: { readonly left: (name: string) => number; readonly right: (name: string) => number },
    reach: number,
  ): void {
    for (const side of [1, -1] as const) {
      const key = side > 0 ? "right" : "left";
      let off = 0;
      for (const flow of flows) {
        const px = this.free(flow, key);
        const other = this.free(flow, side > 0 ? "left" : "right");
        if (px <= 0 || (px < THINNEST / 2 && other > px)) continue;
        const width = this.asked(flow) ? 6 : Math.max(THINNEST, px);
        off += 9 + width / 2;
        const inward = this.backward(flow);
        const y = sides[key](flow);
        this.turns.push({
          ...this.source.drawn(flow),
          ...turnAway({ x, y, width, side, dir, reach: reach + px / 2, off, inward }),
          id: `${flow}:${key}`,
          flow,
          width,
          dir,
          side,
          asked: this.asked(flow),
        });
        off += width / 2;
      }
    }
  }
}
