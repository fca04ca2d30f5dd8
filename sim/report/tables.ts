import { html, type Markup, type Piece } from "../../shared/html.ts";
import { readable } from "../../shared/readable.ts";
import { joulesToKwh, kelvinToCelsius, mpsToKmh, shareToPercent } from "../../shared/units.ts";
import { parameterTable } from "../vehicle/declarations.ts";
import { valueAt } from "../vehicle/faults.ts";
import { derivedFigures } from "../vehicle/figures.ts";
import { clockText } from "./plots.ts";
import type { Repeat } from "./repeat.ts";
import type { ReportSource } from "./source.ts";

/** One row of a two-column table. */
export type Row = readonly [label: Piece, value: Piece];

/** Labels and values. */
export const pairs = (rows: readonly Row[]): Markup =>
  html`<table class="pairs"><tbody>${rows.map(([label, value]) => html`<tr><th scope="row">${label}</th><td class="n">${value}</td></tr>`)}</tbody></table>`;

const kj = (joules: number): string => `${readable(joules / 1000)} kJ`;
const kwh = (joules: number): string => `${readable(joulesToKwh(joules), 3)} kWh`;
const percent = (share: number, decimals = 1): string =>
  Number.isFinite(share) ? `${readable(shareToPercent(share), decimals)} %` : "–";
const ofWhole = (part: number, whole: number): string => `${kj(part)}, ${percent(part / whole)}`;

/** What was driven, under which circumstances. */
export function circumstances({ summary, vehicle, cycleLine }: ReportSource): readonly Row[] {
  const { settings: s, cycle } = summary;
  return [
    ["Vehicle", `${vehicle.name} (${vehicle.id})`],
    ["Cycle", `${cycle.title} (${cycleLine})`],
    ["Source of the cycle", cycle.source],
    ["Strategy", summary.strategy],
    ["Distance", `${readable(summary.distance_m / 1000, 3)} km`],
    ["Time", clockText(summary.duration_s)],
    ["Mean speed", `${readable(mpsToKmh(summary.distance_m / summary.duration_s), 1)} km/h`],
    ["Charge at the start", percent(s.startSoc)],
    ["Payload", `${readable(s.payload)} kg`],
    ["Head wind", `${readable(mpsToKmh(s.headWind), 1)} km/h`],
    ["Auxiliaries", `${readable(s.auxiliaryPower)} W`],
    ["Air", `${readable(kelvinToCelsius(s.airTemperature), 1)} °C, ${readable(s.airDensity, 3)} kg/m³`],
    ["Engine at the start", s.coldStart ? "cold" : "warm"],
    ["Time step", `${readable(s.step * 1000, 1)} ms`],
  ];
}

/** Fuel, raw and balanced. */
export function fuelRows({ summary, balance }: ReportSource): readonly Row[] {
  const { fuel } = summary;
  const rows: Row[] = [
    ["Raw", `${readable(fuel.l_per_100km, 3)} L/100 km`],
    ["Raw, US", `${readable(fuel.mpg_us, 1)} mpg`],
    ["Raw, carbon dioxide", `${readable(fuel.co2_g_per_km, 1)} g/km`],
    ["Fuel", `${readable(fuel.litres, 3)} L, ${kwh(fuel.energy_j)}`],
    ["Of it for starts", percent(fuel.of_which_starts_j / fuel.energy_j)],
  ];
  if (!balance) return [...rows, ["Charge-balanced", "not asked for: this figure must not be compared"]];
  if (balance.reason !== "") return [...rows, ["Charge-balanced", `no: ${balance.reason}`]];
  return [
    ["Charge-balanced", html`<b>${readable(balance.l_per_100km, 3)} L/100 km</b>`],
    ["Balanced, US", `${readable(balance.mpg_us, 1)} mpg`],
    ["Balanced, carbon dioxide", `${readable(balance.co2_g_per_km, 1)} g/km`],
    ["Slope, fuel for charge", `${readable(balance.slope, 2)}, from ${balance.runs} runs`],
    ...rows,
  ];
}

/** Battery, braking, engine and the ways of its power. */
export function energyRows({ summary: s }: ReportSource): readonly (readonly [string, readonly Row[]])[] {
  const { battery: b, recovered: r, engine: e, paths: p } = s;
  return [
    [
      "Battery",
      [
        ["Charge", `${percent(b.soc_start)} → ${percent(b.soc_end)}`],
        [b.net_j >= 0 ? "Net energy given" : "Net energy taken", kwh(Math.abs(b.net_j))],
        ["Turned over at the terminals", kwh(b.throughput_j)],
      ],
    ],
    [
      "Braking",
      [
        ["Asked at the wheels", kj(r.asked_at_wheels_j)],
        ["At the output machine's shaft", ofWhole(r.at_machine_shaft_j, r.asked_at_wheels_j)],
        ["Into the battery", ofWhole(r.into_battery_j, r.asked_at_wheels_j)],
        ["In the friction brakes", ofWhole(r.friction_brakes_j, r.asked_at_wheels_j)],
      ],
    ],
    [
      "Engine",
      [
        ["Starts", String(e.starts)],
        ["Time on", `${clockText(e.seconds_on)}, ${percent(e.seconds_on / s.duration_s)}`],
        ["Work", kj(e.work_j)],
        ["Mean efficiency", percent(e.mean_efficiency)],
      ],
    ],
    [
      "Ways of the engine's work",
      [
        ["Straight to the ring", ofWhole(p.mechanical, p.engine)],
        ["By way of the machines", ofWhole(p.electrical, p.engine)],
        ["Circulating beside it", ofWhole(p.circulating, p.engine)],
      ],
    ],
  ];
}

/** The ledger as numbers. */
export function ledgerTable({ summary }: ReportSource): Markup {
  const rows = summary.ledger.map(
    ({ title, side, value_j }) =>
      html`<tr><td>${title}</td><td>${side === "in" ? "came in" : side === "stored" ? "stored" : "used or lost"}</td><td class="n">${readable(value_j / 1000, 1)}</td></tr>`,
  );
  return html`<table class="narrow"><thead><tr><th>Line</th><th>Side</th><th class="n">kJ</th></tr></thead><tbody>${rows}</tbody></table>
<p class="small">In, less used, less stored: ${summary.ledger_residual_j.toExponential(1)} J, ${summary.closure_relative.toExponential(1)} of the ${readable(summary.turned_over_j / 1e6, 2)} MJ turned over. Each line has its own formula; none is the remainder.</p>`;
}

/** Moments, limits and how well the vehicle followed. */
export function eventTables({ summary }: ReportSource): Markup {
  const { moments, limits, trace } = summary;
  const told = moments.map(
    ({ time, sentence }) => html`<tr><td class="n">${clockText(time)}</td><td>${sentence}</td></tr>`,
  );
  const bound = limits.map(
    ({ seconds, meaning }) => html`<tr><td class="n">${readable(seconds, 1)} s</td><td>${meaning}</td></tr>`,
  );
  const outside =
    trace.misses.length === 0
      ? "never outside ±2 mph within ±1 s"
      : `outside ±2 mph within ±1 s for ${readable(trace.secondsOutside, 1)} s in ${trace.misses.length} stretches`;
  return html`<h2>Moments</h2><table class="wide"><tbody>${told}</tbody></table>
<h2>Limits and overrides</h2>${bound.length === 0 ? html`<p>None bound.</p>` : html`<table class="wide"><tbody>${bound}</tbody></table>`}
<h2>Speed trace</h2><p>Root mean square error ${readable(mpsToKmh(trace.rmsError), 2)} km/h, greatest ${readable(mpsToKmh(trace.greatestError), 1)} km/h; ${outside}.</p>`;
}

const unitText = (unit: string): string => (unit === "1" ? "" : unit);

const valueText = (value: unknown): string => {
  if (!Array.isArray(value)) return String(value);
  return Array.isArray(value[0]) ? `a table of ${value.length} rows` : value.join(", ");
};

/** Every parameter, what was changed first, and what follows from them. */
export function parameterTables({ vehicle }: ReportSource, { changed }: Repeat): Markup {
  const differs = changed.map(
    ({ path, usual, here }) => html`<tr><td>${path}</td><td>${here}</td><td>${usual || "–"}</td></tr>`,
  );
  const all = parameterTable().flatMap(({ path, kind, unit, meaning }) => {
    const value = valueAt(vehicle, path.split("."));
    if (value === undefined || kind === "text") return [];
    return [html`<tr><td>${path}</td><td>${valueText(value)} ${unitText(unit)}</td><td>${meaning}</td></tr>`];
  });
  const derived = derivedFigures(vehicle).map(
    ({ title, value, unit }): Row => [title, `${Number(value.toPrecision(5))} ${unitText(unit)}`],
  );
  const head = html`<thead><tr><th>Parameter</th><th>Value</th><th>Meaning</th></tr></thead>`;
  const note =
    changed.length === 0
      ? html`<p>All as in the preset.</p>`
      : html`<p>Changed from the preset:</p><table class="wide"><thead><tr><th>Parameter</th><th>Here</th><th>Preset</th></tr></thead><tbody>${differs}</tbody></table>`;
  return html`<h2>Vehicle</h2><p>${vehicle.note}</p>${note}<h3>What follows from the parameters</h3>${pairs(derived)}
<h3>Every parameter, SI units</h3><table class="wide">${head}<tbody>${all}</tbody></table>`;
}
