import type { Vehicle } from "../../parameters/schema.ts";
import { vehicleWarnings } from "../../vehicle/warnings.ts";
import type { DriveSummary } from "../drive.ts";
import { bar, columns, fixed, labelled, wrap } from "./text.ts";
import { percent, type ReportUnits } from "./units.ts";

/** Widths of a bar and of the column of times in lists. */
const BAR = 40;
const TIME = 10;

/** Misses of the trace that are told one by one. */
const MOST_MISSES = 12;

/** Time in each regime, with bars. */
export function regimeLines(s: DriveSummary): string[] {
  const longest = Math.max(...s.regimes.map((regime) => regime.share), 1e-9);
  return columns(
    s.regimes.map((r) => [
      r.title,
      `${fixed(r.seconds, 1)} s`,
      percent(r.share),
      bar(r.share / longest, BAR),
    ]),
    "lrrl",
  );
}

/** How well the vehicle followed, and where it did not. */
export function traceLines({ trace }: DriveSummary, units: ReportUnits): string[] {
  const lines = [
    `root mean square error ${units.speed(trace.rmsError)}, greatest ${units.speed(trace.greatestError)}`,
  ];
  if (trace.misses.length === 0) return [...lines, "never outside ±2 mph within ±1 s"];
  lines.push(`outside ±2 mph within ±1 s for ${fixed(trace.secondsOutside, 1)} s:`);
  for (const miss of trace.misses.slice(0, MOST_MISSES)) {
    const limits = miss.limits.length > 0 ? miss.limits.join(", ") : "no limit";
    const span = `${fixed(miss.start, 1)} to ${fixed(miss.end, 1)} s`;
    lines.push(...wrap(`${span}: ${units.speed(miss.worst)} beyond the band; in force: ${limits}`, "  "));
  }
  const rest = trace.misses.length - MOST_MISSES;
  return rest > 0 ? [...lines, `  and ${rest} more, all in the summary file`] : lines;
}

/** Seconds that each limit bound or each override stood. */
export function limitLines(s: DriveSummary): string[] {
  if (s.limits.length === 0) return ["none"];
  return s.limits.flatMap((limit) =>
    labelled(`${fixed(limit.seconds, 1)} s`.padStart(TIME - 2), limit.meaning, TIME),
  );
}

/** The instants worth looking at. */
export function momentLines(s: DriveSummary): string[] {
  return s.moments.flatMap((moment) =>
    labelled(`${fixed(moment.time, 1)} s`.padStart(TIME - 2), moment.sentence, TIME),
  );
}

/** What is odd about the vehicle, if anything. */
export const warningLines = (vehicle: Vehicle): string[] =>
  vehicleWarnings(vehicle).flatMap((sentence) => wrap(sentence));
