import { at } from "../../../shared/at.ts";
import { REGIMES } from "../../run/regimes.ts";
import type { Series } from "./series.ts";

/** A stretch in which one run uses more than another, charge counted as fuel. */
export interface Difference {
  /** s */
  readonly from: number;
  readonly to: number;
  /** J of fuel by which the first run's use grows over the second's */
  readonly energy: number;
  /** regime that took most of the stretch in either run, by id */
  readonly regimes: readonly [string, string];
  /** change of charge over the stretch in either run, share of full */
  readonly charge: readonly [number, number];
}

/** Fuel and battery energy of a drive since its start, J, at rising times, s. */
export type EnergySeries = Pick<Series, "time" | "fuel" | "battery">;

/** Fuel and charge together, J of fuel: cumulative difference of two runs of the same cycle at each second. */
export function fuelOver(a: EnergySeries, b: EnergySeries, slope: number): Float64Array {
  const count = Math.min(a.time.length, b.time.length);
  return Float64Array.from(
    { length: count },
    (_, i) => at(a.fuel, i) - at(b.fuel, i) + slope * (at(a.battery, i) - at(b.battery, i)),
  );
}

/** Shortest stretch that is named, s, and how many are. */
const LEAST_SECONDS = 5;
const MOST = 3;

/** Multiple of the mean rise that a stretch must exceed to stand out, and share of the greatest that is still named. */
const STANDS_OUT = 1.5;
const WORTH = 0.1;

/**
 * The stretch in which a curve rises most above a steady rise, between two places (Kadane on its differences): a loss
 * that runs through the whole drive does not name the whole drive.
 */
function steepest(
  curve: Float64Array,
  from: number,
  to: number,
  steady: number,
): { from: number; to: number; rise: number } | null {
  let best = { from, to: from, rise: 0 };
  let start = from;
  let sum = 0;
  for (let i = from + 1; i <= to; i += 1) {
    const step = at(curve, i) - at(curve, i - 1) - steady;
    if (sum <= 0) {
      sum = step;
      start = i - 1;
    } else sum += step;
    if (sum > best.rise) best = { from: start, to: i, rise: sum };
  }
  return best.rise > 0 && best.to - best.from >= LEAST_SECONDS ? best : null;
}

function mainRegime(series: Series, from: number, to: number): string {
  const seconds = new Uint32Array(REGIMES.length);
  for (let i = from; i < to; i += 1) {
    const index = at(series.regime, i);
    seconds[index] = at(seconds, index) + 1;
  }
  return REGIMES[seconds.indexOf(Math.max(...seconds))]?.id ?? "";
}

/**
 * At most three stretches in which the first run loses most against the second one, in the order of time. A run that
 * never loses has none.
 * @param slope fuel energy that one unit of battery energy counts as
 */
export function whereTheyDiffer(a: Series, b: Series, slope: number): readonly Difference[] {
  const curve = fuelOver(a, b, slope);
  const last = curve.length - 1;
  const steady = (STANDS_OUT * Math.max(0, at(curve, last) - at(curve, 0))) / Math.max(1, last);
  const pieces: { from: number; to: number }[] = [{ from: 0, to: curve.length - 1 }];
  const found: { from: number; to: number; rise: number }[] = [];
  while (found.length < MOST) {
    const candidates = pieces
      .map((piece) => ({ piece, rise: steepest(curve, piece.from, piece.to, steady) }))
      .filter((one) => one.rise !== null)
      .sort((x, y) => (y.rise?.rise ?? 0) - (x.rise?.rise ?? 0));
    const [first] = candidates;
    if (!first?.rise || first.rise.rise < WORTH * (found[0]?.rise ?? 0)) break;
    const { from, to } = first.rise;
    found.push(first.rise);
    pieces.splice(pieces.indexOf(first.piece), 1);
    pieces.push({ from: first.piece.from, to: from }, { from: to, to: first.piece.to });
  }
  return found
    .sort((x, y) => x.from - y.from)
    .map(({ from, to }) => ({
      from: at(a.time, from),
      to: at(a.time, to),
      energy: at(curve, to) - at(curve, from),
      regimes: [mainRegime(a, from, to), mainRegime(b, from, to)],
      charge: [at(a.soc, to) - at(a.soc, from), at(b.soc, to) - at(b.soc, from)],
    }));
}
