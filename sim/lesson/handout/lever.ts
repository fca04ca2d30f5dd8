import { html, type Markup } from "../../../shared/html.ts";
import { readable } from "../../../shared/readable.ts";
import { radPerSToRpm } from "../../../shared/units.ts";
import { SHAFTS, type Shaft, type ShaftValues } from "../../bench/shafts.ts";

/** What a printed lever line shows. */
export interface LeverPicture {
  readonly k: number;
  /** rad/s */
  readonly speeds: ShaftValues;
  /** the shaft whose speed is asked for and not printed, if any */
  readonly asked: Shaft | null;
}

const WIDTH = 520;
const HEIGHT = 240;
const LEFT = 90;
const SPAN = 330;
const TOP = 44;
const FOOT = 206;

const COLOURS: Readonly<Record<Shaft, string>> = { sun: "#B4568A", carrier: "#D55E00", ring: "#0072B2" };

/** Least of 1, 2, 5 × 10ⁿ that divides a range into at most six. */
function tickStep(range: number): number {
  const power = 10 ** Math.floor(Math.log10(range / 6));
  return ([1, 2, 5, 10].find((m) => range / (m * power) <= 6) ?? 10) * power;
}

const one = (value: number): string => String(Math.round(value * 10) / 10);

/**
 * The lever line on paper: three axes k and 1 apart, one speed scale. A speed that is asked for is neither printed nor
 * drawn: the line then runs between the two known ones, and a ruler finds the rest.
 */
export function leverPicture({ k, speeds, asked }: LeverPicture): Markup {
  const rpm = (shaft: Shaft): number => radPerSToRpm(speeds[shaft]);
  const x: Readonly<Record<Shaft, number>> = {
    sun: LEFT,
    carrier: LEFT + (SPAN * k) / (1 + k),
    ring: LEFT + SPAN,
  };
  const all = SHAFTS.map(rpm);
  const step = tickStep(Math.max(100, Math.max(0, ...all) - Math.min(0, ...all)));
  const low = Math.floor(Math.min(0, ...all) / step) * step;
  const high = Math.max(low + step, Math.ceil(Math.max(0, ...all) / step) * step);
  const y = (value: number): number => FOOT - ((value - low) / (high - low)) * (FOOT - TOP);
  const ticks = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step);
  const known = SHAFTS.filter((shaft) => shaft !== asked);
  const ends = known.length === 3 ? (["sun", "ring"] as const) : known;
  const [a = "sun", b = "ring"] = ends;
  // The sun's number stands on the open side of the line.
  const rises = rpm("ring") > rpm("sun");
  const lift = (shaft: Shaft): number => (shaft === "sun" && rises ? -19 : 7);
  const names = known.map((shaft) => `${shaft} ${readable(rpm(shaft))}`).join(", ");
  return html`<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-label="Lever line in rev/min: ${names}${asked ? `, ${asked} asked for` : ""}">
${ticks.map(
  (tick) =>
    html`<line x1="${LEFT - 6}" y1="${one(y(tick))}" x2="${LEFT + SPAN}" y2="${one(y(tick))}" stroke="${tick === 0 ? "#182024" : "#DCE2DF"}" stroke-width="1"/><text x="${LEFT - 12}" y="${one(y(tick) + 4)}" text-anchor="end">${readable(tick)}</text>`,
)}
<text x="8" y="18">rev/min</text>
${SHAFTS.map(
  (shaft) =>
    html`<line x1="${one(x[shaft])}" y1="${TOP}" x2="${one(x[shaft])}" y2="${FOOT}" stroke="${COLOURS[shaft]}" stroke-width="1.5"/><text x="${one(x[shaft])}" y="18" text-anchor="middle" font-weight="600">${shaft}</text>`,
)}
<line x1="${one(x[a])}" y1="${one(y(rpm(a)))}" x2="${one(x[b])}" y2="${one(y(rpm(b)))}" stroke="#182024" stroke-width="3"/>
${SHAFTS.map((shaft) =>
  shaft === asked
    ? html`<rect x="${one(x[shaft] + 8)}" y="${TOP + 4}" width="26" height="22" fill="#fff" stroke="#182024" stroke-dasharray="4 3"/><text x="${one(x[shaft] + 21)}" y="${TOP + 20}" text-anchor="middle">?</text>`
    : html`<circle cx="${one(x[shaft])}" cy="${one(y(rpm(shaft)))}" r="5" fill="#fff" stroke="${COLOURS[shaft]}" stroke-width="2.5"/><text x="${one(x[shaft] + 10)}" y="${one(y(rpm(shaft)) - lift(shaft))}" font-weight="600" stroke="#fff" stroke-width="4" paint-order="stroke">${readable(rpm(shaft))}</text>`,
)}
<text x="${one((x.sun + x.carrier) / 2)}" y="${HEIGHT - 12}" text-anchor="middle">k = ${readable(k, 3).replace(/\.?0+$/, "")}</text>
<text x="${one((x.carrier + x.ring) / 2)}" y="${HEIGHT - 12}" text-anchor="middle">1</text>
</svg>`;
}
