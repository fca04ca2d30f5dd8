import { at } from "../../shared/at.ts";
import { LIMITS, type LimitId } from "../limits.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { type Consumption, consumption } from "./fuel.ts";
import { LEDGER_LINES, type LedgerId } from "./ledger.ts";
import type { LogReader } from "./log.ts";
import { REGIMES } from "./regimes.ts";

/** What happened in a stretch of a drive; energies in J. */
export interface SpanFigures {
  /** rows at its ends, and s between them */
  readonly from: number;
  readonly to: number;
  readonly duration: number;
  /** m, without sign */
  readonly distance: number;
  /** m/s */
  readonly meanSpeed: number;
  readonly greatestSpeed: number;
  readonly fuel: number;
  readonly used: Consumption;
  /** taken out of the battery's source; negative when it filled */
  readonly battery: number;
  /** braking: asked at the wheels, and of that into the battery, in the friction brakes, lost or used on the way */
  readonly asked: number;
  readonly recovered: number;
  readonly friction: number;
  readonly rest: number;
  /** into the battery over asked; not a number without braking */
  readonly share: number;
  /** s with the engine firing */
  readonly engineOn: number;
  /** s in each regime met, the longest first */
  readonly regimes: readonly { readonly id: string; readonly seconds: number }[];
  /** s in which each limit bound, the longest first */
  readonly limits: readonly { readonly id: LimitId; readonly seconds: number }[];
}

const lineAt = (log: LogReader, id: LedgerId, from: number, to: number): number => {
  const values = log.ledgerLine(LEDGER_LINES.findIndex((line) => line.id === id));
  return at(values, to) - at(values, from);
};

interface Sums {
  distance: number;
  greatest: number;
  asked: number;
  engineOn: number;
  readonly regimes: Float64Array;
  readonly limits: Float64Array;
}

function sumRows(log: LogReader, regime: Uint8Array, from: number, to: number): Sums {
  const time = log.view("time");
  const speed = log.view("speed");
  const ask = log.view("wheelForceAsk");
  const on = log.view("engineOn");
  const path = log.view("distance");
  const bits = log.limits;
  const sums: Sums = {
    distance: 0,
    greatest: Math.abs(at(speed, from)),
    asked: 0,
    engineOn: 0,
    regimes: new Float64Array(REGIMES.length),
    limits: new Float64Array(LIMITS.length),
  };
  for (let i = from + 1; i <= to; i += 1) {
    const width = at(time, i) - at(time, i - 1);
    const way = at(path, i) - at(path, i - 1);
    sums.distance += Math.abs(way);
    sums.greatest = Math.max(sums.greatest, Math.abs(at(speed, i)));
    // A row's first half still follows the decision before, its second half the row's own; they part in mid-period.
    const half = (width * (at(speed, i) - at(speed, i - 1))) / 8;
    sums.asked +=
      Math.max(0, -at(ask, i - 1) * (way / 2 - half)) + Math.max(0, -at(ask, i) * (way / 2 + half));
    sums.engineOn += width * at(on, i);
    const index = at(regime, i);
    sums.regimes[index] = at(sums.regimes, index) + width;
    const mask = at(bits, i);
    for (let bit = 0; bit < LIMITS.length; bit += 1) {
      if ((mask & (2 ** bit)) !== 0) sums.limits[bit] = at(sums.limits, bit) + width;
    }
  }
  return sums;
}

const longest = <T>(
  list: readonly T[],
  seconds: Float64Array,
): { readonly one: T; readonly seconds: number }[] =>
  list
    .map((one, i) => ({ one, seconds: at(seconds, i) }))
    .filter((entry) => entry.seconds > 0)
    .sort((a, b) => b.seconds - a.seconds);

/**
 * Figures of a stretch. Fuel, battery, recovered and brake energy are differences of the log's own sums; braking asked
 * is the force asked times the way of each half row, which agrees with the run's own sum to
 * a millionth (a log of single steps would need its own).
 * @param regime the regimes of the log's rows
 * @param from, to rows, from < to, within the log
 */
export function spanFigures(
  log: LogReader,
  regime: Uint8Array,
  vehicle: Vehicle,
  from: number,
  to: number,
): SpanFigures {
  const sums = sumRows(log, regime, from, to);
  const time = log.view("time");
  const duration = at(time, to) - at(time, from);
  const fuel = at(log.view("fuel"), to) - at(log.view("fuel"), from);
  const recovered = at(log.view("recovered"), to) - at(log.view("recovered"), from);
  const friction = lineAt(log, "friction_brake", from, to);
  return {
    from,
    to,
    duration,
    distance: sums.distance,
    meanSpeed: sums.distance / duration,
    greatestSpeed: sums.greatest,
    fuel,
    used: consumption(vehicle.fuel, fuel, sums.distance),
    battery: -lineAt(log, "battery_change", from, to),
    asked: sums.asked,
    recovered,
    friction,
    rest: sums.asked - recovered - friction,
    share: sums.asked > 0 ? recovered / sums.asked : Number.NaN,
    engineOn: sums.engineOn,
    regimes: longest(REGIMES, sums.regimes).map(({ one, seconds }) => ({ id: one.id, seconds })),
    limits: longest(LIMITS, sums.limits).map(({ one, seconds }) => ({ id: one[0], seconds })),
  };
}
