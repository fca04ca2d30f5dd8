import { at } from "../../shared/at.ts";
import { html, type Markup } from "../../shared/html.ts";
import { readable } from "../../shared/readable.ts";
import { shareToPercent } from "../../shared/units.ts";
import type { LogReader } from "../run/log.ts";
import type { Moment } from "../run/moments.ts";
import { REGIMES, type RegimeFamily } from "../run/regimes.ts";
import type { RunSummary } from "../run/summary.ts";
import { AXIS, clockText, timeScale, timeTicks } from "./plots.ts";
import { COLOUR, px } from "./svg.ts";

const LANES: readonly (readonly [family: RegimeFamily, name: string, colour: string, tint: string])[] = [
  ["engine", "Engine", COLOUR.carrier, COLOUR.carrierTint],
  ["electric", "Electric", COLOUR.ring, COLOUR.ringTint],
  ["braking", "Braking", COLOUR.battery, COLOUR.batteryTint],
  ["rest", "At rest", COLOUR.loss, COLOUR.lossTint],
];

const TALL = 18;
const TOP = 18;

/** Marks that tell the regimes of one lane apart, in the order of their rules. */
const MARKS = [
  "",
  "M0 6L6 0",
  "M0 3H6",
  "M3 0V6",
  "M0 0L6 6M0 6L6 0",
  "M0 0L6 6",
  "M0 3H6M3 0V6",
  "M2 2h2v2h-2z",
  "M0 1.5H6M0 4.5H6",
  "M1.5 0V6M4.5 0V6",
  "M0 6L3 0L6 6",
] as const;

/** Id of a regime's pattern. */
const patternId = (id: string): string => `regime-${id}`;

/** Patterns of the regimes, once a page: the lane's colour says the family, the mark the regime. */
export function regimeDefs(): Markup {
  const patterns = LANES.flatMap(([family, , colour, tint]) =>
    REGIMES.filter((rule) => rule.family === family).map(
      ({ id }, i) =>
        html`<pattern id="${patternId(id)}" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" fill="${i === 0 ? colour : tint}"/><path d="${MARKS[i] ?? ""}" stroke="${colour}" stroke-width="1.3" fill="none"/></pattern>`,
    ),
  );
  return html`<svg width="0" height="0" style="position:absolute" aria-hidden="true"><defs>${patterns}</defs></svg>`;
}

interface Span {
  readonly from: number;
  readonly until: number;
  readonly regime: number;
}

/** Stretches of one regime, s. */
export function regimeSpans(time: Float64Array, regime: Uint8Array): readonly Span[] {
  const spans: Span[] = [];
  // A row tells the step that led to it.
  for (let i = 1; i < time.length; i += 1) {
    const last = spans.at(-1);
    const now = at(regime, i);
    const until = at(time, i);
    if (last?.regime === now) spans[spans.length - 1] = { ...last, until };
    else spans.push({ from: at(time, i - 1), until, regime: now });
  }
  return spans;
}

/** The regimes over time in four lanes, the moments as triangles under them. */
export function regimeLanes(log: LogReader, regime: Uint8Array, moments: readonly Moment[]): Markup {
  const time = log.view("time");
  const end = time.length > 0 ? at(time, time.length - 1) : 1;
  const x = timeScale(end);
  const foot = TOP + LANES.length * (TALL + 2);
  const bars = regimeSpans(time, regime).map(({ from, until, regime: index }) => {
    const rule = REGIMES[index];
    const lane = LANES.findIndex(([family]) => family === rule?.family);
    const wide = Math.max(0.6, x(until) - x(from));
    return html`<rect x="${px(x(from))}" y="${TOP + lane * (TALL + 2)}" width="${px(wide)}" height="${TALL}" fill="url(#${patternId(rule?.id ?? "")})"/>`;
  });
  const names = LANES.map(
    ([, name], i) =>
      html`<text x="${AXIS.left - 6}" y="${TOP + i * (TALL + 2) + 14}" text-anchor="end">${name}</text><path d="M${AXIS.left} ${TOP + i * (TALL + 2) + TALL + 1}H${AXIS.right}" stroke="${COLOUR.grid}"/>`,
  );
  const marks = moments.map(
    ({ time: t }) => html`<path d="M${px(x(t))} ${foot + 1}l4 8h-8z" fill="${COLOUR.ink}"/>`,
  );
  const ticks = timeTicks(end).map(
    (tick) => html`<text x="${px(x(tick))}" y="${foot + 26}" text-anchor="middle">${clockText(tick)}</text>`,
  );
  return html`<svg viewBox="0 0 ${AXIS.width} ${foot + 34}" width="${AXIS.width}" role="img" aria-label="Regimes over time; the table below gives their times">${names}${bars}${marks}${ticks}</svg>`;
}

/** What the patterns mean, with the time of each regime. */
export function regimeTable(list: RunSummary["regimes"]): Markup {
  const rows = list.map(
    ({ id, title, seconds, share }) =>
      html`<tr><td><svg width="34" height="14" aria-hidden="true"><rect width="34" height="14" fill="url(#${patternId(id)})"/></svg></td><td>${title}</td><td class="n">${readable(seconds, 1)} s</td><td class="n">${readable(shareToPercent(share), 1)} %</td></tr>`,
  );
  return html`<table class="narrow"><thead><tr><th></th><th>Regime</th><th class="n">Time</th><th class="n">Share</th></tr></thead><tbody>${rows}</tbody></table>`;
}
