import { metresToMiles, mpsToKmh, mpsToMph } from "../../../shared/units.ts";
import { carbonDioxide } from "../../../sim/run/fuel.ts";
import type { RunSummary } from "../../../sim/run/summary.ts";
import { CONTROL_PERIOD } from "../../../sim/settings.ts";
import { num, roadUnitName, type Units } from "../../state/format.ts";
import type { FigureId } from "../../state/road-working.ts";
import { t } from "../../texts/catalogue.ts";
import type { Token } from "../../ui/WorkingLines.tsx";
import { after, constant, type Lines, sym, txt, val } from "./pieces.ts";
import type { RoadSource } from "./source.ts";

const notes = t.roadWorking.figureNotes;
const TIMES = txt(" × ");
const OVER = txt(" / ");

/** What a figure is made from. */
export interface FigureSource extends RoadSource {
  readonly summary: RunSummary;
}

const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A very small or large number: 2.1 × 10⁻¹². */
export function scientific(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return num(value);
  const power = Math.floor(Math.log10(Math.abs(value)));
  const raised = [...String(Math.abs(power))].map((digit) => SUPERSCRIPTS[Number(digit)] ?? "").join("");
  return `${num(value / 10 ** power, 1)} × 10${power < 0 ? "⁻" : ""}${raised}`;
}

const share = (value: number): Token => val(value * 100, 1, "%");
const kilojoules = (joules: number, decimals = 1): string => `${num(joules / 1000, decimals)} kJ`;

/** A sum over the run's steps, which no row alone can show. */
const whole = (symbol: Token, formula: readonly Token[], shown: string, note: string): Lines => ({
  left: symbol,
  formula,
  live: [txt(shown)],
  result: txt(shown),
  note,
});

const perVolume = ({ vehicle }: FigureSource, kilometres: number): Token[] => [
  ...[txt(" / ("), constant(vehicle.fuel.lowerHeat / 1e6, "MJ/kg"), TIMES],
  ...[constant(vehicle.fuel.density / 1000, "kg/L"), TIMES, val(kilometres, 3, "km"), txt(")")],
];

function raw(from: FigureSource): Lines {
  const { summary } = from;
  return {
    left: sym("V", "", "fuel"),
    formula: [sym("E", "f", "fuel"), txt(" / ("), sym("H"), txt(" ρ s)")],
    live: [val(summary.fuel.energy_j / 1000, 1, "kJ", "fuel"), ...perVolume(from, summary.distance_m / 1000)],
    result: val(summary.fuel.l_per_100km, 2, "L/100 km", "fuel"),
    note: notes["fuel-raw"],
  };
}

function balanced(from: FigureSource): Lines {
  const { balance } = from;
  const left = sym("V", "bal", "fuel");
  if (balance === null || balance === "under way" || !balance.balanced) {
    const why =
      balance === null
        ? notes.notBalancedYet
        : balance === "under way"
          ? notes.balancing
          : notes.notBalanced(balance.reason);
    return {
      left,
      formula: [sym("E", "f", "fuel"), txt(" (1 + σ n) / ("), sym("H"), txt(" ρ s)")],
      live: [txt("–")],
      result: txt("–"),
      note: why,
    };
  }
  const { fuelEnergy, slope, netShare, litresPer100Km, runs } = balance;
  const { lowerHeat, density } = from.vehicle.fuel;
  // What the balanced run's fuel was before the correction, and how far it went.
  const energy = fuelEnergy / (1 + slope * netShare);
  const kilometres = (fuelEnergy / (lowerHeat * density) / litresPer100Km) * 1e5;
  return {
    left,
    formula: [sym("E", "f", "fuel"), txt(" (1 + σ n) / ("), sym("H"), txt(" ρ s)")],
    live: [
      ...[
        val(energy / 1000, 1, "kJ", "fuel"),
        txt(" × (1 + "),
        val(slope, 3),
        TIMES,
        after(netShare * 100, 3, "%"),
      ],
      ...[txt(")"), ...perVolume(from, kilometres)],
    ],
    result: val(litresPer100Km, 2, "L/100 km", "fuel"),
    note: notes.balanced(num(runs), num(slope, 2)),
  };
}

function carbon(from: FigureSource): Lines {
  const { summary, vehicle } = from;
  const { lowerHeat, carbonShare } = vehicle.fuel;
  const perCarbon = carbonDioxide(vehicle.fuel, lowerHeat) / 1000 / carbonShare;
  return {
    left: sym("m", "CO₂"),
    formula: [sym("E", "f", "fuel"), OVER, sym("H"), TIMES, sym("c"), TIMES, sym("μ"), txt(" / s")],
    live: [
      ...[
        val(summary.fuel.energy_j / 1000, 1, "kJ", "fuel"),
        OVER,
        constant(lowerHeat / 1e6, "MJ/kg"),
        TIMES,
      ],
      ...[constant(carbonShare), TIMES, val(perCarbon, 4), OVER, val(summary.distance_m / 1000, 3, "km")],
    ],
    result: val(summary.fuel.co2_g_per_km, 1, "g/km"),
    note: notes.co2,
  };
}

function electricity({ summary }: FigureSource): Lines {
  return {
    left: sym("W", "b", "battery"),
    formula: [sym("E", "oc", "battery"), txt(" / s")],
    live: [
      ...[
        val(summary.battery.net_j / 1000, 1, "kJ", "battery"),
        OVER,
        val(summary.distance_m / 1000, 3, "km"),
      ],
    ],
    result: val(summary.battery.net_kwh_per_100km, 2, "kWh/100 km", "battery"),
    note: notes.electricity,
  };
}

function chargeMoved({ summary }: FigureSource): Lines {
  const { soc_start, soc_end } = summary.battery;
  return {
    left: sym("ΔSOC"),
    formula: [sym("SOC", "end", "battery"), txt(" − "), sym("SOC", "start", "battery")],
    live: [val(soc_end * 100, 2, "%", "battery"), txt(" − "), val(soc_start * 100, 2, "%", "battery")],
    result: val((soc_end - soc_start) * 100, 1, "%", "battery"),
    note: notes.charge,
  };
}

function ratioOf(
  symbol: Token,
  [top, topToken]: readonly [number, Token],
  [under, underToken]: readonly [number, Token],
  value: number,
  note: string,
): Lines {
  const part = (joules: number, token: Token): Token => ({
    ...val(joules / 1000, 2, "kJ"),
    ...(token.ink ? { ink: token.ink } : {}),
  });
  return {
    left: symbol,
    formula: [topToken, OVER, underToken],
    live: [part(top, topToken), OVER, part(under, underToken)],
    result: Number.isFinite(value) ? share(value) : txt("–"),
    note,
  };
}

/** A distance in km, or in miles where the road is read in them. @param metres m */
export const travelled = (metres: number, units: Units): string =>
  units.road === "kmh" ? `${num(metres / 1000, 2)} km` : `${num(metresToMiles(metres), 2)} mi`;

/** A speed error, m/s, in the person's road unit. */
export const roadError = (units: Units, error: number): string =>
  `${num(units.road === "kmh" ? mpsToKmh(error) : mpsToMph(error), 2)} ${roadUnitName(units)}`;

function rms(from: FigureSource): Lines {
  const { summary, run } = from;
  const { rmsError } = summary.trace;
  const { rows } = run.log;
  return {
    left: sym("e", "rms"),
    formula: [txt("√(Σ (v − v*)² / "), sym("n"), txt(")")],
    live: [txt("√("), val(rmsError * rmsError * rows, 4, "m²/s²"), OVER, val(rows, 0), txt(")")],
    result: txt(roadError(from.units, rmsError)),
    note: notes["trace-rms"],
  };
}

function outside({ summary, p }: FigureSource): Lines {
  const { secondsOutside } = summary.trace;
  const width = p.h * p.stepsPerTick;
  return {
    left: sym("t", "out"),
    formula: [sym("n", "out"), txt(" Δt")],
    live: [val(secondsOutside / width, 0), TIMES, constant(width, "s")],
    result: val(secondsOutside, 1, "s"),
    note: notes["trace-outside"],
  };
}

function closure({ summary }: FigureSource): Lines {
  const turned = Math.max(1000, summary.turned_over_j);
  return {
    left: sym("ε"),
    formula: [
      txt("|"),
      sym("E", "in"),
      txt(" − "),
      sym("E", "loss"),
      txt(" − "),
      sym("E", "stored"),
      txt("| / "),
      sym("E", "turned"),
    ],
    live: [txt(scientific(Math.abs(summary.ledger_residual_j))), txt(" J / "), val(turned, 0, "J")],
    result: txt(scientific(summary.closure_relative)),
    note: notes.closure,
  };
}

const e = (sub: string): Token => sym("E", sub, sub === "b" ? "battery" : undefined);

const FIGURES: Readonly<Record<FigureId, (from: FigureSource) => Lines>> = {
  "fuel-raw": raw,
  "fuel-balanced": balanced,
  co2: carbon,
  electricity,
  charge: chargeMoved,
  distance: ({ summary, units }) => ({
    left: sym("s"),
    formula: [txt("∫ |v| dt = "), sym("v̄"), txt(" t")],
    live: [
      ...[
        val(summary.distance_m / Math.max(1e-9, summary.duration_s), 4, "m/s"),
        TIMES,
        val(summary.duration_s, 1, "s"),
      ],
    ],
    result: txt(travelled(summary.distance_m, units)),
    note: notes.distance,
  }),
  "braking-asked": ({ summary: { recovered } }) =>
    whole(
      e("ask"),
      [txt("∫ max(0, −"), sym("F", "ask"), txt(" v) dt")],
      kilojoules(recovered.asked_at_wheels_j),
      notes["braking-asked"],
    ),
  "braking-shaft": ({ summary: { recovered } }) =>
    whole(
      e("o"),
      [txt("∫ max(0, −"), sym("T", "om", "ring"), txt(" "), sym("ω", "o", "ring"), txt(") dt")],
      kilojoules(recovered.at_machine_shaft_j),
      notes["braking-shaft"],
    ),
  recovered: ({ summary: { recovered } }) =>
    whole(
      e("b"),
      [
        txt("∫ min(−"),
        sym("P", "om,el", "ring"),
        txt(" − "),
        sym("P", "sm,el", "sun"),
        txt(", −"),
        sym("P", "b", "battery"),
        txt(") dt"),
      ],
      kilojoules(recovered.into_battery_j),
      notes.recovered,
    ),
  "friction-brakes": ({ summary: { recovered } }) =>
    whole(
      e("fb"),
      [txt("∫ "), sym("F", "b"), txt(" |v| dt")],
      kilojoules(recovered.friction_brakes_j),
      notes["friction-brakes"],
    ),
  "recovery-share": ({ summary: { recovered } }) =>
    ratioOf(
      sym("ρ", "rec"),
      [recovered.into_battery_j, e("b")],
      [recovered.asked_at_wheels_j, e("ask")],
      recovered.share,
      notes["recovery-share"],
    ),
  "engine-starts": ({ summary }) =>
    whole(
      sym("n", "start", "carrier"),
      [txt("Σ "), sym("starts")],
      num(summary.engine.starts),
      notes["engine-starts"],
    ),
  "engine-on": ({ summary }) => ({
    left: sym("t", "on", "carrier"),
    formula: [sym("n", "on"), txt(" Δt")],
    live: [val(summary.engine.seconds_on / CONTROL_PERIOD, 0), TIMES, constant(CONTROL_PERIOD, "s")],
    result: val(summary.engine.seconds_on, 0, "s", "carrier"),
    note: notes["engine-on"],
  }),
  "engine-efficiency": ({ summary }) =>
    ratioOf(
      sym("η̄", "e", "carrier"),
      [summary.engine.work_j, sym("W", "e", "carrier")],
      [summary.fuel.energy_j, sym("E", "f", "fuel")],
      summary.engine.mean_efficiency,
      notes["engine-efficiency"],
    ),
  "trace-rms": rms,
  "trace-worst": ({ summary, units }) =>
    whole(
      sym("e", "max"),
      [txt("max |v − v*|")],
      roadError(units, summary.trace.greatestError),
      notes["trace-worst"],
    ),
  "trace-outside": outside,
  closure,
};

/** The working of a figure of a whole run. */
export const figureWorking = (id: FigureId, from: FigureSource): Lines => FIGURES[id](from);
