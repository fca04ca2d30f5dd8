import { html } from "../../shared/html.ts";
import { wholePage } from "../../shared/page.ts";
import { vehicleWarnings } from "../vehicle/warnings.ts";
import { regimeDefs, regimeLanes, regimeTable } from "./lanes.ts";
import { ledgerPicture } from "./ledger-picture.ts";
import { timePlots } from "./plots.ts";
import { type Repeat, repeatRun } from "./repeat.ts";
import type { ReportSource } from "./source.ts";
import { REPORT_STYLE } from "./style.ts";
import { patternDefs } from "./svg.ts";
import {
  circumstances,
  energyRows,
  eventTables,
  fuelRows,
  ledgerTable,
  pairs,
  parameterTables,
} from "./tables.ts";

/** What every report says about itself. */
const CAUTION =
  "Teaching model: the figures are not for calibrating, certifying or repairing a vehicle. The demo vehicles and their data are invented. Real hybrids carry lethal direct voltage and rotating parts: only people qualified under local rules work on them, by the maker's procedure, isolated, after the wait for the capacitors, with zero volts proven.";

/** How the run of a report is made again. */
export const repeatOf = ({ vehicle, summary, cycleLine, balance }: ReportSource): Repeat =>
  repeatRun(
    "report",
    vehicle,
    cycleLine,
    summary.strategy,
    balance?.ofThisRun ? { ...summary.settings, startSoc: vehicle.battery.socStart } : summary.settings,
    [...(balance?.ofThisRun ? ["--balance"] : []), "--out", "report.html"],
  );

/** How its balanced figure is found again, where that took other runs; null where the run itself says it. */
export const repeatBalanceOf = ({ vehicle, summary, cycleLine, balance }: ReportSource): Repeat | null =>
  balance && !balance.ofThisRun
    ? repeatRun("run", vehicle, cycleLine, summary.strategy, summary.settings, ["--balance"])
    : null;

/**
 * A run as one self-contained HTML file: figures, ledger picture, plots, parameters, how to repeat it. No script and no
 * network; what people typed is escaped.
 */
export function runReport(source: ReportSource): string {
  const { summary, vehicle, log, regime, notes, version, made } = source;
  const repeat = repeatOf(source);
  const balanced = repeatBalanceOf(source);
  const treatment = [...summary.cycle.treatment, ...notes, ...vehicleWarnings(vehicle)];
  const blocks = [["Fuel", fuelRows(source)] as const, ...energyRows(source)];
  const file = repeat.whole
    ? null
    : html`<p>vehicle.json holds every parameter of the vehicle; save it from the app, or with --vehicle-out of a run.</p>`;
  const body = html`${patternDefs()}${regimeDefs()}
<h1>${vehicle.name} on ${summary.cycle.title}</h1>
<p class="small">Strategy ${summary.strategy}${made === "" ? "" : `, ${made}`}${version === "" ? "" : `, Trishaft ${version}`}</p>
<h2>What was driven</h2>${pairs(circumstances(source))}${treatment.map((sentence) => html`<p class="small">${sentence}</p>`)}
<h2>Figures</h2><div class="columns">${blocks.map(([title, rows]) => html`<section><h3>${title}</h3>${pairs(rows)}</section>`)}</div>
<h2>Where the energy went</h2>
<p class="small">Widths are energies. Dots: fuel and charge; waves: heat; hatch: mechanical; lines: electrical. The bar is as tall as what came in, and as what went out or was stored.</p>
${ledgerPicture(summary.ledger)}<h3>The same in numbers</h3>${ledgerTable(source)}
<h2>Regimes</h2>${regimeLanes(log, regime, summary.moments)}${regimeTable(summary.regimes)}
<h2>Over time</h2><p class="small">Engine: shaft power. Machines and battery: electrical, positive when a machine uses or the battery gives.</p>${timePlots(log)}
${eventTables(source)}${parameterTables(source, repeat)}
<h2>How to repeat it</h2><pre>npm run -s cli -- ${repeat.line}</pre>${balanced && html`<p>The balanced figure:</p><pre>npm run -s cli -- ${balanced.line}</pre>`}${file}
<p class="foot">${CAUTION}</p>`;
  return wholePage(`${vehicle.name} on ${summary.cycle.title}: report`, REPORT_STYLE, body);
}
