import type { LogReader } from "../../../sim/run/log.ts";
import { niceStep } from "../../lever/scale.ts";
import type { RoadOverlay } from "../../state/road-overlay.ts";
import type { Curve } from "../registry.ts";
import { emptyPeak } from "./peaks.ts";
import { knownCurve } from "./source.ts";

/** Least and most of what a plot shows, SI. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Parts of a range that its ends are rounded out to, so that a growing drive does not move the picture all the time. */
const PARTS = 12;

/** Extent that is still told from none at all. */
const FLAT = 1e-9;

/** Ends rounded out in the unit shown; zero stays the end where nothing lies beyond it. */
function rounded({ least, most }: Range, times: number): Range {
  const step = niceStep(((most - least) * times) / PARTS);
  const out = (value: number, way: (n: number) => number): number => {
    const steps = (value * times) / step;
    return (way(steps) * step) / times;
  };
  const room = (most - least) * 0.03;
  return {
    least: least === 0 ? 0 : out(least - room, Math.floor),
    most: most === 0 ? 0 : out(most + room, Math.ceil),
  };
}

function wide(least: number, most: number, fromZero: boolean, times: number): Range {
  if (most - least > FLAT) return { least, most };
  if (fromZero) return { least: 0, most: 1 / times };
  return { least: least - 0.5 / times, most: most + 0.5 / times };
}

/**
 * The range of a plot: of the whole drive, so that heights stay comparable while one zooms.
 * @param curves those that are drawn; none gives a range of one unit
 * @param fromZero whether zero is part of it
 * @param times factor to the unit in which it is shown
 */
export function rangeOf(
  log: LogReader,
  curves: readonly Curve[],
  overlay: RoadOverlay | null,
  fromZero: boolean,
  times: number,
): Range {
  let least = fromZero ? 0 : Number.POSITIVE_INFINITY;
  let most = fromZero ? 0 : Number.NEGATIVE_INFINITY;
  const found = emptyPeak();
  const take = (low: number, high: number): void => {
    least = Math.min(least, low);
    most = Math.max(most, high);
  };
  for (const { source } of curves) {
    const { values, peaks } = knownCurve(source, log);
    if (values.length === 0) continue;
    peaks.between(values, 0, values.length, found);
    take(found.least, found.most);
    const recorded = overlay && "channel" in source ? overlay.channels[source.channel] : undefined;
    for (const value of recorded ?? []) if (Number.isFinite(value)) take(value, value);
  }
  if (least > most) return { least: 0, most: 1 / times };
  return rounded(wide(least, most, fromZero, times), times);
}
