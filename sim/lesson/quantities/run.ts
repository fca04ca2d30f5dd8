import { brief } from "../../../shared/readable.ts";
import { joulesToKwh } from "../../../shared/units.ts";
import { consumption } from "../../run/fuel.ts";
import type { LedgerId } from "../../run/ledger.ts";
import type { RunSummary } from "../../run/summary.ts";
import { sayNumber } from "../say.ts";
import { type LessonUnit, unitById } from "../units.ts";
import { live, row, symbol, type WorkToken } from "../working.ts";
import type { Reading, RunStage } from "./quantity.ts";

const KJ = unitById("kJ");
const KWH = unitById("kWh");
const PER100 = unitById("L/100 km");

const kj = (joules: number): WorkToken => live(sayNumber(joules, KJ));

/** A figure that the run's summary holds as it is. */
export const counted = (
  of: (summary: RunSummary) => number,
  unit: LessonUnit,
  how: string,
): Reading<RunStage> => ({
  of: ({ figures }) => of(figures.summary),
  working: ({ figures }) => ({
    symbol: symbol("value"),
    formula: row(how),
    live: row(live(sayNumber(of(figures.summary), unit)), unit.id === "" ? "" : ` ${unit.id}`),
    note: "Read from the run's figures.",
  }),
});

/** One energy over another, both from the summary. */
export const energyShare = (
  top: (summary: RunSummary) => number,
  bottom: (summary: RunSummary) => number,
  names: readonly [top: string, bottom: string],
  note: string,
): Reading<RunStage> => ({
  of: ({ figures }) => top(figures.summary) / bottom(figures.summary),
  working: ({ figures }) => ({
    symbol: symbol("share"),
    formula: row(symbol("E", names[0]), " / ", symbol("E", names[1])),
    live: row(kj(top(figures.summary)), " kJ / ", kj(bottom(figures.summary)), " kJ"),
    note,
  }),
});

const perDistance = (litres: number): number => PER100.toSi(litres);

/** Fuel over distance as burnt, m³/m. */
export const rawFuel: Reading<RunStage> = {
  of: ({ figures }) => perDistance(figures.summary.fuel.l_per_100km),
  working: ({ figures: { summary, vehicle } }) => ({
    symbol: symbol("V", "raw"),
    formula: row(symbol("E", "fuel"), " / (heat × density) / distance"),
    live: row(
      live(sayNumber(summary.fuel.energy_j, KWH)),
      " kWh / (",
      live(brief(joulesToKwh((vehicle.fuel.lowerHeat * vehicle.fuel.density) / 1000), 2)),
      " kWh/L) / ",
      live(brief(summary.distance_m / 1000, 2)),
      " km × 100",
    ),
    note: "What the engine burnt, whatever the battery gave or took.",
  }),
};

/** Fuel over distance corrected to the charge at the start, m³/m. */
export const balancedFuel: Reading<RunStage> = {
  of: ({ figures }) => {
    const { fuelEnergy, distance } = figures.balance();
    return perDistance(consumption(figures.vehicle.fuel, fuelEnergy, distance).litresPer100Km);
  },
  working: ({ figures }) => {
    const b = figures.balance();
    const of = (energy: number): WorkToken =>
      live(
        sayNumber(perDistance(consumption(figures.vehicle.fuel, energy, b.distance).litresPer100Km), PER100),
      );
    return {
      symbol: symbol("V", "balanced"),
      formula: row(symbol("V", "raw"), " + slope × net battery energy, as fuel over distance"),
      live: row(of(b.fuel), " + ", live(brief(b.slope, 2)), " × ", of(b.net)),
      note: "Of the run that ends nearest to the charge it began with; the slope tells how much fuel stands for one unit of charge.",
    };
  },
};

/** How much fuel energy stands for one unit of battery energy. */
export const balanceSlope: Reading<RunStage> = {
  of: ({ figures }) => figures.balance().slope,
  working: ({ figures }) => ({
    symbol: symbol("slope"),
    formula: row("fuel energy saved / battery energy given, over neighbouring starts"),
    live: row(live(brief(figures.balance().slope, 2))),
    note: "Measured over runs that start with a little more or less charge.",
  }),
};

/** Change of the charge. */
export const chargeChange: Reading<RunStage> = {
  of: ({ figures }) => figures.summary.battery.soc_end - figures.summary.battery.soc_start,
  working: ({ figures: { summary } }) => ({
    symbol: symbol("Δ charge"),
    formula: row(symbol("charge", "end"), " − ", symbol("charge", "start")),
    live: row(
      live(sayNumber(summary.battery.soc_end, unitById("%"))),
      " % − ",
      live(sayNumber(summary.battery.soc_start, unitById("%"))),
      " %",
    ),
    note: "Negative: the battery has paid for a part of the drive.",
  }),
};

/** Mean speed, stops included. */
export const meanSpeed: Reading<RunStage> = {
  of: ({ figures }) => figures.summary.distance_m / figures.summary.duration_s,
  working: ({ figures: { summary } }) => ({
    symbol: symbol("v", "mean"),
    formula: row("distance / time"),
    live: row(
      live(brief(summary.distance_m / 1000, 2)),
      " km / ",
      live(brief(summary.duration_s / 3600, 4)),
      " h",
    ),
    note: "Stops included.",
  }),
};

const ledgerLine = (summary: RunSummary, id: LedgerId): number =>
  summary.ledger.find((line) => line.id === id)?.value_j ?? Number.NaN;

/** One line of the energy ledger, J. */
export const ledgerReading = (id: LedgerId): Reading<RunStage> =>
  counted((summary) => ledgerLine(summary, id), KJ, "summed over every step by its own formula");

/** Time in one regime, s; 0 when it never came up. */
export const regimeTime = (id: string): Reading<RunStage> =>
  counted(
    (summary) => summary.regimes.find((regime) => regime.id === id)?.seconds ?? 0,
    unitById("s"),
    "rows of the log in this regime × 0.1 s",
  );

const pathShare = (part: "mechanical" | "electrical" | "circulating", note: string): Reading<RunStage> =>
  energyShare(
    (s) => s.paths[part],
    (s) => s.paths.engine,
    [part, "engine"],
    note,
  );

/** Ways of the engine's energy over the whole run. */
export const runMechanicalShare = pathShare("mechanical", "Energy straight to the ring over engine work.");
export const runElectricalShare = pathShare(
  "electrical",
  "Energy by way of the sun machine over engine work.",
);
export const runCirculatingShare = pathShare(
  "circulating",
  "Energy that ran round the loop over engine work.",
);
