import { html, type Markup } from "../../shared/html.ts";
import { readable } from "../../shared/readable.ts";
import { shareToPercent } from "../../shared/units.ts";
import type { LedgerId } from "../run/ledger.ts";
import type { RunSummary } from "../run/summary.ts";
import { COLOUR, fillOf, niceStep, px } from "./svg.ts";

/** One ribbon of the picture. */
export interface Ribbon {
  readonly id: string;
  readonly title: string;
  /** J, > 0 */
  readonly energy: number;
  readonly fill: string;
  readonly stroke: string;
}

/** What came in and what went out or was stored; both sides add up to the same. */
export interface LedgerSides {
  readonly from: readonly Ribbon[];
  readonly to: readonly Ribbon[];
}

const FUEL = [fillOf("chemical", "fuel"), COLOUR.fuel] as const;
const HEAT = [fillOf("heat", "loss"), COLOUR.loss] as const;
const ROAD = [fillOf("mechanical", "ring"), COLOUR.ring] as const;
const ELECTRIC = [fillOf("electrical", "battery"), COLOUR.battery] as const;
const CHARGE = [fillOf("chemical", "battery"), COLOUR.battery] as const;

const LOOKS: Readonly<Partial<Record<LedgerId, readonly [string, string]>>> = {
  running_fuel: FUEL,
  start_fuel: FUEL,
  auxiliary: ELECTRIC,
  rolling: ROAD,
  air: ROAD,
  kinetic_change: ROAD,
  potential_change: ROAD,
  battery_change: CHARGE,
  polarisation_change: CHARGE,
};

const STORED: Readonly<Record<string, readonly [filled: string, emptied: string]>> = {
  kinetic_change: ["into motion", "out of motion"],
  potential_change: ["into height", "out of height"],
  battery_change: ["into the battery", "out of the battery"],
  polarisation_change: ["into the RC pair", "out of the RC pair"],
};

/** Lines below this share of what came in share one ribbon; the table has each. */
const SMALL = 0.0005;

const sumOf = (ribbons: readonly Ribbon[]): number => ribbons.reduce((sum, { energy }) => sum + energy, 0);

/** The smallest ribbons as one, so that the side still adds up. */
function gathered(ribbons: readonly Ribbon[], total: number): readonly Ribbon[] {
  const small = ribbons.filter(({ energy }) => energy < SMALL * total);
  if (small.length === 0) return ribbons;
  const [fill, stroke] = HEAT;
  const title = small.length === 1 ? "one small line" : `${small.length} small lines`;
  return [
    ...ribbons.filter(({ energy }) => energy >= SMALL * total),
    { id: "small", title, energy: sumOf(small), fill, stroke },
  ];
}

/** The ledger's lines as ribbons: a store that gave, and a loss that was a gain (a tail wind), stand with what came in. */
export function ledgerSides(ledger: RunSummary["ledger"]): LedgerSides {
  const from: Ribbon[] = [];
  const to: Ribbon[] = [];
  for (const { id, title, side, value_j: value } of ledger) {
    if (value === 0) continue;
    const [fill, stroke] = LOOKS[id as LedgerId] ?? HEAT;
    const words = STORED[id]?.[value > 0 ? 0 : 1] ?? title;
    const into = side === "in" ? value > 0 : value < 0;
    (into ? from : to).push({ id, title: words, energy: Math.abs(value), fill, stroke });
  }
  const total = sumOf(from);
  return { from: gathered(from, total), to: gathered(to, total) };
}

const WIDTH = 940;
const LEFT = 270;
const NODE = 440;
const RIGHT = 610;
const TOP = 20;
const TALL = 400;
const LABEL = 19;
/** Ribbons are never thinner than this, px. */
const THIN = 1.2;

interface Placed {
  readonly ribbon: Ribbon;
  /** at the node */
  readonly y: number;
  readonly height: number;
  /** middle at the outer end */
  readonly end: number;
}

function place(ribbons: readonly Ribbon[], perJoule: number, height: number): readonly Placed[] {
  const total = sumOf(ribbons) * perJoule;
  let y = TOP + (height - total) / 2;
  const stacked = ribbons.map((ribbon) => {
    const tall = ribbon.energy * perJoule;
    const found = { ribbon, y, height: tall };
    y += tall;
    return found;
  });
  // The outer ends stand apart so that each label has its line; tall ribbons need no more than their height.
  const gap = 7;
  let next = TOP;
  const tops = stacked.map(({ height: tall }) => {
    const mine = Math.max(tall, LABEL - gap);
    const at = next + mine / 2;
    next += mine + gap;
    return at;
  });
  return stacked.map((one, i) => ({ ...one, end: tops[i] ?? 0 }));
}

function ribbonPath({ y, height, end }: Placed, outer: number): string {
  const tall = Math.max(THIN, height);
  const node = outer < NODE ? NODE - 2 : NODE + 2;
  const mid = (node + outer) / 2;
  const top = y + height / 2 - tall / 2;
  const out = end - tall / 2;
  return `M${px(node)} ${px(top)}C${px(mid)} ${px(top)} ${px(mid)} ${px(out)} ${px(outer)} ${px(out)}V${px(out + tall)}C${px(mid)} ${px(out + tall)} ${px(mid)} ${px(top + tall)} ${px(node)} ${px(top + tall)}Z`;
}

const extent = (placed: readonly Placed[]): number => {
  const last = placed.at(-1);
  return last ? last.end + Math.max(LABEL, last.height) / 2 : TOP;
};

function side(placed: readonly Placed[], outer: number, total: number): Markup[] {
  const left = outer < NODE;
  return placed.map((one) => {
    const { ribbon, end } = one;
    const part = shareToPercent(ribbon.energy / total);
    const share = part < 0.05 ? "under 0.1" : readable(part, 1);
    const fill = one.height < 4 ? ribbon.stroke : ribbon.fill;
    return html`<path d="${ribbonPath(one, outer)}" fill="${fill}" stroke="${ribbon.stroke}" stroke-width=".5"/>
<text x="${left ? outer - 8 : outer + 8}" y="${px(end + 5)}" text-anchor="${left ? "end" : "start"}">${ribbon.title}, ${readable(ribbon.energy / 1000)} kJ, ${share} %</text>\n`;
  });
}

/** The ledger as a picture: what came in, one bar as tall as both sides, what went out or was stored. */
export function ledgerPicture(ledger: RunSummary["ledger"]): Markup {
  const { from, to } = ledgerSides(ledger);
  const total = sumOf(from);
  if (!(total > 0)) return html`<p>No energy was turned over.</p>`;
  const bar = TALL * 0.7;
  const perJoule = bar / total;
  const wide = place(to, perJoule, TALL);
  const deep = Math.max(TALL, extent(wide) - TOP);
  const [into, out] = [place(from, perJoule, deep), place(to, perJoule, deep)];
  // What comes in stands in the middle of the height, beside the bar.
  const lift = Math.max(0, (deep - (extent(into) - TOP)) / 2);
  const moved = into.map((one) => ({ ...one, end: one.end + lift }));
  const height = TOP + deep + 40;
  const scale = niceStep(total / 1000, 8);
  const long = scale * 1000 * perJoule;
  return html`<svg viewBox="0 0 ${WIDTH} ${px(height)}" width="${WIDTH}" role="img" aria-label="Energy ledger: ${readable(total / 1000)} kilojoules came in and as many went out or were stored">
${side(moved, LEFT, total)}${side(out, RIGHT, total)}
<rect x="${NODE - 2}" y="${px(TOP + (deep - bar) / 2)}" width="4" height="${px(bar)}" fill="${COLOUR.ink}"/>
<text x="${NODE}" y="${px(TOP + (deep - bar) / 2 - 8)}" text-anchor="middle" font-weight="600">${readable(total / 1000)} kJ</text>
<path d="M20 ${px(height - 12)}v${px(-long)}m-4 0h8m-8 ${px(long)}h8" stroke="${COLOUR.ink}" fill="none"/>
<text x="32" y="${px(height - 12)}">${readable(scale)} kJ tall</text>
</svg>`;
}
