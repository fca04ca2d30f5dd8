import { joulesToKwh, litresPer100KmToMpg } from "../../shared/units.ts";
import type { RunSummary } from "../../sim/run/summary.ts";
import { num, type Units } from "../state/format.ts";
import type { FigureId } from "../state/road-working.ts";
import type { BalanceState } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";
import { roadError, scientific, travelled } from "./working/figures.ts";

/** A figure of a run, ready to be read. */
export interface RunFigure {
  readonly id: FigureId;
  readonly value: string;
  /** the same in another way, or what it is a part of; empty if there is nothing to add */
  readonly beside: string;
}

/** Figures that belong together. */
export interface FigureGroup {
  readonly id: keyof typeof t.roadWorking.sheet.groups;
  readonly figures: readonly RunFigure[];
}

const sheet = t.roadWorking.sheet;

const figure = (id: FigureId, value: string, beside = ""): RunFigure => ({ id, value, beside });

/** Litres over 100 km, with the miles a gallon beside. */
const consumption = (id: FigureId, litres: number): RunFigure =>
  figure(id, `${num(litres, 2)} L/100 km`, litres > 0 ? sheet.mpg(num(litresPer100KmToMpg(litres), 1)) : "");

function balanced(balance: BalanceState): RunFigure {
  const id = "fuel-balanced";
  if (balance === null) return figure(id, "–");
  if (balance === "under way") return figure(id, sheet.pending);
  return balance.balanced ? consumption(id, balance.litresPer100Km) : figure(id, sheet.notBalanced);
}

const energy = (id: FigureId, joules: number, of: number): RunFigure =>
  figure(
    id,
    `${num(joules / 1000, 1)} kJ`,
    of > 0 ? sheet.of(`${num((joules / of) * 100)} %`) : `${num(joulesToKwh(joules), 3)} kWh`,
  );

const percent = (share: number): string => (Number.isFinite(share) ? `${num(share * 100, 1)} %` : "–");

/** The figures of a finished run, in the order of their sheet. */
export function runFigures(summary: RunSummary, balance: BalanceState, units: Units): readonly FigureGroup[] {
  const { fuel, battery, recovered, engine, trace } = summary;
  const asked = recovered.asked_at_wheels_j;
  return [
    {
      id: "use",
      figures: [
        consumption("fuel-raw", fuel.l_per_100km),
        balanced(balance),
        figure("co2", `${num(fuel.co2_g_per_km, 1)} g/km`),
        figure("electricity", `${num(battery.net_kwh_per_100km, 2)} kWh/100 km`),
        figure(
          "charge",
          `${num((battery.soc_end - battery.soc_start) * 100, 1)} %`,
          sheet.charge(percent(battery.soc_start), percent(battery.soc_end)),
        ),
        figure("distance", travelled(summary.distance_m, units)),
      ],
    },
    {
      id: "engine",
      figures: [
        figure("engine-starts", num(engine.starts)),
        figure(
          "engine-on",
          `${num(engine.seconds_on)} s`,
          summary.duration_s > 0 ? percent(engine.seconds_on / summary.duration_s) : "",
        ),
        figure("engine-efficiency", percent(engine.mean_efficiency)),
      ],
    },
    {
      id: "braking",
      figures: [
        figure("braking-asked", `${num(asked / 1000, 1)} kJ`, `${num(joulesToKwh(asked), 3)} kWh`),
        energy("braking-shaft", recovered.at_machine_shaft_j, asked),
        energy("recovered", recovered.into_battery_j, asked),
        energy("friction-brakes", recovered.friction_brakes_j, asked),
        figure("recovery-share", percent(recovered.share)),
      ],
    },
    {
      id: "trace",
      figures: [
        figure("trace-rms", roadError(units, trace.rmsError)),
        figure("trace-worst", roadError(units, trace.greatestError)),
        figure(
          "trace-outside",
          `${num(trace.secondsOutside, 1)} s`,
          trace.misses.length > 0 ? sheet.misses(num(trace.misses.length)) : "",
        ),
      ],
    },
    { id: "proof", figures: [figure("closure", scientific(summary.closure_relative))] },
  ];
}
